import type { UnitSystem } from '#interview/question.ts';
import { ductRunText } from '../questions/duct.ts';
import { readDuctRun } from '../questions/duct-run-reading.ts';
import { normalised } from '../questions/run-grammar.ts';
import type { DuctRun } from '../questions/run-parts.ts';
import { type Mention, mentionsIn } from './mentions.ts';

/** One way to read a line: a command and its facts. */
export interface Reading {
  readonly command: string;
  readonly facts: Readonly<Record<string, string>>;
  /** How well the words fit; higher is surer. */
  readonly score: number;
}

export interface PlainReading {
  /** Best first. */
  readonly readings: readonly Reading[];
  readonly mentions: readonly Mention[];
  readonly loose: readonly string[];
}

/** Words that speak for a command, with how much. */
const cues: Readonly<Record<string, readonly (readonly [RegExp, number])[]>> = {
  size: [
    [/\b(?:what|how (?:much|many|big))\b.*\b(?:cfm|air|fan|size)\b/i, 2],
    [/\bwhat (?:size|cfm)|size fan|how big a fan|which fan|cfm (?:do i|does it|for|needed)|need(?:ed)?\b/i, 3],
    [/\bbath(?:room)?\b/i, 1],
  ],
  duct: [
    [/\bwhat (?:do|will|does|would) (?:i|it|we|that|this|the fan) (?:get|move|deliver|really)/i, 4],
    [/\b(?:deliver|really|actual(?:ly)?|end up|come out|left)\b/i, 2],
    [/\b(?:elbow|roof (?:cap|jack)|wall cap|duct|flex|reducer)\b/i, 2],
  ],
  reach: [
    [/\bhow (?:far|long)\b.*\b(?:run|go|duct|flex|pipe|hose)\b/i, 6],
    [/\b(?:max(?:imum)?|longest|allowed|limit)\b.*\b(?:run|length|duct|flex)\b/i, 6],
  ],
  runtime: [
    [/\bhow long\b.*\b(?:leave|run|on|keep)\b(?!.*\b(?:flex|duct|pipe)\b)/i, 6],
    [/\b(?:run ?time|timer set|set the timer|minutes after|run on|mirror clear|fog)\b/i, 4],
    [/\bafter (?:a )?shower\b/i, 2],
  ],
  sweat: [
    [/\b(?:sweat|condens\w*|drip\w*|frost|water in the duct)\b/i, 6],
    [/\battic\b/i, 1],
    [/\binsulat\w*/i, 2],
  ],
  makeup: [
    [/\b(?:make-?up|starv\w*|undercut|suction|negative pressure|backdraft\w*|water heater|furnace|gap|door)\b/i, 4],
  ],
  boxfill: [
    [/\b(?:box ?fill|fill|fit in|overfull|too many wires|in (?:an? )?\d+ ?(?:cube|cu|in3))\b/i, 4],
    [/\bbox\b/i, 2],
    [/\b1[024]\s*[/-]\s*[23]\b/i, 3],
  ],
  measure: [
    [/\bbag\b/i, 4],
    [/\b(?:test|measure[d]?|flow box|hood|traverse|anemometer)\b/i, 2],
  ],
  cost: [[/\b(?:cost|electric(?:ity)?|bill|energy|kwh|money|per year)\b/i, 5]],
  power: [
    [
      /\b(?:gfci|neutral|circuit|breaker|timer switch|humidity (?:sensor|switch)|wiring|aluminium|aluminum|knob and tube|dedicated)\b/i,
      4,
    ],
  ],
  callback: [
    [
      /\b(?:loud|noisy|hum(?:s|ming)?|rattle\w*|squeal\w*|weak|won't|doesn't work|stopped|smell\w*|cold air|still fog\w*|complain\w*)\b/i,
      4,
    ],
  ],
  parts: [[/\b(?:parts|materials|shopping|take-?off|tape|screws|what do i need to buy)\b/i, 5]],
};

