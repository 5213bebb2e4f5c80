import { type Interview, offer, take } from '#interview/interview.ts';
import type { Answer, AnyQuestion, UnitSystem } from '#interview/question.ts';
import type { Estimate } from '#quantity/estimate.ts';
import { airflow as airflowKind } from '#quantity/kinds.ts';
import type { CubicMetresPerSecond, Metres, SquareMetres } from '#quantity/units.ts';
import { buildingCodeEdition } from '../questions/codes.ts';
import { airflowNeeded } from '../questions/fan.ts';
import {
  ceilingHeight,
  fixtures,
  roomArea,
  roomLength,
  roomWidth,
  running,
  toiletCompartment,
} from '../questions/room.ts';
import { airflowForRoom, areaOf } from './room-need.ts';

/** The air a room needs, and how that is known. */
export interface Needed {
  readonly airflow: CubicMetresPerSecond | null;
  readonly from: 'told' | 'room on the sheet' | 'not known';
}

/** Every question this may take, for the list of a command's options. */
export const neededTakes: readonly AnyQuestion[] = [
  airflowNeeded,
  roomLength,
  roomWidth,
  roomArea,
  ceilingHeight,
  fixtures,
  toiletCompartment,
  running,
  buildingCodeEdition,
];

/** The airflow somebody gave, else what the room on the sheet needs. Asked only where the sheet has neither. */
export function* neededInterview(): Interview<Needed> {
  const told = yield* take(airflowNeeded);
  if (told.known) return { airflow: told.value, from: 'told' };
  const area = yield* take(roomArea);
  const length = yield* take(roomLength);
  const width = yield* take(roomWidth);
  if (!area.known && !(length.known && width.known)) {
    const asked = yield* offer(airflowNeeded);
    const measured = area.asked !== false || (length.asked !== false && width.asked !== false);
    // A plan asks for the room instead; where nobody knows it, the room that stands in says what the plan goes by.
    if (asked.asked !== false || !measured) return { airflow: asked.value, from: asked.known ? 'told' : 'not known' };
  }
  return yield* neededOfRoom({ area, length, width });
}

/** The same where nothing is asked. */
export function* neededTaken(): Interview<Needed> {
  const told = yield* take(airflowNeeded);
  if (told.known) return { airflow: told.value, from: 'told' };
  const size = { area: yield* take(roomArea), length: yield* take(roomLength), width: yield* take(roomWidth) };
  if (!size.area.known && !(size.length.known && size.width.known)) return { airflow: null, from: 'not known' };
  return yield* neededOfRoom(size);
}

/** The floor of a room as the sheet has it. */
interface RoomSize {
  readonly area: Answer<Estimate<SquareMetres>>;
  readonly length: Answer<Estimate<Metres>>;
  readonly width: Answer<Estimate<Metres>>;
}

function* neededOfRoom({ area, length, width }: RoomSize): Interview<Needed> {
  const height = yield* take(ceilingHeight);
  const stands = yield* take(fixtures);
  const compartment = yield* take(toiletCompartment);
  const runs = yield* take(running);
  const code = yield* take(buildingCodeEdition);
  const need = airflowForRoom({
    length: area.known ? null : length.value,
    width: area.known ? null : width.value,
    area: area.known ? area.value : areaOf(length.value, width.value),
    ceilingHeight: height.value,
    fixtures: stands.value,
    toiletCompartment: compartment,
    running: runs.value,
    code: code.value,
  });
  return { airflow: need.typical, from: 'room on the sheet' };
}

/** Said where the need was worked out from the room rather than told. */
export const neededOnSheet = ({ airflow, from }: Needed, units: UnitSystem): readonly string[] =>
  from === 'room on the sheet' && airflow !== null
    ? [`Airflow the room needs: ${airflowKind.show(airflow, units)}, worked out from the room on the sheet`]
    : [];
