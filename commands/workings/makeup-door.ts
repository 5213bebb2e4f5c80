import { openingPressure } from '#engine/pressure/orifice.ts';
import type { Finding, Step, Table, Value } from '#findings/finding.ts';
import type { UnitSystem } from '#interview/question.ts';
import { airflowMethods } from '#knowledge/airflow.ts';
import { doorPressureLimits, makeUpSentences } from '#knowledge/make-up.ts';
import { moistureMethods } from '#knowledge/moisture.ts';
import type { Citation } from '#knowledge/sources.ts';
import { type Estimate, isExact } from '#quantity/estimate.ts';
import { airflow, openingArea, roomPressure, smallLength } from '#quantity/kinds.ts';
import {
  cubicMetresPerSecond,
  inEach,
  leading,
  type Metres,
  metres,
  type Pascals,
  pascals,
  ratio,
  squareMetres,
} from '#quantity/units.ts';
import { citations } from './citations.ts';
import { doorVerdict, doorWord } from './door-verdict.ts';
import type { DoorResult, GapThatDoes } from './makeup-result.ts';
import { doorSteps, gapSteps, orificeSum, pathSteps } from './makeup-working.ts';

const orifice: Citation = moistureMethods.orifice.citation;
const { fine, choked, 'door-drop': dropAllowed } = doorPressureLimits;
const percent = (share: number): string => `${Math.round(100 * share)} %`;

/** A gap that is needed, on the next mark of the tape: rounding it down would make it too small. */
const gapShown = (gap: Metres, units: UnitSystem): string =>
  inEach(units, (system) => {
    const mark = system === 'metric' ? 0.001 : 0.0254 / 8;
    return smallLength.showShort(metres(Math.ceil(gap / mark - 1e-6) * mark), system);
  });

/** What the shut door does, as it is now. */
export function doorPressureFinding(result: DoorResult, units: UnitSystem): Finding {
  const { air, shut, open, pressure, drop, pair } = result;
  const short = (flow: number) => airflow.showShort(cubicMetresPerSecond(flow), units);
  const base = {
    id: 'door-pressure',
    working: [...doorSteps(result, units), ...pathSteps(result, units)],
    sources: citations(orifice, ...(air.ready ? [airflowMethods['operating-point'].citation] : []), fine.citation),
  };
  if (!Number.isFinite(pressure.typical)) {
    const none = air.ready ? 'none gets through' : `${short(shut)} cannot be true with it shut`;
    return {
      ...base,
      weight: 'caution',
      says: `Let air in: with no gap and no grille the shut door holds everything back, and ${none}.`,
      value: { number: null, unit: roomPressure.siUnit, shown: 'no way in' },
    };
  }
  const shown = roomPressure.show(pressure.typical, units);
  const { hall } = air.openings(air.typical);
  const second = hall ? openingPressure(hall, { airflow: shut, density: air.density }) : pascals(0);
  const measured = pair ? ` Measured, shutting it costs ${percent(drop ?? 0)}.` : '';
  const door = air.ready
    ? `With the door shut ${short(shut)} gets through, with it open ${short(open)}: the door costs ${percent(drop ?? 0)} and takes ${shown}.`
    : `The shut door takes ${shown} at ${short(shut)}: ${doorVerdict[doorWord(pressure.typical)]}.${measured}`;
  return {
    ...base,
    weight: second > choked.value ? 'caution' : weightOf(pressure.typical, drop),
    says: hall ? `${door} The second door on the way takes ${roomPressure.show(second, units)}.` : door,
    value: pressureValue(pressure, units),
  };
}

function weightOf(pressure: Pascals, drop: number | null): Finding['weight'] {
  if (drop !== null && drop >= dropAllowed.value) return 'caution';
  if (drop === null && pressure > choked.value) return 'caution';
  return pressure <= fine.value ? 'good' : 'advice';
}

