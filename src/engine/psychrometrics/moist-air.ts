import { type KilogramsPerCubicMetre, kilogramsPerCubicMetre } from '#quantity/units.ts';
import type { AirByHumidityRatio } from './humidity.ts';
import { absoluteZeroOffset } from './saturation-pressure.ts';

/** Gas constant of dry air, J/(kg·K). ASHRAE Handbook, Fundamentals 2017, chapter 1. */
const dryAirGasConstant = 287.042;
/** Molar mass of dry air over that of water. ASHRAE Handbook, Fundamentals 2017, chapter 1. */
const inverseMolarMassRatio = 1.607858;
/** Heat to warm a kilogram of dry air by one kelvin, J/(kg·K). ASHRAE Handbook, Fundamentals 2017, chapter 1. */
export const dryAirSpecificHeat = 1006;
/** Heat to warm a kilogram of vapour by one kelvin, J/(kg·K). ASHRAE Handbook, Fundamentals 2017, chapter 1. */
export const vapourSpecificHeat = 1860;
/** Heat to evaporate a kilogram of water at 0 °C, J/kg. ASHRAE Handbook, Fundamentals 2017, chapter 1. */
const evaporationHeat = 2_501_000;

/**
 * The room taken up by each kilogram of dry air together with the vapour in it, m³/kg of dry air.
 *
 * v = R T (1 + 1.607858 W) / p
 *
 * R = 287.042 J/(kg·K), T in K, W humidity ratio, p in Pa. Perfect gas; within 0.1 % of the printed table.
 *
 * @source ASHRAE Handbook, Fundamentals 2017, chapter 1, equation 26
 */
export function specificVolume({ temperature, humidityRatio: W, pressure }: AirByHumidityRatio): number {
  return (dryAirGasConstant * (temperature + absoluteZeroOffset) * (1 + inverseMolarMassRatio * W)) / pressure;
}

/**
 * What a cubic metre of air weighs, its vapour included. Damp air is lighter than dry air.
 *
 * ρ = (1 + W) / v
 *
 * ρ in kg/m³, W humidity ratio, v specific volume in m³/kg of dry air.
 *
 * @source ASHRAE Handbook, Fundamentals 2017, chapter 1, equation 10
 */
export function moistAirDensity(air: AirByHumidityRatio): KilogramsPerCubicMetre {
  return kilogramsPerCubicMetre((1 + air.humidityRatio) / specificVolume(air));
}

/**
 * Heat held by each kilogram of dry air with its vapour, counted from dry air and water at 0 °C, J/kg of dry air.
 *
 * h = 1006 t + W (2 501 000 + 1860 t)
 *
 * t in °C, W humidity ratio. −50 °C to 110 °C.
 *
 * @source ASHRAE Handbook, Fundamentals 2017, chapter 1, equation 30
 */
export function enthalpy({ temperature: t, humidityRatio: W }: Omit<AirByHumidityRatio, 'pressure'>): number {
  return dryAirSpecificHeat * t + W * (evaporationHeat + vapourSpecificHeat * t);
}
