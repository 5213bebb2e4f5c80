import type { AnswerCommand, Telling } from '#chat/command.ts';
import type { Finding } from '#findings/finding.ts';
import type { Reply } from '#findings/reply.ts';
import { type Interview, offer, take, together } from '#interview/interview.ts';
import { makeUpDefaults } from '#knowledge/make-up.ts';
import { exactly } from '#quantity/estimate.ts';
import { airflow } from '#quantity/kinds.ts';
import { type CubicMetresPerSecond, cubicMetresPerSecond, leading, metres } from '#quantity/units.ts';
import { deliveredAirflow, measuredAirflow } from './questions/airflow.ts';
import {
  doorGap,
  doorOpenAirflow,
  doorWidth,
  hallDoorGap,
  hallDoorWidth,
  transferGrille,
  transferGrilleFreeShare,
} from './questions/door.ts';
import { altitude } from './questions/duct.ts';
import { houseLeakage } from './questions/house.ts';
import { otherExhausts } from './questions/house-exhausts.ts';
import { type Delivered, deliveredInterview, deliveredTakes } from './workings/delivered.ts';
import type { AirSource } from './workings/makeup-air.ts';
import { makeupChart } from './workings/makeup-chart.ts';
import { type CombustionAnswers, combustionFindings, mustLeave } from './workings/makeup-combustion.ts';
import { doorPressureFinding, gapNeededFinding, tooMuchFinding } from './workings/makeup-door.ts';
import { combustionInterview, combustionOnSheet, combustionTakes } from './workings/makeup-flames.ts';
import { type HousePull, houseFallOf, houseFinding } from './workings/makeup-house.ts';
import { type DoorPair, type DoorResult, doorResult } from './workings/makeup-result.ts';
import type { WayIn } from './workings/makeup-way-in.ts';
import { pathOnSheet, pathTakes } from './workings/path-on-sheet.ts';

/** Everything that decides how air gets into the bathroom, and what its fan does to the house. */
interface DoorInputs {
  readonly source: AirSource;
  readonly from: Delivered['from'];
  /** A number that was told although fan and duct are on the sheet, and so is put aside. */
  readonly putAside: CubicMetresPerSecond | null;
  /** The most that may really move, where the airflow was given. */
  readonly most: CubicMetresPerSecond | null;
  readonly wayIn: WayIn;
  readonly pair: DoorPair | null;
  readonly others: HousePull['others'];
  readonly leakage: HousePull['leakage'];
}

interface MakeupInputs {
  /** `null` where people must leave: nobody is asked about doors then. */
  readonly door: DoorInputs | null;
  readonly combustion: CombustionAnswers;
}

type Air = Pick<DoorInputs, 'from' | 'putAside' | 'most'> & { readonly source: AirSource };

export function* airInterview(): Interview<Air> {
  const measured = yield* take(measuredAirflow);
  const path = yield* pathOnSheet();
  if (path && !measured.known) {
    const told = yield* take(deliveredAirflow);
    return {
      source: { kind: 'path', path, house: null },
      from: 'worked out from the duct',
      putAside: told.known ? told.value.typical : null,
      most: null,
    };
  }
  const delivered = yield* deliveredInterview();
  const height = yield* take(altitude);
  return {
    source: { kind: 'given', airflow: delivered.airflow, altitude: height.value ?? metres(0) },
    from: delivered.from,
    putAside: null,
    most: delivered.outer.high,
  };
}

export function* wayInInterview(): Interview<WayIn> {
  const [width, gap] = yield* together('need', doorWidth, doorGap);
  const face = yield* offer(transferGrille);
  const grille =
    face.value !== null && face.value > 0
      ? { face: face.value, freeShare: (yield* offer(transferGrilleFreeShare)).value }
      : null;
  const second = yield* take(hallDoorGap);
  const hall = second.value === null ? null : { gap: second.value, width: (yield* take(hallDoorWidth)).value };
  return {
    door: { width: width.value, gap: gap.value },
    ...(grille ? { grille } : {}),
    ...(hall ? { hall: { width: hall.width, gap: exactly(hall.gap) } } : {}),
  };
}