function pressureValue({ low, typical, high }: Estimate<Pascals>, units: UnitSystem): Value {
  const exact = low === high;
  const usually = exact ? '' : `, usually ${roomPressure.showRangeShort({ low, high }, units)}`;
  return {
    number: typical,
    unit: roomPressure.siUnit,
    ...(exact ? {} : { low, high }),
    shown: `${roomPressure.show(typical, units)}${usually}`,
  };
}

/** How high the gap has to be: by the share of air it may cost where that can be told, and by the pressures beside it. */
export function gapNeededFinding(result: DoorResult, units: UnitSystem): Finding {
  const { byDrop, byPressure, drop, pair, air, wayIn } = result;
  const main = byDrop ?? byPressure.fine;
  const by = gapsByPressure(result, units);
  const base = {
    id: 'gap-needed',
    working: [...gapSteps(result, units)],
    sources: citations(orifice, makeUpSentences['measure-the-drop'].citation, fine.citation, choked.citation),
    table: gapTable(result, units),
  };
  const grille = grilleInstead(result, main, units);
  const proof = pair ? '' : ` ${makeUpSentences['measure-the-drop'].says}`;
  if (!Number.isFinite(main.gap)) {
    return {
      ...base,
      weight: 'caution',
      says: `No gap under this door brings the drop under ${percent(dropAllowed.value)}: the second door on the way already costs more. Open that one first.${proof}`,
    };
  }
  const { low, high } = result.band;
  const value: Value = {
    number: main.gap,
    unit: smallLength.siUnit,
    ...(isExact(result.band) ? {} : { low, high }),
    shown: isExact(result.band)
      ? gapShown(main.gap, units)
      : `${gapShown(main.gap, units)}, usually ${gapShown(low, units)} to ${gapShown(high, units)}`,
  };
  if (byDrop === null) {
    return {
      ...base,
      weight: wayIn.door.gap.typical >= main.gap ? 'good' : 'advice',
      value,
      says: `${by}${grille}${proof}`,
    };
  }
  const enough = (drop ?? 1) < dropAllowed.value;
  const how = pair ? 'Measured' : 'By this sum';
  const lead = enough
    ? `${how}, the gap is enough: it costs ${percent(drop ?? 0)}; ${main.gap > 0 ? `${gapShown(main.gap, units)} would cost ${percent(dropAllowed.value)}` : 'the grille alone would do'}.`
    : `Open the gap to ${gapShown(main.gap, units)} or more: then the shut door costs under ${percent(dropAllowed.value)}.`;
  const beside = enough || air.ready === null ? '' : ` ${by}`;
  return {
    ...base,
    weight: enough ? (pair ? 'good' : 'advice') : 'caution',
    value,
    says: `${lead}${beside}${enough ? '' : grille}${proof}`,
  };
}

/** Higher than this a gap is seen and heard through; a grille is then the better way in. Common practice, no source. */
const highestWanted = smallLength.from(1, 'in');

function grilleInstead({ air, wayIn }: DoorResult, { gap }: GapThatDoes, units: UnitSystem): string {
  if (gap <= highestWanted) return '';
  const { doorWidth } = air.openings(air.typical);
  const open = squareMetres((gap - wayIn.door.gap.typical) * doorWidth);
  return ` So high a gap is seldom wanted: a grille with ${openingArea.showShort(open, units)} open, beside the gap as it is, does the same.`;
}

function gapsByPressure({ byPressure }: DoorResult, units: UnitSystem): string {
  const at = ({ gap }: GapThatDoes) => gapShown(gap, units);
  const pa = (pressure: Pascals) => roomPressure.showShort(pressure, units);
  return `A gap of ${at(byPressure.choked)} keeps it at ${pa(choked.value)}, where a fan begins to choke; ${at(byPressure.fine)} at ${pa(fine.value)}, which nobody need mind.`;
}

/** Gaps a saw leaves, in each crew's own marks. */
const usualGaps = {
  'inch-pound': [0.25, 0.5, 0.75, 1, 1.5].map((inches) => smallLength.from(inches, 'in')),
  metric: [5, 10, 15, 20, 30, 40].map((millimetres) => smallLength.from(millimetres, 'mm')),
} as const;

