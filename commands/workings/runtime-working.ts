import { dryingRoom } from '#engine/moisture/drying-room.ts';
import type { RecoveryTime } from '#engine/moisture/recovery-level.ts';
import type { RunTime } from '#engine/moisture/run-time.ts';
import { type RoomMoment, roomTrajectory } from '#engine/moisture/trajectory.ts';
import { humidityRatio } from '#engine/psychrometrics/humidity.ts';
import { specificVolume } from '#engine/psychrometrics/moist-air.ts';
import { saturationPressure } from '#engine/psychrometrics/saturation-pressure.ts';
import type { Step } from '#findings/finding.ts';
import type { UnitSystem } from '#interview/question.ts';
import { bathroomDefaults, moistureMethods, recoveryLimits } from '#knowledge/moisture.ts';
import { airflow, relativeHumidity, roomVolume, temperature as temperatureKind } from '#quantity/kinds.ts';
import { fromSi } from '#quantity/unit-factors.ts';
import { type Celsius, type Ratio, seconds } from '#quantity/units.ts';
import { fineFlow } from './fine.ts';
import type { RunTimeInputs, UnsureBathroom } from './runtime-room.ts';

/** The run that is told, moment by moment, with what its sums need. */
export interface FollowedRoom {
  readonly inputs: RunTimeInputs;
  readonly room: UnsureBathroom;
  readonly result: RunTime;
  /** The same at the most likely airflow, where that is not the low end itself. */
  readonly likely: RunTime | null;
  readonly moments: readonly RoomMoment[];
}

const minute = 60;

/** The moments of a run to a little past its last time, a minute apart. */
export function minuteByMinute(room: UnsureBathroom, result: RunTime): readonly RoomMoment[] {
  const times = [result.fanMayStop, result.surfacesDry].map((time) => (time.found ? time.after : 0));
  const last = Math.max(60 * minute, ...times) + 5 * minute;
  return roomTrajectory(room.cautious, {
    every: seconds(minute),
    until: seconds(Math.min(last, recoveryLimits.longest)),
  });
}

/** Water in air, g for each kg of dry air: the same number in pounds per thousand pounds. */
export const grams = (share: number): string => `${(1000 * share).toFixed(2)} g/kg`;
export const inMinutes = (time: number): string => `${(time / minute).toFixed(1)} min`;
export const percent = (share: number): string => `${(100 * share).toFixed(2)} %`;

const mass = (kilograms: number, units: UnitSystem, per = ''): string =>
  units === 'metric' ? `${kilograms.toFixed(2)} kg${per}` : `${fromSi(kilograms, 'lbm', 'kg').toFixed(2)} lb${per}`;

/** What air of some humidity carries, as a sum to follow. */
export function carried(
  what: string,
  { relativeHumidity: share, temperature }: { relativeHumidity: Ratio; temperature: Celsius },
  { room, units, source }: { room: UnsureBathroom; units: UnitSystem; source?: Step['source'] },
): Step {
  const { pressure } = room.cautious;
  const full = saturationPressure(temperature);
  const vapour = (share * full).toFixed(0);
  return {
    what: `${what}, ${relativeHumidity.showShort(share, units)} at ${temperatureKind.showShort(temperature, units)}, carries`,
    how: `${relativeHumidity.showShort(share, units)} × ${full.toFixed(0)} Pa = ${vapour} Pa of vapor; 0.62195 × ${vapour} ÷ (${pressure.toFixed(0)} − ${vapour})`,
    value: grams(humidityRatio({ temperature, relativeHumidity: share, pressure })),
    source: source ?? moistureMethods.psychrometrics.citation,
  };
}

