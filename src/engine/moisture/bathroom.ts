import type {
  Celsius,
  CubicMetres,
  CubicMetresPerSecond,
  Pascals,
  Ratio,
  Seconds,
  SquareMetres,
} from '#quantity/units.ts';

/** A bathroom, its fan and one shower, as the run-time model sees them. */
export interface Bathroom {
  readonly roomVolume: CubicMetres;
  readonly roomTemperature: Celsius;
  /** What the fan moves through the duct and the door gap that are there, never the carton number. */
  readonly deliveredAirflow: CubicMetresPerSecond;
  /** Share of the delivered air that sweeps the room; the rest goes straight from the door to the fan. 1 at best. */
  readonly mixing: Ratio;
  readonly fanDuringShower: boolean;
  readonly showerDuration: Seconds;
  /** Vapour the shower gives off while it flows, kg/s. */
  readonly moistureRelease: number;
  readonly houseTemperature: Celsius;
  readonly houseRelativeHumidity: Ratio;
  /** Air pressure at the site's altitude. */
  readonly pressure: Pascals;
  /** How many times the room air's own water its walls and cloth take up and give back within the hour. 1 for none. */
  readonly storage: Ratio;
  /** Convective coefficient at wet surfaces, W/(m²·K). */
  readonly convection: number;
  /** Walls and ceiling cool enough to fog. */
  readonly coolArea: SquareMetres;
  /** How far those walls, and the splashed ones, sit under the room temperature, K. */
  readonly surfaceChill: number;
  readonly mirrorArea: SquareMetres;
  /** How far the mirror sits under the room temperature, K. */
  readonly mirrorChill: number;
  /** Walls, floor and curtain the shower itself wets. */
  readonly splashArea: SquareMetres;
  /** Water left on each square metre of them when the shower stops, kg/m². */
  readonly splashFilm: number;
  /** Film under which a surface is wet only in patches, kg/m². */
  readonly patchyFilm: number;
  /**
   * Whether air past saturation sheds the excess as fog, as it does. False keeps it as vapour, which is how the
   * published model has it: its room reads up to 120 % relative humidity.
   */
  readonly fogForms: boolean;
}

/** When a bathroom counts as recovered, and how long to look. */
export interface RecoveryLimits {
  /** Relative humidity the air must come down to. */
  readonly air: Ratio;
  /** Relative humidity at the cool walls that must not be passed again if the fan stops and everything left dries. */
  readonly surface: Ratio;
  /** Film under which a mirror can be used, kg/m². */
  readonly mirrorFilm: number;
  /** Share of the splashed water that may be left when the surfaces count as dry. */
  readonly splashLeft: Ratio;
  /** How long after the shower the model is followed. */
  readonly longest: Seconds;
}