/** What each gap passes, costs and takes. */
function gapTable({ air, wayIn, open }: DoorResult, units: UnitSystem): Table {
  const { typical } = air;
  const now = wayIn.door.gap.typical;
  const others = usualGaps[leading(units)].filter((gap) => Math.abs(gap - now) > 5e-4);
  const gaps = [...others, now].filter((gap) => gap > 0).sort((one, other) => one - other);
  const through = (gap: Metres) => cubicMetresPerSecond(air.shut(typical, gap));
  const name = (gap: Metres) => `${smallLength.showShort(gap, units)}${gap === now ? ', as it is' : ''}`;
  const pressureAt = (gap: Metres) => pascals(air.doorPressure(typical, gap));
  const taken = (gap: Metres) => `${roomPressure.showShort(pressureAt(gap), units)}, ${doorWord(pressureAt(gap))}`;
  return air.ready
    ? {
        title: 'What the gap under the door does',
        columns: ['gap', 'gets through', 'costs', 'pressure'],
        rows: [
          ...gaps.map((gap) => [
            name(gap),
            airflow.showShort(through(gap), units),
            percent(1 - through(gap) / open),
            taken(gap),
          ]),
          ['door open', airflow.showShort(open, units), '', ''],
        ],
      }
    : {
        title: `What the gap takes at ${airflow.showShort(through(now), units)}`,
        columns: ['gap', 'pressure'],
        rows: gaps.map((gap) => [name(gap), taken(gap)]),
      };
}

/** A fan this much faster is the next size up; what it would gain tells whether a stronger fan is any cure. */
const nextSize = ratio(1.25);

/** Where a stronger fan stops helping: what the way in passes before the door chokes it. */
export function tooMuchFinding(result: DoorResult, units: UnitSystem): Finding {
  const { chokedAt, open, shut, air, drop, pressure } = result;
  const short = (airflowNow: number) => airflow.showShort(cubicMetresPerSecond(airflowNow), units);
  const asks = result.pair?.open ?? open;
  const limit = roomPressure.showShort(choked.value, units);
  const density = { density: air.density };
  const { bath } = air.openings(air.typical);
  const stronger = air.faster?.(air.typical, nextSize);
  const taken =
    stronger === undefined
      ? pressure.typical
      : openingPressure(bath, { airflow: cubicMetresPerSecond(stronger), ...density });
  const working: Step[] = [
    {
      what: `What the way in passes at ${limit}`,
      how: orificeSum(bath, { pressure: choked.value, ...density }),
      value: airflow.show(chokedAt, units),
      source: orifice,
    },
    ...(stronger === undefined
      ? []
      : [
          {
            what: 'The same fan a quarter faster, next to the same duct and door',
            value: `${short(stronger)} instead of ${short(shut)}, ${roomPressure.show(taken, units)} across the door`,
            source: airflowMethods['fan-laws'].citation,
          },
        ]),
  ];
  const passes = `The way in passes ${short(chokedAt)} before the door takes ${limit}`;
  const next =
    stronger === undefined
      ? ''
      : ` The next size up would bring ${short(stronger)} instead of ${short(shut)}, and pull ${roomPressure.showShort(taken, units)}.`;
  const tooMuch = drop === null ? asks > chokedAt : drop >= dropAllowed.value;
  return {
    id: 'too-much-fan',
    weight: tooMuch ? 'caution' : asks > chokedAt ? 'advice' : 'good',
    says: tooMuch
      ? `Too much fan for this door. ${passes}; the fan asks for ${short(asks)}.${next} Open the way in before buying a stronger one.`
      : `${passes}; the fan asks for ${short(asks)}.${asks > chokedAt ? next : ''}`,
    value: { number: chokedAt, unit: airflow.siUnit, shown: airflow.show(chokedAt, units) },
    working,
    sources: citations(
      orifice,
      choked.citation,
      ...(stronger === undefined ? [] : [airflowMethods['fan-laws'].citation]),
    ),
  };
}
