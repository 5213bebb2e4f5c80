import type { DuctKind, FittingId } from '#knowledge/ducts.ts';
import type { Estimate } from '#quantity/estimate.ts';
import type { Metres, Ratio } from '#quantity/units.ts';

/** A length of one kind of duct. */
export interface DuctPart {
  readonly part: 'duct';
  readonly kind: DuctKind;
  /** `null` where nothing was said: it takes its neighbour's. */
  readonly diameter: Metres | null;
  readonly length: Estimate<Metres>;
  /** Flex only: how far it is from fully stretched. `null` where nothing was said. */
  readonly compression: Estimate<Ratio> | null;
  readonly roughness: Metres | null;
}

/** Elbows, caps, dampers and the like. `custom` is anything not in the list, with its own coefficient. */
export interface FittingPart {
  readonly part: 'fitting';
  readonly fitting: FittingId | 'custom';
  readonly count: number;
  readonly diameter: Metres | null;
  readonly coefficient: number | null;
}

/** A change of diameter in the direction of the air. */
export interface TransitionPart {
  readonly part: 'transition';
  readonly from: Metres;
  readonly to: Metres;
  readonly coefficient: number | null;
}

export type RunPart = DuctPart | FittingPart | TransitionPart;

/** The duct from the fan to outdoors, part by part. */
export interface DuctRun {
  readonly parts: readonly RunPart[];
}
