import type { Ratio } from '#quantity/units.ts';

/** A year's energy and what it is bought at. Money in whatever currency the prices are in. */
export interface EnergyBill {
  /** J. */
  readonly fanEnergy: number;
  /** Heat thrown out, J. */
  readonly heat: number;
  /** Share of the fuel's energy that reaches the rooms; above 1 for a heat pump. */
  readonly heatingEfficiency: Ratio;
  /** Money for each joule of electricity. */
  readonly electricityPrice: number;
  /** Money for each joule of fuel bought. */
  readonly heatPrice: number;
}

export interface RunningCost {
  readonly electricity: number;
  /** Fuel to make up the heat, J. */
  readonly fuel: number;
  readonly heating: number;
  readonly total: number;
}

/**
 * What a year of running a fan costs, in electricity and in heat: an upper bound for heating only.
 *
 * C = E p_e + (H / η) p_h
 *
 * E and H in J, η heating efficiency above zero, p_e and p_h prices for each joule.
 *
 * @source own working
 */
export function runningCost(bill: EnergyBill): RunningCost {
  const fuel = bill.heat / bill.heatingEfficiency;
  const electricity = bill.fanEnergy * bill.electricityPrice;
  const heating = fuel * bill.heatPrice;
  return { electricity, fuel, heating, total: electricity + heating };
}
