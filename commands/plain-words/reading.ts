import { withoutNamed } from '#interview/named-places.ts';
import type { UnitSystem } from '#interview/question.ts';
import { readDuctRun } from '../questions/duct-run-reading.ts';
import { askWords, type ReadingWords } from '../words/ask.ts';
import {
  askedOf,
  bareAirflow,
  cartonRules,
  deliveredRules,
  doable,
  fanActs,
  fanAlone,
  fanByNumber,
  fanDetails,
  fanImplied,
  fanRules,
  measuredRules,
  neededRules,
  runsAt,
} from './airflow-rules.ts';
import { askedBy } from './asked-by.ts';
import { settled } from './bare-units.ts';
import { boxMentioned } from './box-rules.ts';
import { scoreOf } from './commands-meant.ts';
import { ductMentioned } from './duct-mentioned.ts';
import { buildingCodes, wiringCodes } from './edition-rules.ts';
import { costRules, flamesSaid, houseRules, otherExhausts } from './house-rules.ts';
import { labelled } from './labelled.ts';
import { type Fact, fact, looseNumbers, type Taken, taken } from './line.ts';
import { evened } from './measures.ts';
import { doorOpen, hoodReading, measuringRules, methodSaid, readByHood } from './measuring-rules.ts';
import { alwaysOn, fixturesSaid, roomRules, runningSaid } from './room-rules.ts';
import { setAside } from './set-aside.ts';
import { showerHabits } from './shower-habits.ts';
import { putIntoEnglish } from './spanish/reading.ts';
import { putRight } from './taken-back.ts';
import {
  atticHumidities,
  atticLength,
  atticPlaces,
  bareAttic,
  bareExhaust,
  bareHouse,
  belowZero,
  doorBySize,
  doorRules,
  humiditiesIn,
  insulationRules,
  type Place,
  roomHumidities,
  roomTemperatures,
  showerRules,
  temperaturesIn,
  undercutRules,
} from './weather-rules.ts';
import { controlSaid, loadRules, partsRules, unitSaid, wiringSaid } from './wiring-rules.ts';

/** One way to read a line: a command and its facts. */
export interface Reading {
  readonly command: string;
  readonly facts: Readonly<Record<string, string>>;
  /** How well the words fit; higher is surer. */
  readonly score: number;
  /** Numbers that found no place in this reading. */
  readonly loose: readonly string[];
  /** The units that were worked out, in sentences. */
  readonly told: readonly string[];
}

export interface PlainReading {
  /** Best first. */
  readonly readings: readonly Reading[];
}

const longest = 500;
/** Words nobody here knows that are named; a line of more of them is about something else. */
const mostUnknown = 8;

/** Takes facts step by step: each step sees what the ones before it left of the line. */
type Step = (taken: Taken, whole: string, units: UnitSystem) => Taken;

const by =
  (rules: Parameters<typeof taken>[1]): Step =>
  ({ facts, text }) =>
    taken(text, rules, facts);

const also = ({ facts, text }: Taken, more: readonly Fact[]): Taken => ({
  facts: [...facts, ...more.filter(({ id }) => !facts.some((each) => each.id === id))],
  text,
});

/** The same for facts found all at once: the numbers of one that was known before found no place after all. */
const joined = (sofar: Taken, { facts, text }: Taken): Taken => {
  const twice = facts.filter(({ id, answer }) => sofar.facts.some((each) => each.id === id && each.answer !== answer));
  return also(
    { facts: sofar.facts, text: [text, ...twice.flatMap(({ answer }) => looseNumbers(answer))].join(' ') },
    facts,
  );
};

const words =
  (said: (line: string) => readonly Fact[]): Step =>
  (sofar, whole) =>
    also(sofar, said(whole));

/** Facts that are found all at once. */
const among =
  (find: (text: string, known: readonly Fact[]) => Taken): Step =>
  (sofar) =>
    joined(sofar, find(sofar.text, sofar.facts));

const placed =
  (find: typeof temperaturesIn, places: readonly Place[]): Step =>
  (sofar, whole) => {
    const { facts, text } = find(sofar.text, whole, { places, known: sofar.facts });
    return also({ facts: sofar.facts, text }, facts);
  };

