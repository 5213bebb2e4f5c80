import { type Amperes, amperes, type Ratio, type Volts, type Watts, watts } from '#quantity/units.ts';

/** Something that draws power. A heater or a filament lamp has a power factor of 1; a small motor has less. */
export interface Load {
  readonly power: Watts;
  readonly voltage: Volts;
  readonly powerFactor: Ratio;
}

/**
 * The current a load draws, from its watts.
 *
 * I = P / (V × pf)
 *
 * I in A, P in W, V in V, pf the power factor, over 0 and at most 1. The amperes printed on the label go before this sum.
 *
 * @source own working: single-phase alternating-current power
 */
export function currentDrawn({ power, voltage, powerFactor }: Load): Amperes {
  return amperes(power / (voltage * powerFactor));
}

/**
 * What several loads draw together.
 *
 * P = Σ P_i
 *
 * @source own working
 */
export function powerTogether(loads: readonly Watts[]): Watts {
  return watts(loads.reduce((sum, load) => sum + load, 0));
}
