import type { Estimate } from '#quantity/estimate.ts';
import type {
  CubicMetres,
  CubicMetresPerSecond,
  MetresPerSecond,
  Pascals,
  Ratio,
  Seconds,
  SquareMetres,
} from '#quantity/units.ts';
import { type BoxTrust, type FlowBox, measuredByBox } from './flow-box.ts';
import { measuredByHood } from './flow-hood.ts';
import { type TraverseTrust, traverseAirflow } from './grille-traverse.ts';
import type { MeasuredAirflow } from './reading.ts';
import { type BagTrust, timedBagAirflow } from './timed-bag.ts';

/** What was read at the grille, by one of the four methods. */
export type GrilleReadings =
  | { readonly method: 'bag'; readonly volume: Estimate<CubicMetres>; readonly times: readonly Seconds[] }
  | { readonly method: 'box'; readonly opening: SquareMetres; readonly pressures: readonly Pascals[] }
  | {
      readonly method: 'traverse';
      readonly velocities: readonly MetresPerSecond[];
      readonly faceArea: SquareMetres;
      readonly openShare: Estimate<Ratio>;
    }
  | { readonly method: 'hood'; readonly powered: boolean; readonly airflows: readonly CubicMetresPerSecond[] };

/** How far each method can be trusted. */
export interface MethodTrust {
  readonly bag: BagTrust;
  readonly box: BoxTrust & Pick<FlowBox, 'constant'>;
  readonly traverse: TraverseTrust;
  readonly hood: { readonly powered: Ratio; readonly unpowered: Ratio };
}

/**
 * The airflow at a grille by whichever method was used, with that method's error and the limits of the method it broke.
 *
 * Q = V / t̄,  c A √Δp,  V̄ A κ  or  Q̄
 *
 * Letters, units and ranges as in each method's own function.
 *
 * @source RESNET 804 for bag and box; LBNL-5982E for hoods; common practice for the traverse
 */
export function measuredAirflow(readings: GrilleReadings, trust: MethodTrust): MeasuredAirflow {
  switch (readings.method) {
    case 'bag':
      return timedBagAirflow({ ...readings, trust: trust.bag });
    case 'box':
      return measuredByBox({
        box: { opening: readings.opening, constant: trust.box.constant },
        pressures: readings.pressures,
        trust: trust.box,
      });
    case 'traverse':
      return traverseAirflow({ ...readings, trust: trust.traverse });
    case 'hood':
      return measuredByHood({
        readings: readings.airflows,
        error: readings.powered ? trust.hood.powered : trust.hood.unpowered,
      });
  }
}
