import { flexFactorAt, publishedFlexFactor } from '#engine/duct/flex-compression.ts';
import { flexLays, foilFlexLays } from '#knowledge/ducts.ts';
import type { Citation } from '#knowledge/sources.ts';
import type { Estimate } from '#quantity/estimate.ts';
import { type Metres, metres, type Ratio, ratio } from '#quantity/units.ts';
import type { DuctPart } from '../questions/run-parts.ts';
import type { Parameters } from './parameters.ts';

/** How slack a length of flex lies, and what that does to its loss. The functions take one set of values of what is unknown. */
export interface Slackness {
  readonly kind: 'flex' | 'foil-flex';
  /** Whether somebody said how tight it is pulled. */
  readonly told: boolean;
  /** The share by which it lies shorter than pulled tight. */
  readonly amount: Estimate<Ratio>;
  readonly citation: Citation;
  /** The diameter nearest its own at which the correction was measured. */
  readonly nearestTested: Metres;
  compression(values: Float64Array): Ratio;
  /** Where between the nearest test, 0, and the formula carried past it, 1, the correction is taken. */
  lean(values: Float64Array): Ratio;
  /** How many times the loss of the tight duct. */
  factor(values: Float64Array): Ratio;
}

/** The sizes the correction for slack was measured on begin here. */
const smallestTested = metres(0.1524);

/** A duct called 6 in that measures 150 mm is the duct that was tested. */
const nominal = 0.98;

/** The slack of a duct that can lie slack, with what is unknown of it entered among `parameters`; nothing for rigid pipe. */
export function flexSlack({ kind, compression }: DuctPart, diameter: Metres, parameters: Parameters): Slackness | null {
  if (kind === 'smooth' || kind === 'spiral') return null;
  const { unsaid } = kind === 'flex' ? flexLays : foilFlexLays;
  const amount = compression ?? unsaid.amount;
  const slack = parameters.enter({
    estimate: amount,
    direction: 'down',
    measure: () => 'how tight the flex is pulled',
    driver: 'workmanship',
  });
  const outside = diameter < smallestTested * nominal;
  const range: Estimate = kind === 'foil-flex' ? { low: 0, typical: 0, high: 1 } : { low: 0, typical: 0.5, high: 1 };
  const leaning = kind === 'flex' && !outside ? () => 1 : parameters.enter({ estimate: range, direction: 'down' });
  const nearestTested = outside ? smallestTested : diameter;
  return {
    kind,
    told: compression !== null,
    amount,
    citation: unsaid.citation,
    nearestTested,
    compression: (values) => ratio(slack(values)),
    lean: (values) => ratio(leaning(values)),
    factor(values) {
      const [slackness, lean] = [ratio(slack(values)), ratio(leaning(values))];
      if (kind === 'flex') return flexFactorAt({ compression: slackness, diameter, lean });
      const tested = metres(Math.max(diameter, smallestTested));
      return ratio(1 + lean * (publishedFlexFactor({ compression: slackness, diameter: tested }) - 1));
    },
  };
}