/** The same run is read for many commands, one after the other. */
let runBefore: { readonly run: string; readonly units: UnitSystem; readonly readable: boolean } | undefined;
function readableRun(run: string, units: UnitSystem): boolean {
  if (runBefore?.run !== run || runBefore.units !== units)
    runBefore = { run, units, readable: 'value' in readDuctRun(run, units) };
  return runBefore.readable;
}

/** The run of duct, where the line tells of one that can be read. */
const duct: Step = (sofar, _, units) => {
  const collar = sofar.facts.find(({ id }) => id === 'collar')?.answer;
  const { run, withoutRun } = ductMentioned(sofar.text, collar);
  return run !== undefined && readableRun(run, units)
    ? also({ facts: sofar.facts, text: withoutRun }, fact('duct-run', run))
    : sofar;
};

/** The kind, size and elbows of a duct whose length is asked for. */
const ductApart: Step = (sofar) => {
  const { kind, size, elbows, withoutParts } = ductMentioned(sofar.text);
  return also({ facts: sofar.facts, text: withoutParts }, [
    ...(kind === undefined ? [] : fact('duct-kind', kind)),
    ...(size === undefined ? [] : fact('duct-diameter', size)),
    ...(elbows === undefined ? [] : fact('elbows', String(elbows))),
  ]);
};

/** The duct through an attic: its size and its length there. */
const ductInAttic: Step = (sofar, whole, units) => {
  const { size, length, fittings, withoutStretch } = ductMentioned(sofar.text);
  const known = fittings > 0 ? duct(sofar, whole, units) : sofar;
  const text = known === sofar ? withoutStretch : known.text;
  return also({ facts: known.facts, text }, [
    ...(size === undefined ? [] : fact('duct-diameter', size)),
    ...(length === undefined ? [] : fact('attic-duct-length', length)),
  ]);
};

const fan: readonly Step[] = [by(fanRules), by(fanDetails)];
const moved: readonly Step[] = [by(neededRules), by(deliveredRules), by(measuredRules), by(cartonRules)];
const allDay = words((line) => (alwaysOn.test(line) ? fact('hours-per-day', '24 h') : []));
const running = words(runningSaid);

/** Set to an airflow where no settings were told: that is what it moves while it runs. */
const setToRun: Step = ({ facts, text }) => ({
  facts: facts.some(({ id }) => id === 'fan-settings' || id === 'fan-curve' || id === 'delivered-airflow')
    ? facts
    : facts.map((each) => (each.id === 'fan-setting' ? { id: 'delivered-airflow', answer: each.answer } : each)),
  text,
});

/** The year of the wiring is placed where it told the era. */
const yearPlaced: Step = ({ facts, text }) => ({
  facts,
  text: facts.some(({ id }) => id === 'wiring-era') ? text.replace(/\b19\d\d(?=s?\b)/, '~~~~') : text,
});

/** The age of the fan is placed where it told that the fan is old. */
const agePlaced: Step = ({ facts, text }) => ({
  facts,
  text: facts.some(({ id, answer }) => id === 'context' && answer.includes('old-unit'))
    ? text.replace(/\b\d+(?= ?years?(?: |-)old)/, '~~')
    : text,
});

