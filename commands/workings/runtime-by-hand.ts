import { type DryingRoom, dryingRoom } from '#engine/moisture/drying-room.ts';
import type { WetSurface } from '#engine/moisture/film.ts';
import type { RecoveryTime } from '#engine/moisture/recovery-level.ts';
import type { RoomMoment } from '#engine/moisture/trajectory.ts';
import type { Step } from '#findings/finding.ts';
import type { UnitSystem } from '#interview/question.ts';
import { moistureMethods } from '#knowledge/moisture.ts';
import { fromSi } from '#quantity/unit-factors.ts';
import { type FollowedRoom, grams, inMinutes } from './runtime-working.ts';

/** Stretches that the time from water off to the crossing is told in. */
const stretches = 4;
const source = moistureMethods['run-time'].citation;

/**
 * The water the fan has to carry out, stretch by stretch, each a product of three numbers that stand there; only the mean
 * dampness of a stretch comes from the followed run. Ends where what is left, spread over the shut room, is what is told.
 */
export function ledgerSteps(followed: FollowedRoom, units: UnitSystem): Step[] {
  const { result, room } = followed;
  const seen = sinceWaterOff(followed);
  const end = momentAfter(seen, result.reboundHeld);
  const first = seen[0];
  if (!end || !first || end === first) return [];
  const { cautious } = room;
  const dry = dryingRoom(cautious);
  const left = (moment: RoomMoment): number => waterLeft(followed, dry, moment);
  const shut = (moment: RoomMoment): number => left(moment) / (dry.dryAir * cautious.storage);
  const places = Array.from({ length: stretches + 1 }, (_, place) =>
    seen.findLast(({ at }) => at <= (end.at * place) / stretches + 1e-6),
  );
  const kept = [...new Set(places)].filter((moment) => moment !== undefined);
  return [
    {
      what: 'Water to be rid of when the shower stops: in the air and its walls past what house air holds, and in the films',
      how: `${weighed(dry.dryAir, units)} × ${cautious.storage} × ${grams(first.vapour - dry.houseHumidity)}${first.fog > 0 ? `, ${gramsOf(first.fog * dry.dryAir)} of fog` : ''}, ${gramsOf(filmsOf(followed, first))} of films`,
      value: gramsOf(left(first)),
      source,
    },
    ...kept.slice(1).flatMap((moment, index): Step[] => {
      const before = kept[index] as RoomMoment;
      const drawn = left(before) - left(moment);
      const minutes = (moment.at - before.at) / 60;
      return [
        {
          what: `From ${inMinutes(before.at)} to ${inMinutes(moment.at)} the fan carries out`,
          how: `${weighed(dry.dryAirDrawn * 60, units)} a minute × ${minutes.toFixed(1)} min × ${grams(drawn / (dry.dryAirDrawn * 60 * minutes))} over the house air, the mean of the followed run`,
          value: `${gramsOf(drawn)}, ${gramsOf(left(moment))} left`,
          source,
        },
      ];
    }),
    {
      what: `Spread over the shut room, what is left after ${inMinutes(end.at)} makes`,
      how: `${grams(dry.houseHumidity)} of the house air + ${gramsOf(left(end))} ÷ (${weighed(dry.dryAir, units)} × ${cautious.storage})`,
      value: grams(dry.houseHumidity + shut(end)),
      source,
    },
  ];
}

