import type { Amperes, Metres, SquareMetreKelvinsPerWatt } from '#quantity/units.ts';
import type { BoxAnswer } from '../questions/box-reading.ts';
import type { DuctRun } from '../questions/run-parts.ts';

/** What the list for the van is made from. `null` where nobody has said. */
export interface PartsInputs {
  readonly run: DuctRun;
  readonly collar: Metres | null;
  /** What the duct is to be wrapped to; nothing when nobody has said. */
  readonly insulation: SquareMetreKelvinsPerWatt | null;
  readonly housing: readonly Metres[] | null;
  readonly oldOpening: readonly Metres[] | null;
  readonly grille: readonly Metres[] | null;
  readonly joistSpacing: Metres | null;
  readonly joists: '2x6' | '2x8' | '2x10' | '2x12' | 'truss' | 'i-joist' | null;
  readonly above: 'attic' | 'floor' | null;
  readonly unit: string | null;
  readonly control: string | null;
  readonly cable: Metres | null;
  readonly breaker: Amperes | null;
  readonly box: BoxAnswer | null;
}