/** The room and its air: what every time of the run rests on. */
export function roomSteps({ inputs, room, result }: FollowedRoom, units: UnitSystem): Step[] {
  const { cautious } = room;
  const { dryAir, dryAirDrawn, houseHumidity } = dryingRoom(cautious);
  const volume = specificVolume({
    temperature: cautious.roomTemperature,
    humidityRatio: houseHumidity,
    pressure: cautious.pressure,
  });
  const { low, typical, high } = inputs.delivered.airflow;
  const perKilogram = units === 'metric' ? volume : fromSi(volume, 'ft^3', 'm^3') * 0.45359237;
  const volumeUnit = units === 'metric' ? 'm³/kg' : 'cu ft/lb';
  const flowNow = units === 'metric' ? `${(low * 1000).toFixed(1)} L/s × 0.06` : fineFlow(low, units);
  const released = cautious.moistureRelease * cautious.showerDuration;
  return [
    {
      what: `Delivered airflow, ${inputs.delivered.from}`,
      ...(low === high
        ? {}
        : {
            how: `low end of ${airflow.showRangeShort({ low, high }, units)}, most likely ${airflow.showShort(typical, units)}`,
          }),
      value: airflow.show(low, units),
    },
    carried(
      'The house air',
      { relativeHumidity: cautious.houseRelativeHumidity, temperature: cautious.houseTemperature },
      { room, units },
    ),
    {
      what: 'Dry air in the room',
      how: `${roomVolume.showShort(cautious.roomVolume, units)} ÷ ${perKilogram.toFixed(units === 'metric' ? 3 : 2)} ${volumeUnit}`,
      value: mass(dryAir, units),
      source: moistureMethods.psychrometrics.citation,
    },
    {
      what: 'Air drawn through the room',
      how: `${flowNow} × ${percentOf(cautious.mixing)} that sweeps it ÷ ${perKilogram.toFixed(units === 'metric' ? 3 : 2)} ${volumeUnit}`,
      value: mass(dryAirDrawn * minute, units, ' a minute'),
      source: bathroomDefaults.mixing.citation,
    },
    {
      what: 'Vapor given off by the shower',
      how: `${(cautious.moistureRelease * minute * 1000).toFixed(0)} g a minute × ${inMinutes(cautious.showerDuration)}`,
      value: `${(1000 * released).toFixed(0)} g`,
      source: bathroomDefaults.moistureRelease.citation,
    },
    ...showerSteps(room, result, units),
  ];
}

/**
 * What the shower leaves in the air, as a balance: given off, less carried out, less settled. What settles and the mean
 * dampness come from the run followed in steps of ten seconds.
 */
function showerSteps({ cautious }: UnsureBathroom, { endOfShower }: RunTime, units: UnitSystem): Step[] {
  const { dryAir, dryAirDrawn, houseHumidity } = dryingRoom(cautious);
  const { showerDuration, storage, fanDuringShower, mirrorArea } = cautious;
  const { humidityRatio: vapour, fog, condensed, mirrorFilm } = endOfShower;
  const source = moistureMethods['run-time'].citation;
  const released = cautious.moistureRelease * showerDuration;
  const settled = condensed + mirrorFilm * mirrorArea;
  const held = dryAir * (storage * (vapour - houseHumidity) + fog);
  const drawn = released - settled - held;
  const inGrams = (kilograms: number) => `${(1000 * kilograms).toFixed(1)} g`;
  return [
    ...(fanDuringShower && dryAirDrawn > 0
      ? [
          {
            what: 'The fan carries out while the shower runs',
            how: `${(dryAirDrawn * minute).toFixed(3)} kg a minute × ${inMinutes(showerDuration)} × ${grams(drawn / (dryAirDrawn * showerDuration))} over the house air, the mean of the run followed in steps of ten seconds`,
            value: inGrams(drawn),
            source,
          },
        ]
      : []),
    { what: 'Settled on walls and mirror by then', value: inGrams(settled), source },
    {
      what: 'Left in the air, and in what the walls and towels share of it',
      how: `${inGrams(released)}${fanDuringShower && dryAirDrawn > 0 ? ` − ${inGrams(drawn)}` : ''} − ${inGrams(settled)}`,
      value: inGrams(held),
    },
    fog > 0
      ? {
          what: 'When the water stops the air carries, fog counted',
          how: `full at ${temperatureKind.showShort(cautious.roomTemperature, units)}: ${grams(vapour)}; fog ${inGrams(held)} ÷ ${dryAir.toFixed(3)} kg − ${storage} × (${grams(vapour)} − ${grams(houseHumidity)}) = ${grams(fog)}`,
          value: grams(vapour + fog),
          source,
        }
      : {
          what: 'When the water stops the air carries',
          how: `${grams(houseHumidity)} + ${inGrams(held)} ÷ (${dryAir.toFixed(3)} kg × ${storage})`,
          value: grams(vapour),
          source,
        },
  ];
}

