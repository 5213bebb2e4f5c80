import { humidityRatio, saturationHumidityRatio } from '#engine/psychrometrics/humidity.ts';
import { specificVolume } from '#engine/psychrometrics/moist-air.ts';
import { celsius, type Ratio, ratio } from '#quantity/units.ts';
import type { Bathroom } from './bathroom.ts';
import { filmGrowth, moistureTransfer, type WetSurface } from './film.ts';

/** Where the water is at one moment. */
export interface RoomWater {
  /** Vapour, fog and what the walls have taken up, kg for each kg of dry air in the room. */
  readonly store: number;
  /** Films, kg/m². */
  readonly cool: number;
  readonly mirror: number;
  readonly splash: number;
}

/** A bathroom with its fixed numbers worked out once, so that a step of the solver is only arithmetic. */
export interface DryingRoom {
  readonly bathroom: Bathroom;
  /** Kilograms of dry air in the room, and drawn out each second while the fan is on. */
  readonly dryAir: number;
  readonly dryAirDrawn: number;
  readonly houseHumidity: Ratio;
  /** Humidity ratio past which the room air sheds water as fog; without end where the model forms none. */
  readonly fogsAt: Ratio;
  readonly walls: WetSurface;
  readonly mirror: WetSurface;
}

/**
 * The masses and saturation levels that stay put through one shower and the drying after it.
 *
 * m_da = V / v,  m_f = ε Q / v,  v at the room temperature and the house humidity
 *
 * V room volume in m³, Q delivered airflow in m³/s, ε mixing, v specific volume in m³/kg of dry air.
 *
 * @source own working, model RT-1
 */
export function dryingRoom(bathroom: Bathroom): DryingRoom {
  const { roomTemperature, pressure, surfaceChill, mirrorChill } = bathroom;
  const houseHumidity = humidityRatio({
    temperature: bathroom.houseTemperature,
    relativeHumidity: bathroom.houseRelativeHumidity,
    pressure,
  });
  const volume = specificVolume({ temperature: roomTemperature, humidityRatio: houseHumidity, pressure });
  const surface = (chill: number): WetSurface => ({
    saturation: saturationHumidityRatio(celsius(roomTemperature - chill), pressure),
    patchyFilm: bathroom.patchyFilm,
    transfer: moistureTransfer(bathroom.convection),
  });
  return {
    bathroom,
    dryAir: bathroom.roomVolume / volume,
    dryAirDrawn: (bathroom.mixing * bathroom.deliveredAirflow) / volume,
    houseHumidity,
    fogsAt: bathroom.fogForms ? saturationHumidityRatio(roomTemperature, pressure) : ratio(Number.POSITIVE_INFINITY),
    walls: surface(surfaceChill),
    mirror: surface(mirrorChill),
  };
}

/**
 * Vapour in the room air: what is stored, shared with the walls, and no more than the air can carry where fog forms.
 *
 * W = min(S / Φ, W_sat)
 *
 * S store in kg/kg of dry air, Φ storage factor, W_sat saturation humidity ratio at the room temperature.
 *
 * @source own working, model RT-1; the fog limit is an addition to it
 */
export function roomVapour(room: DryingRoom, store: number): Ratio {
  return ratio(Math.min(store / room.bathroom.storage, room.fogsAt));
}

/**
 * Water hanging in the room air as fog, kg for each kg of dry air.
 *
 * F = max(0, S − Φ W)
 *
 * S store in kg/kg of dry air, Φ storage factor, W vapour.
 *
 * @source own working, an addition to model RT-1
 */
export function roomFog(room: DryingRoom, store: number): number {
  return Math.max(0, store - room.bathroom.storage * room.fogsAt);
}

/**
 * How fast each store of water in the room changes, per second.
 *
 * m_da dS/dt = g − Σ A_i dm_i/dt − m_f (W + F − W_house)
 *
 * g vapour from the shower in kg/s, A_i and m_i area in m² and film in kg/m² of the cool walls, the mirror and the
 * splashed surfaces, F fog in kg/kg of dry air: the fan draws out fog along with vapour. The room keeps one
 * temperature throughout. The splash film is left where it is while the shower flows.
 *
 * @source own working, model RT-1 with fog and a mirror of its own added
 */
export function waterFlow(room: DryingRoom, water: RoomWater, showering: boolean): RoomWater {
  const flow = inARow(water);
  waterFlowOf(room)(flow, flow, showering);
  return named(flow);
}

/**
 * The numbers of `RoomWater` in a row, in its order: a solver fills the same few rows thousands of times over and leaves nothing
 * to clean up.
 */
export type WaterRow = Float64Array;

/**
 * The numbers in a row.
 *
 * (S, m_cool, m_mirror, m_splash)
 *
 * @source own working: a way of writing, no physics
 */
export const inARow = ({ store, cool, mirror, splash }: RoomWater): WaterRow =>
  Float64Array.of(store, cool, mirror, splash);

/**
 * A row by its names.
 *
 * (S, m_cool, m_mirror, m_splash)
 *
 * @source own working: a way of writing, no physics
 */
export const named = (row: WaterRow): RoomWater => ({
  store: row[0] as number,
  cool: row[1] as number,
  mirror: row[2] as number,
  splash: row[3] as number,
});

/** Writes how fast each store of water changes over a row. It may be the row of the water itself. */
type WaterFlowInto = (flow: WaterRow, water: WaterRow, showering: boolean) => void;

/**
 * `waterFlow` of one room, row by row: whatever stays put is taken out of the room once.
 *
 * @source own working, model RT-1 with fog and a mirror of its own added
 */
export function waterFlowOf(room: DryingRoom): WaterFlowInto {
  const { bathroom, walls, mirror, fogsAt, dryAir, dryAirDrawn, houseHumidity } = room;
  const { storage, coolArea, mirrorArea, splashArea, fanDuringShower, moistureRelease } = bathroom;
  const mostHeld = storage * fogsAt;
  return (flow, water, showering) => {
    const store = water[0] as number;
    const air = ratio(Math.min(store / storage, fogsAt));
    const cool = filmGrowth(walls, water[1] as number, air);
    const onMirror = filmGrowth(mirror, water[2] as number, air);
    const splash = showering ? 0 : filmGrowth(walls, water[3] as number, air);
    const fog = Math.max(0, store - mostHeld);
    const drawn = !showering || fanDuringShower ? dryAirDrawn * (air + fog - houseHumidity) : 0;
    const settled = cool * coolArea + onMirror * mirrorArea + splash * splashArea;
    flow[0] = ((showering ? moistureRelease : 0) - settled - drawn) / dryAir;
    flow[1] = cool;
    flow[2] = onMirror;
    flow[3] = splash;
  };
}