/** The air of the minute in which a time falls: what the walls give back and the fan carries out, and what that changes. */
export function airMinuteStep(followed: FollowedRoom, time: RecoveryTime, units: UnitSystem): Step[] {
  const around = minuteAround(followed, time);
  if (!around) return [];
  const { cautious } = followed.room;
  const dry = dryingRoom(cautious);
  const [before, after] = around;
  const drawn = waterLeft(followed, dry, before) - waterLeft(followed, dry, after);
  const given = filmsOf(followed, before) - filmsOf(followed, after);
  const changed = drawn - given;
  return [
    {
      what: `In the minute to ${inMinutes(after.at)} the air loses`,
      how: `(${finelyOf(drawn)} carried out − ${finelyOf(given)} given back by wet walls) ÷ (${weighed(dry.dryAir, units)} × ${cautious.storage})`,
      value: finely(changed / (dry.dryAir * cautious.storage)),
      source,
    },
    {
      what: `It carries after ${inMinutes(after.at)}`,
      how: `${finely(before.vapour + before.fog / cautious.storage)} − ${finely(changed / (dry.dryAir * cautious.storage))}`,
      value: finely(after.vapour + after.fog / cautious.storage),
      source,
    },
  ];
}

/** What a wet surface gives up in the minute in which a time falls. */
export function filmMinuteStep(
  followed: FollowedRoom,
  {
    time,
    surface,
    film,
    name,
  }: {
    readonly time: RecoveryTime;
    readonly surface: (room: DryingRoom) => WetSurface;
    readonly film: (moment: RoomMoment) => number;
    readonly name: string;
  },
): Step[] {
  const around = minuteAround(followed, time);
  if (!around) return [];
  const [before, after] = around;
  const { saturation, transfer, patchyFilm } = surface(dryingRoom(followed.room.cautious));
  const air = (before.vapour + after.vapour) / 2;
  const middle = (film(before) + film(after)) / 2;
  const wetted = Math.min(1, middle / patchyFilm);
  const each = transfer * 60;
  return [
    {
      what: `In the minute to ${inMinutes(after.at)} ${name} gives up`,
      how: `${each.toFixed(3)} g/m² for each g/kg × (${grams(saturation)} at the surface − ${grams(air)} in the air) × ${Math.round(100 * wetted)} % still wet`,
      value: `${(1000 * each * (saturation - air) * wetted).toFixed(2)} g/m²`,
      source,
    },
  ];
}

/** The moments since the water was turned off. */
const sinceWaterOff = ({ moments }: FollowedRoom): readonly RoomMoment[] => moments.filter(({ at }) => at >= 0);

const momentAfter = (seen: readonly RoomMoment[], time: RecoveryTime): RoomMoment | undefined =>
  time.found ? seen.find(({ at }) => at >= time.after) : undefined;

function minuteAround(followed: FollowedRoom, time: RecoveryTime): readonly [RoomMoment, RoomMoment] | undefined {
  const seen = sinceWaterOff(followed);
  const after = momentAfter(seen, time);
  const before = after && seen[seen.indexOf(after) - 1];
  return before && [before, after];
}

/** Water in the films on walls, mirror and splashed surfaces, kg. */
const filmsOf = ({ room: { cautious } }: FollowedRoom, moment: RoomMoment): number =>
  moment.wallFilm * cautious.coolArea +
  moment.mirrorFilm * cautious.mirrorArea +
  moment.splashFilm * cautious.splashArea;

/** Water past what the house air would hold in the room, films and fog counted, kg. */
const waterLeft = (followed: FollowedRoom, dry: DryingRoom, moment: RoomMoment): number =>
  dry.dryAir * (followed.room.cautious.storage * (moment.vapour - dry.houseHumidity) + moment.fog) +
  filmsOf(followed, moment);

/** One minute changes little: the third decimal lets the sum come out. */
const finely = (share: number): string => `${(1000 * share).toFixed(3)} g/kg`;

const finelyOf = (kilograms: number): string => `${(1000 * kilograms).toFixed(2)} g`;
const gramsOf = (kilograms: number): string => `${(1000 * kilograms).toFixed(1)} g`;

/** Kilograms; a crew that thinks in pounds is told those too, for grams for each kilogram need kilograms. */
const weighed = (kilograms: number, units: UnitSystem): string =>
  units === 'metric'
    ? `${kilograms.toFixed(3)} kg`
    : `${kilograms.toFixed(3)} kg (${fromSi(kilograms, 'lbm', 'kg').toFixed(2)} lb)`;