/** How each command takes its facts from a line. The surest readings come first. */
const steps: Readonly<Record<string, readonly Step[]>> = {
  size: [by(buildingCodes), by(roomRules), words(fixturesSaid), running],
  duct: [
    by(buildingCodes),
    ...fan,
    by(undercutRules),
    by(doable),
    by(cartonRules),
    by(fanActs),
    by(askedOf),
    by(neededRules),
    duct,
    by(roomRules.slice(0, 1)),
    by(measuredRules),
    by(bareAirflow('fan-curve')),
    by([fanImplied, fanByNumber, fanAlone]),
  ],
  reach: [
    ...fan,
    by(doable),
    by(cartonRules),
    by(fanActs),
    by(askedOf),
    by(neededRules),
    by(deliveredRules),
    ductApart,
    by(bareAirflow('fan-curve')),
    by([fanImplied, fanByNumber, fanAlone]),
  ],
  runtime: [
    ...fan,
    by(undercutRules),
    by(roomRules),
    by(showerRules),
    ...moved,
    by([bareHouse]),
    placed(humiditiesIn, roomHumidities),
    placed(temperaturesIn, roomTemperatures),
    duct,
    by(bareAirflow('fan-curve')),
    by([fanByNumber]),
    words(showerHabits),
  ],
  sweat: [
    by(insulationRules),
    ...fan,
    placed(humiditiesIn, atticHumidities),
    by([bareAttic]),
    placed(temperaturesIn, atticPlaces),
    ...moved,
    ductInAttic,
    by([bareExhaust, belowZero, atticLength]),
    by(bareAirflow('fan-curve')),
    by([fanByNumber]),
  ],
  makeup: [
    by(houseRules),
    among(otherExhausts),
    ...fan,
    by(doorRules),
    ...moved.slice(1),
    duct,
    by(doorBySize),
    by(bareAirflow('delivered-airflow')),
    by([fanByNumber]),
    words(flamesSaid),
  ],
  boxfill: [by(wiringCodes), among(boxMentioned)],
  measure: [
    by(measuringRules),
    by(fanRules),
    by([doorOpen, readByHood, hoodReading]),
    by(neededRules),
    by(measuredRules),
    measuredByHood,
    duct,
    by(cartonRules),
    words(methodSaid),
  ],
  cost: [by(costRules), ...fan, ...moved, duct, by([runsAt]), by(bareAirflow('fan-curve')), setToRun, allDay],
  power: [by(loadRules), by(costRules.slice(-1)), by(wiringCodes), words(wiringSaid), yearPlaced],
  callback: [...fan, ...moved, duct, by([fanByNumber]), words(contextSaid), agePlaced],
  parts: [by(partsRules), ...fan, duct, words(controlSaid), words(unitSaid)],
  plan: [
    ...fan,
    duct,
    by(cartonRules),
    by(neededRules),
    by(roomRules),
    words(fixturesSaid),
    by(bareAirflow('fan-curve')),
  ],
};

/** Where a hood did the measuring, what was measured is what it read. */
function measuredByHood({ facts, text }: Taken, whole: string): Taken {
  const byHood = methodSaid(whole).some(({ answer }) => answer === 'hood');
  const named = facts.some(({ id }) => id === 'hood-reading');
  return {
    facts: facts.map((each) =>
      each.id === 'measured-airflow' && byHood && !named ? { id: 'hood-reading', answer: each.answer } : each,
    ),
    text,
  };
}

function contextSaid(line: string): readonly Fact[] {
  const years = Number(/(\d+) ?years?(?: |-)old/.exec(line)?.[1] ?? 0);
  const found = [
    years > 10 ? 'old-unit' : '',
    /\b(?:apartment|condo|shared shaft|multi-?family|units? (?:above|below))\b/.test(line) ? 'multi-unit' : '',
  ].filter((id) => id !== '');
  return found.length === 0 ? [] : fact('context', found.join(', '));
}

/** Reads one line of plain words: the commands it may mean, best first, with the facts each would take. */
export function plainReading(
  line: string,
  units: UnitSystem,
  say: ReadingWords = askWords.english.reading,
): PlainReading {
  const typed = line.slice(0, longest);
  const spanish = putIntoEnglish(typed);
  const said = spanish?.line ?? typed;
  const { line: whole, told: righted } = putRight(evened(withoutNamed(said)), say);
  const unread =
    spanish === undefined || spanish.unknown.length === 0
      ? []
      : [say.notKnown(spanish.unknown.slice(0, mostUnknown).join(', '))];
  const readings = Object.entries(steps)
    .map(([command, list]): Reading => {
      const aside = setAside(whole, askedBy.get(command)?.has('house-leakage') === true);
      const { facts, text } = list.reduce<Taken>(
        (sofar, step) => step(sofar, aside.line, units),
        labelled(aside.line, command, units),
      );
      const known = command === 'callback' ? [...fact('complaint', typed.trim()), ...facts] : facts;
      const { facts: withUnits, told } = settled(known, aside.line, { crew: units, say });
      const loose = looseNumbers(text);
      return {
        command,
        facts: Object.fromEntries(withUnits.map(({ id, answer }) => [id, answer])),
        score: scoreOf(command, { line: whole, said, facts, loose: loose.length }),
        loose: [...aside.numbers, ...loose],
        told: [...righted, ...told, ...unread],
      };
    })
    .filter(({ score }) => score > 0)
    .sort((one, other) => other.score - one.score);
  return { readings };
}
