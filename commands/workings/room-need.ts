import { type AirflowNeeded, airflowNeeded, type Bathroom } from '#engine/airflow/airflow-needed.ts';
import type { Answer } from '#interview/question.ts';
import { bathroomGuidelineFigures, type LocalExhaustCodeId, localExhaust } from '#knowledge/required-airflow.ts';
import type { Estimate } from '#quantity/estimate.ts';
import { type CubicMetresPerSecond, type Metres, type SquareMetres, squareMetres } from '#quantity/units.ts';

export type FixtureId = 'toilet' | 'shower' | 'tub' | 'jetted-tub' | 'steam-shower';

/** A room as the survey tells it. */
export interface Room {
  readonly length: Estimate<Metres> | null;
  readonly width: Estimate<Metres> | null;
  readonly area: Estimate<SquareMetres>;
  readonly ceilingHeight: Estimate<Metres>;
  readonly fixtures: readonly FixtureId[];
  readonly toiletCompartment: Answer<'yes' | 'no'>;
  readonly running: 'on-demand' | 'continuous';
  readonly code: LocalExhaustCodeId;
}

type End = keyof Estimate;

/** Metric codes print their own rounded figures; the others are read in cfm. */
const codeFigures = (code: LocalExhaustCodeId) => {
  const { intermittent, continuous } = localExhaust[code].bathroom;
  return { intermittent: intermittent.inchPound, continuous: continuous.inchPound };
};

const has = (room: Room, id: FixtureId): number => (room.fixtures.includes(id) ? 1 : 0);

function bathroomAt(room: Room, end: End): Bathroom {
  return {
    area: room.area[end],
    ceilingHeight: room.ceilingHeight[end],
    fixtures: {
      toilet: has(room, 'toilet'),
      shower: has(room, 'shower'),
      tub: has(room, 'tub'),
      jettedTub: has(room, 'jetted-tub'),
    },
    toiletCompartment: room.toiletCompartment.value === 'yes',
    running: room.running === 'continuous' ? 'continuous' : 'on demand',
  };
}

/** What a room needs, and whether that is what a room at the limit of the floor-area rule needs. */
export type RoomNeed = AirflowNeeded & { readonly asAtLimit: boolean };

const larger = (one: CubicMetresPerSecond, other: CubicMetresPerSecond): CubicMetresPerSecond =>
  one >= other ? one : other;

/**
 * What the room needs at one end of what is known of it. Past the limit of the floor-area rule the guideline counts fixtures,
 * and with a single fixture that is less than a smaller room needs. A room is not let off for being larger: it needs what one
 * at the limit needs (own working). So the need never falls as the room grows, and the ends bound it.
 */
export function roomNeed(room: Room, end: End): RoomNeed {
  const figures = { code: codeFigures(room.code), guideline: bathroomGuidelineFigures };
  const bathroom = bathroomAt(room, end);
  const need = airflowNeeded({ room: bathroom, ...figures });
  const { areaLimit } = bathroomGuidelineFigures;
  if (bathroom.area <= areaLimit) return { ...need, asAtLimit: false };
  const atLimit = airflowNeeded({ room: { ...bathroom, area: areaLimit }, ...figures });
  const whenBathing = larger(need.whenBathing, atLimit.whenBathing);
  if (atLimit.needed <= need.needed) return { ...need, whenBathing, asAtLimit: false };
  return { ...need, needed: atLimit.needed, governedBy: atLimit.governedBy, whenBathing, asAtLimit: true };
}

/** What the room needs, as a range. */
export const airflowForRoom = (room: Room): Estimate<CubicMetresPerSecond> => ({
  low: roomNeed(room, 'low').needed,
  typical: roomNeed(room, 'typical').needed,
  high: roomNeed(room, 'high').needed,
});

/** The floor area from length and width. */
export const areaOf = (length: Estimate<Metres>, width: Estimate<Metres>): Estimate<SquareMetres> => ({
  low: squareMetres(length.low * width.low),
  typical: squareMetres(length.typical * width.typical),
  high: squareMetres(length.high * width.high),
});
