import type { Bathroom } from '#engine/moisture/bathroom.ts';
import { type RunTimeInput, runTimeDirections } from '#engine/moisture/run-time-directions.ts';
import { squeegeed } from '#engine/moisture/shortening.ts';
import { atmosphericPressure } from '#engine/psychrometrics/atmospheric-pressure.ts';
import type { Answer, UnitSystem } from '#interview/question.ts';
import { bathroomDefaults, squeegeeLeft } from '#knowledge/moisture.ts';
import type { Estimate } from '#quantity/estimate.ts';
import {
  type Celsius,
  type CubicMetresPerSecond,
  celsius,
  cubicMetres,
  cubicMetresPerSecond,
  type Metres,
  type Ratio,
  ratio,
  type Seconds,
  type SquareMetres,
  seconds,
  squareMetres,
} from '#quantity/units.ts';
import type { Delivered } from './delivered.ts';
import type { AirPath } from './delivery.ts';
import { type Parameters, parameters } from './parameters.ts';

/** Everything that decides how long a fan must run after a shower. */
export interface RunTimeInputs {
  readonly area: Estimate<SquareMetres>;
  readonly ceilingHeight: Estimate<Metres>;
  readonly delivered: Delivered;
  /** Fan, duct and door, where the airflow was worked out from them. */
  readonly path: AirPath | null;
  readonly altitude: Metres;
  readonly showerDuration: Estimate<Seconds>;
  readonly houseHumidity: Estimate<Ratio>;
  readonly houseTemperature: Estimate<Celsius>;
  /** `null` where nobody measured it: a few degrees above the house. */
  readonly bathroomTemperature: Estimate<Celsius> | null;
  readonly fanDuringShower: Answer<'yes' | 'no'>;
  readonly wipeDown: Answer<'yes' | 'no'>;
  readonly mirrorWall: Answer<'inside' | 'outside'>;
}

/** A bathroom whose unknowns can be filled in again and again. */
export interface UnsureBathroom {
  readonly parameters: Parameters;
  /** All unknowns at their typical values. */
  readonly typical: Float64Array;
  bathroom(values: Float64Array): Bathroom;
  /**
   * What the answers are told by: everything typical but the airflow, which is taken at its low end. A fan left on too long
   * costs little; one stopped too soon leaves the room wet.
   */
  readonly cautious: Bathroom;
}

/** How far a shower lifts the bathroom over the house. */
const lift: Estimate = {
  low: bathroomDefaults.roomTemperature.estimate.low - bathroomDefaults.houseTemperature.estimate.typical,
  typical: bathroomDefaults.roomTemperature.estimate.typical - bathroomDefaults.houseTemperature.estimate.typical,
  high: bathroomDefaults.roomTemperature.estimate.high - bathroomDefaults.houseTemperature.estimate.typical,
};

/** The lower half of a range for a mirror on an inside wall, the upper half for one on an outside wall. */
function mirrorChill({ value, known }: RunTimeInputs['mirrorWall']): Estimate {
  const { low, typical, high } = bathroomDefaults.mirrorChill.estimate;
  if (!known) return { low, typical, high };
  return value === 'outside' ? { low: typical, typical: high, high } : { low, typical, high: typical };
}

/** Puts the bathroom together, each unknown entered once. */
export function unsureBathroom(inputs: RunTimeInputs): UnsureBathroom {
  const unknown = parameters();
  const enter = (input: RunTimeInput, estimate: Estimate, measure?: (units: UnitSystem) => string) =>
    unknown.enter({
      estimate,
      direction: runTimeDirections[input].fanMayStop,
      ...(measure === undefined ? {} : { measure }),
    });
  const assumed = (input: Exclude<keyof typeof bathroomDefaults, 'houseRelativeHumidity'>) =>
    enter(input, bathroomDefaults[input].estimate);

  const airflow = enter('deliveredAirflow', inputs.delivered.airflow, () => 'the airflow at the grille');
  const area = enter('roomVolume', inputs.area, () => 'the size of the room');
  const height = enter('roomVolume', inputs.ceilingHeight);
  const shower = enter('showerDuration', inputs.showerDuration, () => 'how long they shower');
  const humidity = enter('houseRelativeHumidity', inputs.houseHumidity, () => 'the humidity of the house');
  const warmth = enter('houseTemperature', inputs.houseTemperature, () => 'the temperature of the house');
  const risen = enter(
    'roomTemperature',
    inputs.bathroomTemperature ?? lift,
    () => 'the temperature of the bathroom after a shower',
  );
  const mixing = assumed('mixing');
  const release = assumed('moistureRelease');
  const storage = assumed('storage');
  const convection = assumed('convection');
  const coolArea = assumed('coolArea');
  const surfaceChill = assumed('surfaceChill');
  const mirrorArea = assumed('mirrorArea');
  const chill = enter('mirrorChill', mirrorChill(inputs.mirrorWall));
  const splashArea = assumed('splashArea');
  const splashFilm = assumed('splashFilm');
  const patchyFilm = assumed('patchyFilm');
  const left = inputs.wipeDown.value === 'yes' ? enter('splashFilm', squeegeeLeft.estimate) : () => 1;
  const pressure = atmosphericPressure(inputs.altitude);

  const bathroom = (values: Float64Array): Bathroom => {
    const houseTemperature = celsius(warmth(values));
    const full: Bathroom = {
      roomVolume: cubicMetres(area(values) * height(values)),
      roomTemperature: celsius(risen(values) + (inputs.bathroomTemperature ? 0 : houseTemperature)),
      deliveredAirflow: cubicMetresPerSecond(airflow(values)),
      mixing: ratio(mixing(values)),
      fanDuringShower: inputs.fanDuringShower.value === 'yes',
      showerDuration: seconds(shower(values)),
      moistureRelease: release(values),
      houseTemperature,
      houseRelativeHumidity: ratio(humidity(values)),
      pressure,
      storage: ratio(storage(values)),
      convection: convection(values),
      coolArea: squareMetres(coolArea(values)),
      surfaceChill: surfaceChill(values),
      mirrorArea: squareMetres(mirrorArea(values)),
      mirrorChill: chill(values),
      splashArea: squareMetres(splashArea(values)),
      splashFilm: splashFilm(values),
      patchyFilm: patchyFilm(values),
      fogForms: true,
    };
    return inputs.wipeDown.value === 'yes' ? squeegeed(full, ratio(left(values))) : full;
  };
  const typical = Float64Array.from(unknown.bounded, (bound) => bound.typical);
  return {
    parameters: unknown,
    typical,
    bathroom,
    cautious: withAirflow(bathroom(typical), inputs.delivered.airflow.low),
  };
}

/** The same bathroom with another airflow. */
export const withAirflow = (bathroom: Bathroom, deliveredAirflow: CubicMetresPerSecond): Bathroom => ({
  ...bathroom,
  deliveredAirflow,
});
