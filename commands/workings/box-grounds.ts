import { type Gauge, thickest } from '#engine/electrical/gauge.ts';
import { groundsIn, insulatedIn } from '../questions/wire-list-reading.ts';
import type { BoxInputs } from './box-inputs.ts';

/** The grounds counted: those told, or those the cables bring when they are more. */
export function groundsCounted({ grounds, conductors }: Pick<BoxInputs, 'grounds' | 'conductors'>): {
  readonly count: number;
  readonly awg: Gauge;
} {
  const told = insulatedIn(grounds);
  const brought = groundsIn(conductors);
  const sizes = [...told.map(({ awg }) => awg), ...(brought.largestAwg === undefined ? [] : [brought.largestAwg])];
  return {
    count: Math.max(
      told.reduce((sum, { count }) => sum + count, 0),
      brought.count,
    ),
    awg: thickest(sizes) ?? 14,
  };
}
