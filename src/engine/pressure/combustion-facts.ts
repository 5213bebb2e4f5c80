import type { Estimate } from '#quantity/estimate.ts';
import type { Pascals } from '#quantity/units.ts';

/** How an appliance that burns fuel gets its air and loses its smoke. `unknown` is treated as the worst of them. */
export type FuelAppliance =
  | 'natural draft'
  | 'unvented'
  | 'solid fuel'
  | 'induced draft'
  | 'power vented'
  | 'sealed'
  | 'unknown';

type YesNoUnknown = 'yes' | 'no' | 'unknown';

/**
 * Those of some place. Empty means "none there"; `unknown` that somebody looked or was told to and cannot say; `not asked`
 * that the question was never put, so that a bare sum about a door is not answered with a stop.
 */
export type AppliancesSaid = readonly FuelAppliance[] | 'unknown' | 'not asked';

/** What is known about burning appliances, and by whom. What nobody looked at is said to be so, never absent. */
export interface CombustionFacts {
  /** Every fuel-burning appliance that takes air from the house or vents through it. */
  readonly appliances: AppliancesSaid;
  /** Those in the bathroom, or in a closet that opens only into it. */
  readonly appliancesInBathZone: AppliancesSaid;
  /** Only a lead may record "none" or "sealed"; from anyone else the answer stays unknown. */
  readonly recordedBy: 'lead' | 'other';
  /** What was seen that proves the sealed ones sealed. */
  readonly sealedProof: 'two pipes seen' | 'rating plate seen' | 'nothing seen';
  /** How far below outdoors the house may fall, at the upper flow of every fan; `unknown` without a leakage. */
  readonly houseDepressurisation: Estimate<Pascals> | 'unknown';
  readonly attachedGarage: YesNoUnknown;
  readonly carbonMonoxideAlarm: 'sounding' | 'fitted and tested' | 'none' | 'unknown';
  /** Smoke or hot gas coming back; `unknown` that somebody was asked and cannot say. */
  readonly spillageSeen: YesNoUnknown | 'not asked';
  /** Parts per million above outdoors, or that nobody measured. */
  readonly carbonMonoxide: number | 'not measured';
}

/** Where the lines are drawn. */
export interface CombustionLimits {
  /** Depressurisation, as a positive number, at which an appliance of the kind may spill into the house. */
  readonly depressurisation: Readonly<Record<FuelAppliance, Pascals>>;
  /** Depressurisation past which garage air and soil gas are a worry of their own. */
  readonly garage: Pascals;
  /** Parts per million above outdoors at which somebody must find the cause. */
  readonly carbonMonoxideRaised: number;
  /** Parts per million above outdoors at which everybody goes outside. */
  readonly carbonMonoxideHigh: number;
}
