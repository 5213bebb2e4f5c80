import { meets, within } from '#quantity/meets.ts';
import { type Amperes, amperes, type Ratio, type Watts } from '#quantity/units.ts';

/** A switch, timer or sensor and what it is to switch. */
export interface ControlledLoad {
  readonly current: Amperes;
  readonly rating: Amperes;
  /** The share of the rating a motor may use; 1 for a load without a motor. */
  readonly share: Ratio;
}

export interface ControlCarries {
  readonly carries: boolean;
  readonly most: Amperes;
}

/**
 * Whether a control is rated for what it is to switch.
 *
 * I ≤ share × rating
 *
 * Amperes at the supply voltage. It says nothing of whether the control is marked for motors at all.
 *
 * @source NFPA 70 (National Electrical Code), 404.14(A)
 */
export function controlCarries({ current, rating, share }: ControlledLoad): ControlCarries {
  const most = amperes(rating * share);
  return { carries: within(current, most), most };
}

/**
 * Whether the load is large enough for an electronic control to hold and let go of. The fan's watts at its lowest speed
 * decide, not those on the carton.
 *
 * P_lowest ≥ P_min
 *
 * @source common practice, no source
 */
export function controlHolds({ lowest, minimum }: { readonly lowest: Watts; readonly minimum: Watts }): boolean {
  return meets(lowest, minimum);
}
