import type { Estimate } from '#quantity/estimate.ts';
import type { Pascals, Ratio } from '#quantity/units.ts';
import type { FanShape } from './fan-points.ts';

/** How far each guess about a kind of fan may be off. */
export interface FanShapeRange {
  readonly bow: Estimate<Ratio>;
  readonly reach: Estimate<Ratio>;
  readonly longestTail: Estimate<Pascals>;
  readonly strength: Estimate<Ratio>;
  readonly droop: Estimate<Ratio>;
  readonly strengthFrom: Pascals;
  readonly strengthTo: Pascals;
}

/**
 * The shape to start from: every guess at its most likely value. A fresh object, to be changed while sampling.
 *
 * typical of each
 *
 * @source own working
 */
export const typicalShape = (range: FanShapeRange): FanShape => ({
  bow: range.bow.typical,
  reach: range.reach.typical,
  longestTail: range.longestTail.typical,
  strength: range.strength.typical,
  strengthFrom: range.strengthFrom,
  strengthTo: range.strengthTo,
  droop: range.droop.typical,
});