const percentOf = (share: number): string => `${Math.round(100 * share)} %`;

/** Sweeping the air alone by the closed form, and then the walls with it. */
export function airSteps({ room, result, moments }: FollowedRoom, units: UnitSystem): Step[] {
  const { cautious } = room;
  const { dryAir, dryAirDrawn, houseHumidity } = dryingRoom(cautious);
  const { roomTemperature: temperature, pressure, storage } = cautious;
  const limit = humidityRatio({ temperature, relativeHumidity: recoveryLimits.air, pressure });
  const { humidityRatio: vapour, fog } = result.endOfShower;
  const sweep = dryAir / dryAirDrawn;
  const out = (share: number) => (1000 * (share - houseHumidity)).toFixed(2);
  const possible = dryAirDrawn > 0 && limit > houseHumidity;
  return [
    carried(
      'Room air at the limit',
      { relativeHumidity: recoveryLimits.air, temperature },
      { room, units, source: recoveryLimits.citations.air },
    ),
    ...(possible && fog > 0
      ? [
          {
            what: 'Sweeping the fog out alone',
            how: `${inMinutes(sweep)} for the air of the room × ln(${out(vapour + fog)} ÷ ${out(vapour)})`,
            value: inMinutes(sweep * Math.log((vapour + fog - houseHumidity) / (vapour - houseHumidity))),
            source: moistureMethods.dilution.citation,
          },
        ]
      : []),
    ...(possible && vapour > limit
      ? [
          {
            what: 'Sweeping the air alone down to the limit, with what walls and towels share',
            how: `${storage} × ${inMinutes(sweep)} × ln(${out(vapour)} ÷ ${out(limit)})`,
            value: inMinutes(storage * sweep * Math.log((vapour - houseHumidity) / (limit - houseHumidity))),
            source: moistureMethods.dilution.citation,
          },
        ]
      : []),
    crossing('With the wet walls giving back their water, the air crosses the limit', {
      time: result.airRecovers,
      moments,
      level: ({ relativeHumidity: share }) => percent(share),
    }),
  ];
}

/** The minutes before and after a time, with what is read at each, so that the time can be read off between them. */
export function crossing(
  what: string,
  {
    time,
    moments,
    level,
  }: { time: RecoveryTime; moments: readonly RoomMoment[]; level: (moment: RoomMoment) => string },
): Step {
  const source = moistureMethods['run-time'].citation;
  if (!time.found) return { what, value: neverWords[time.why], source };
  const after = moments.findIndex((moment) => moment.at > 0 && moment.at >= time.after);
  const [before, past] = [moments[after - 1], moments[after]];
  if (time.after === 0 || !before || !past) return { what, value: inMinutes(time.after), source };
  return {
    what,
    how: `${level(before)} after ${inMinutes(before.at)}, ${level(past)} after ${inMinutes(past.at)}`,
    value: inMinutes(time.after),
    source,
  };
}

export const neverWords: Readonly<Record<Exclude<RecoveryTime, { found: true }>['why'], string>> = {
  'no air moves': 'never: no air moves',
  'house air too humid': 'never: the house air is too damp',
  'longer than followed': `not within ${inMinutes(recoveryLimits.longest)}`,
};