function* makeupInterview(): Interview<MakeupInputs> {
  const already = yield* combustionOnSheet();
  if (mustLeave(already)) return { door: null, combustion: already };
  const { source, ...air } = yield* airInterview();
  const wayIn = yield* wayInInterview();
  const open = yield* take(doorOpenAirflow);
  const combustion = yield* combustionInterview();
  if (mustLeave(combustion)) return { door: null, combustion };
  const leakage = yield* offer(houseLeakage);
  const others = leakage.known ? yield* offer(otherExhausts) : yield* take(otherExhausts);
  const house = leakage.known
    ? { leakage: leakage.value, exponent: makeUpDefaults['leakage-exponent'].estimate.typical }
    : null;
  return {
    door: {
      ...air,
      source: source.kind === 'path' ? { ...source, house } : source,
      wayIn,
      pair:
        source.kind === 'given' && air.from === 'measured' && open.value !== null && open.value > 0
          ? { shut: source.airflow.typical, open: open.value }
          : null,
      others: { value: others.value, known: others.known },
      leakage: leakage.known ? leakage.value : null,
    },
    combustion,
  };
}

function headlineOf(result: DoorResult, { units }: Telling): string {
  const { shut, open, air, pressure } = result;
  const through = airflow.showShort(shut, units);
  if (!Number.isFinite(pressure.typical)) return 'Nothing lets air into this bathroom with the door shut.';
  return air.ready
    ? `${through} gets past the shut door, ${airflow.showShort(open, units)} past the open one.`
    : `What the shut door takes at ${through}, and what the fan does to the house.`;
}

/** Said beside the numbers wherever more is to be minded of flames than that an estimate clears nothing. */
const flamesFirst = ' No number here clears a flame: read the cautions.';

/** What to do now: the first sentence of the first stop. */
const doNow = ([stop]: readonly Finding[]): string | undefined => stop?.says.split(/(?<=\.)\s/)[0];

function assumedOf({ from, putAside, source }: DoorInputs, { units }: Telling): readonly string[] {
  const notes: string[] = [];
  if (putAside !== null) {
    notes.push(
      `Delivered airflow: the ${airflow.showShort(putAside, units)} given is put aside. Fan and duct are on the sheet, so fan, duct and door are worked out together.`,
    );
  }
  if (source.kind === 'given' && from !== 'measured') {
    notes.push(
      'Delivered airflow: taken to move with the door shut. If it was for an open door, less gets through and the door takes less. With fan-curve and duct-run both are worked out together.',
    );
  }
  return notes;
}

/** What this fan draws out of the house: the high end is the most it may, whatever the door. */
function fanPull({ leakage, most }: DoorInputs, result: DoorResult): HousePull['fan'] {
  if (leakage === null) return exactly(result.open);
  const { low, typical, high } = result.fromHouse();
  return { low, typical, high: cubicMetresPerSecond(Math.max(high, most ?? 0)) };
}

function answer({ door, combustion: said }: MakeupInputs, telling: Telling): Reply {
  const { units } = telling;
  if (door === null) {
    const stops = combustionFindings(said, null, units).filter(({ weight }) => weight === 'stop');
    return { headline: doNow(stops) ?? '', findings: stops };
  }
  const result = doorResult(door);
  const pull: HousePull = { fan: fanPull(door, result), others: door.others, leakage: door.leakage };
  const combustion = combustionFindings(said, houseFallOf(pull), units);
  const stops = combustion.filter(({ weight }) => weight === 'stop');
  return {
    headline: doNow(stops) ?? `${headlineOf(result, telling)}${combustion.length > 1 ? flamesFirst : ''}`,
    findings: [
      ...stops,
      doorPressureFinding(result, units),
      gapNeededFinding(result, units),
      ...(Number.isFinite(result.pressure.typical) ? [tooMuchFinding(result, units)] : []),
      houseFinding(pull, units),
      ...combustion.filter(({ weight }) => weight !== 'stop'),
    ],
    get chart() {
      return makeupChart(result, leading(units));
    },
    assumed: assumedOf(door, telling),
    suggestions: [
      { label: 'Measure it, door open and shut', command: 'measure' },
      ...(door.source.kind === 'path' ? [] : [{ label: 'What will the fan deliver?', command: 'duct' }]),
    ],
  };
}

const makeup: AnswerCommand<MakeupInputs> = {
  kind: 'answer',
  name: 'makeup',
  summary: 'What the shut door costs, the gap it needs, the pull on the house, and who must look at flames.',
  example: 'delivered-airflow="80 cfm" door-width="30 in" door-gap="1/2 in" house-leakage="1500 cfm50"',
  takes: [
    ...deliveredTakes,
    ...pathTakes.filter((question) => !(deliveredTakes as readonly unknown[]).includes(question)),
    doorWidth,
    doorGap,
    transferGrille,
    transferGrilleFreeShare,
    hallDoorGap,
    hallDoorWidth,
    doorOpenAirflow,
    ...combustionTakes,
    houseLeakage,
    otherExhausts,
  ],
  interview: makeupInterview,
  answer,
};

export default makeup;
