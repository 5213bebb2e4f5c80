import { humidityRatio } from '#engine/psychrometrics/humidity.ts';
import { celsius, type Seconds, seconds } from '#quantity/units.ts';
import type { RecoveryLimits } from './bathroom.ts';
import { type DryingRoom, roomVapour, type WaterRow } from './drying-room.ts';

/** A time after the shower, or the reason there is none. */
export type RecoveryTime =
  | { readonly found: true; readonly after: Seconds }
  | { readonly found: false; readonly why: 'no air moves' | 'house air too humid' | 'longer than followed' };

/** Something that must fall to a level and stay there. */
export interface RecoveryLevel {
  /** The house air alone keeps this level from ever being reached. */
  readonly outOfReach: boolean;
  /** How far past the level the room is; zero or less when it is met. */
  excess(water: WaterRow): number;
}

/** What the fan has to bring down, each as a level. */
export interface RecoveryLevels {
  readonly air: RecoveryLevel;
  readonly mirror: RecoveryLevel;
  readonly rebound: RecoveryLevel;
  readonly splash: RecoveryLevel;
}

/**
 * The four levels of a bathroom that is back to normal, as amounts of water rather than percentages.
 *
 * Air: W ≤ W(T, φ_air). Mirror: m ≤ m_mirror. Splash: m ≤ share of its start.
 * Rebound: (S + Σ A_i m_i / m_da) / Φ ≤ W(T − ΔT_s, φ_surface), every gram left going into the shut room.
 *
 * A level is out of reach when the house air holds more water than the level, or than a surface there gives up.
 *
 * @source own working, model RT-1
 */
export function recoveryLevels(room: DryingRoom, limits: RecoveryLimits): RecoveryLevels {
  const { bathroom, houseHumidity, walls } = room;
  const { roomTemperature: temperature, surfaceChill, pressure } = bathroom;
  const airLimit = humidityRatio({ temperature, relativeHumidity: limits.air, pressure });
  const wallLimit = humidityRatio({
    temperature: celsius(temperature - surfaceChill),
    relativeHumidity: limits.surface,
    pressure,
  });
  const splashLimit = limits.splashLeft * bathroom.splashFilm;
  return {
    air: {
      outOfReach: houseHumidity >= airLimit,
      excess(water) {
        return roomVapour(room, water[0] as number) - airLimit;
      },
    },
    mirror: {
      outOfReach: houseHumidity >= room.mirror.saturation,
      excess(water) {
        return (water[2] as number) - limits.mirrorFilm;
      },
    },
    rebound: {
      outOfReach: houseHumidity >= wallLimit,
      excess(water) {
        return shutRoomVapour(room, water) - wallLimit;
      },
    },
    splash: {
      outOfReach: houseHumidity >= walls.saturation,
      excess(water) {
        return (water[3] as number) - splashLimit;
      },
    },
  };
}

function shutRoomVapour({ bathroom, dryAir }: DryingRoom, water: WaterRow): number {
  const films =
    (water[1] as number) * bathroom.coolArea +
    (water[2] as number) * bathroom.mirrorArea +
    (water[3] as number) * bathroom.splashArea;
  return ((water[0] as number) + films / dryAir) / bathroom.storage;
}

/** Notes when a level was last passed, moment by moment. */
export interface LevelWatch {
  readonly level: RecoveryLevel;
  /** True while the level is met, or can never be. */
  settled(): boolean;
  /** How far past the level the room is at a time, s. */
  see(at: number, excess: number): void;
  /** The last crossing seen, read off a straight line between moments; zero when the level was never passed. */
  crossing(): Seconds;
}

/**
 * A watch on one level: feed it the moments in order, then ask when the level was last crossed.
 *
 * t = t₁ + (t₂ − t₁) e₁ / (e₁ − e₂)
 *
 * e₁ the last excess above zero and e₂ the one after it, at times t₁ and t₂ in s.
 *
 * @source own working
 */
export function levelWatch(level: RecoveryLevel): LevelWatch {
  let crossed = 0;
  let before = 0;
  let excessBefore = 0;
  return {
    level,
    settled() {
      return level.outOfReach || excessBefore <= 0;
    },
    see(at, excess) {
      if (excess <= 0 && excessBefore > 0) {
        crossed = before + ((at - before) * excessBefore) / (excessBefore - excess);
      }
      before = at;
      excessBefore = excess;
    },
    crossing() {
      return seconds(crossed);
    },
  };
}