/** The facts that belong to a command more than to another. */
const belongs: Readonly<Record<string, readonly string[]>> = {
  size: ['room-length', 'room-area', 'ceiling-height', 'fixtures'],
  duct: ['duct-run', 'fan-curve', 'collar', 'airflow-needed', 'rated-sones'],
  reach: ['duct-run', 'fan-curve'],
  runtime: ['delivered-airflow', 'room-length', 'shower-minutes', 'house-humidity'],
  sweat: ['attic-temperature', 'duct-insulation', 'duct-run'],
  makeup: ['door-gap', 'door-width'],
  boxfill: ['conductors', 'box', 'devices', 'grounds'],
  measure: ['bag-volume', 'fill-times'],
  cost: ['fan-watts', 'hours-per-day'],
};

/** A bare airflow means the fan where a duct is spoken of, and the air delivered elsewhere. */
const meaningOfAirflow: Readonly<Record<string, string>> = {
  duct: 'fan-curve',
  reach: 'fan-curve',
  size: 'airflow-needed',
};

/** The duct a line tells of: the longest stretch of it that reads as a run. */
function runIn(line: string, units: UnitSystem): { run: DuctRun; said: string } | undefined {
  const words = [...line.matchAll(/\S+/g)];
  let best: { run: DuctRun; said: string } | undefined;
  for (let from = 0; from < words.length; from += 1) {
    for (let to = words.length; to > from; to -= 1) {
      const [first, last] = [words[from], words[to - 1]];
      if (!first || !last) continue;
      const said = line.slice(first.index, last.index + last[0].length);
      if (best && said.length <= best.said.length) break;
      const reading = readDuctRun(said, units);
      if ('value' in reading && reading.value.parts.some(({ part }) => part === 'duct')) {
        best = { run: reading.value, said };
        break;
      }
    }
  }
  return best;
}

/** Reads one line of plain words: the commands it may mean, best first, with the facts each would take. */
export function plainReading(line: string, units: UnitSystem): PlainReading {
  const words = normalised(line.slice(0, 400)).replace(/\s+/g, ' ').trim();
  const duct = runIn(words, units);
  const { found, loose } = mentionsIn(duct ? words.replace(duct.said, ' ; ') : words);
  const mentions: Mention[] = duct
    ? [{ fact: 'duct-run', answer: ductRunText(duct.run, units), said: duct.said }, ...found]
    : [...found];
  const readings = Object.entries(cues)
    .map(([command, list]): Reading => {
      const spoken = list.reduce((sum, [pattern, weight]) => sum + (pattern.test(words) ? weight : 0), 0);
      const held = (belongs[command] ?? []).filter((fact) => mentions.some((each) => each.fact === fact)).length;
      return { command, facts: factsFor(command, mentions), score: spoken + 1.5 * held };
    })
    .filter(({ score }) => score > 0)
    .sort((one, other) => other.score - one.score);
  return { readings, mentions, loose };
}

function factsFor(command: string, mentions: readonly Mention[]): Readonly<Record<string, string>> {
  const facts: Record<string, string> = {};
  for (const { fact, answer } of mentions) {
    const id = fact === 'airflow' ? (meaningOfAirflow[command] ?? 'delivered-airflow') : fact;
    if (facts[id] === undefined) facts[id] = answer;
  }
  // A fan's number alone is what moves, where no duct is told of to work it out.
  if (
    facts['duct-run'] === undefined &&
    facts['fan-curve'] !== undefined &&
    !['duct', 'reach', 'size'].includes(command)
  ) {
    if (
      facts['delivered-airflow'] === undefined &&
      /^\d/.test(facts['fan-curve']) &&
      !facts['fan-curve'].includes('@')
    ) {
      facts['delivered-airflow'] = facts['fan-curve'];
      delete facts['fan-curve'];
    }
  }
  return facts;
}
