import type { BoxFillRules, Grounds } from './box-contents.ts';
import { type Gauge, thickest } from './gauge.ts';

interface GroundLine {
  readonly what: 'grounds' | 'isolated-grounds';
  readonly awg: Gauge;
  readonly count: number;
  readonly allowances: number;
}

/**
 * The volume allowances for the bare and green wires that enter a box.
 *
 * allowances = first + furtherEach × max(0, n − firstCovers), for n ≥ 1; none for n = 0
 *
 * n ground wires, all at the size of the thickest of them. An isolated set either has the same sum to itself or is counted
 * among the rest, as the edition has it.
 *
 * @source NFPA 70 (National Electrical Code), 314.16(B)(5), in the editions to 2017 and from 2020
 */
export function groundLines(grounds: Grounds, rules: BoxFillRules['grounds']): GroundLine[] {
  const allowances = (count: number) =>
    count === 0 ? 0 : rules.first + rules.furtherEach * Math.max(0, count - rules.firstCovers);
  const { count, largestAwg, isolated } = grounds;
  if (isolated === undefined || isolated.count === 0) {
    return [{ what: 'grounds', awg: largestAwg, count, allowances: allowances(count) }];
  }
  if (rules.isolatedSet === 'own-allowance') {
    return [
      { what: 'grounds', awg: largestAwg, count, allowances: allowances(count) },
      {
        what: 'isolated-grounds',
        awg: isolated.largestAwg,
        count: isolated.count,
        allowances: allowances(isolated.count),
      },
    ];
  }
  const all = count + isolated.count;
  const awg = thickest(count > 0 ? [largestAwg, isolated.largestAwg] : [isolated.largestAwg]) ?? largestAwg;
  return [{ what: 'grounds', awg, count: all, allowances: allowances(all) }];
}
