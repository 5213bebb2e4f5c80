import type { Command, Telling } from '#chat/command.ts';
import type { Finding } from '#findings/finding.ts';
import type { Reply } from '#findings/reply.ts';
import { airflow, ductLength, insulation, roomPressure, smallLength } from '#quantity/kinds.ts';
import { cubicInches, cubicMetresPerSecond, metres, pascals, squareMetreKelvinsPerWatt } from '#quantity/units.ts';
import type { Language } from '#words/language.ts';
import { type InShort, inShortWords } from '../words/in-short.ts';
import { roomText } from './box-findings.ts';
import { onTheShortSide } from './short-side.ts';
import { boxRetold, runTimeRetold } from './swap-retold.ts';

/** An answer’s findings as one speaker hears them. */
interface Told {
  readonly words: InShort;
  readonly telling: Telling & { readonly language: Language };
  /** The finding of an id, where the answer has it. */
  find(id: string): Finding | undefined;
}

const numberOf = (finding: Finding | undefined): number | null =>
  typeof finding?.value?.number === 'number' ? finding.value.number : null;

/** One number of a finding as a sentence, or nothing where it has none. */
const said = (finding: Finding | undefined, says: (number: number, found: Finding) => string): readonly string[] => {
  const number = numberOf(finding);
  return finding === undefined || number === null ? [] : [says(number, finding)];
};

const flowText = (flow: number, { units }: Telling): string => airflow.show(cubicMetresPerSecond(flow), units);
const shortFlow = (flow: number, { units }: Telling): string => airflow.showShort(cubicMetresPerSecond(flow), units);

/** What each page comes to. One that is left out has no number to tell: its stops and cautions are counted all the same. */
const told: Readonly<Record<string, (each: Told) => readonly string[]>> = {
  size: ({ words, telling, find }) => said(find('airflow-needed'), (flow) => words.size(flowText(flow, telling))),
  duct: ({ words, telling, find }) => delivered({ words, telling, find }),
  reach: ({ words, telling, find }) => {
    const longest = find('longest-run');
    if (longest === undefined) return [];
    const number = numberOf(longest);
    if (number === null) return [words.reachNone];
    const sure = longest.value?.low;
    const length = (far: number) => ductLength.show(onTheShortSide(metres(far), telling.units), telling.units);
    return [
      words.reach(longest.value?.shown ?? length(number)),
      ...(sure === undefined ? [] : [words.reachSure(length(sure))]),
    ];
  },
  runtime: ({ telling, find }) => {
    const found = find('run-time');
    return found === undefined ? [] : [runTimeRetold(found, telling).says];
  },
  sweat: ({ words, telling, find }) => {
    const starts = find('condensation-starts');
    const from = said(starts, (far) => words.sweatsFrom(ductLength.show(metres(far), telling.units)));
    const dry = starts !== undefined && from.length === 0 ? [words.staysDry] : [];
    const may = dry.length > 0 && starts?.weight !== 'good' ? [words.mayStillSweat] : [];
    const wrap = said(find('insulation-needed'), (resistance) =>
      words.wrap(insulation.show(squareMetreKelvinsPerWatt(resistance), telling.units)),
    );
    return [...from, ...dry, ...may, ...(from.length > 0 ? wrap : [])];
  },
  makeup: ({ words, telling, find }) => [
    ...said(find('door-pressure'), (pressure, { weight }) =>
      words.door[weight](roomPressure.show(pascals(pressure), telling.units)),
    ),
    ...said(find('gap-needed'), (gap) => words.gap(smallLength.show(metres(gap), telling.units))),
  ],
  measure: ({ words, telling, find }) =>
    said(find('measured-airflow'), (flow, { value }) =>
      words.measured(
        flowText(flow, telling),
        shortFlow(value?.low ?? flow, telling),
        shortFlow(value?.high ?? flow, telling),
      ),
    ),
  boxfill: ({ words, telling, find }) => {
    const counted = ['volume-left', 'fill-needed', 'box-that-fits'].flatMap((id) => find(id) ?? []);
    const volume = said(find('box-volume'), (held) => words.boxVolume(roomText(cubicInches(held), telling.units)));
    return [...boxRetold(counted, telling).map(({ says }) => says), ...volume];
  },
  cost: ({ words, find }) =>
    said(find('running-cost'), (_, { value }) => words.cost((value?.high ?? value?.number ?? 0).toFixed(2))),
};

function delivered({ words, telling, find }: Told): readonly string[] {
  const found = find('delivered-airflow');
  return said(found, (flow, { weight, value }) =>
    words.delivered[weight](
      flowText(flow, telling),
      shortFlow(value?.low ?? flow, telling),
      shortFlow(value?.high ?? flow, telling),
    ),
  );
}

/** Everything that stops the job, as one order: where people must leave, nothing else is said. */
function stops(command: string, findings: readonly Finding[], words: InShort): readonly string[] {
  const stopping = findings.filter(({ weight }) => weight === 'stop');
  const [first] = stopping;
  if (first === undefined) return [];
  if (stopping.some(({ says }) => /^Everyone outside/.test(says))) return [words.everyoneOut];
  if (stopping.some(({ id }) => id === 'combustion-caution')) return [words.flames];
  if (command === 'power') return [words.wiringStops(stopping.length)];
  // These two say their stop with the number.
  if (first.id === 'delivered-airflow' || first.id === 'volume-left') return [];
  return [words.otherStops(stopping.length)];
}

/**
 * A reply that is printed in English, told in short before it to whoever reads another language: stops first, then its numbers.
 * A reply in that language already is left as it is.
 */
function withInShort(command: string, reply: Reply, telling: Telling): Reply {
  const { language = 'english', units } = telling;
  if (language === 'english' || reply.language !== undefined) return reply;
  const words = inShortWords[language];
  const find = (id: string) => reply.findings.find((finding) => finding.id === id);
  const orders = stops(command, reply.findings, words);
  const mustLeave = orders.includes(words.everyoneOut);
  const cautions = reply.findings.filter(({ weight }) => weight === 'caution').length;
  const short = [
    ...orders,
    ...(mustLeave ? [] : (told[command]?.({ words, telling: { units, language }, find }) ?? [])),
    ...(mustLeave || cautions === 0 ? [] : [words.cautions(cautions)]),
    words.rest,
  ];
  return { ...reply, notes: [...(reply.notes ?? []), short.join(' ')] };
}

/** The same command, its English answers told in short to whoever reads another language. */
export function toldInShort(command: Command): Command {
  if (command.kind !== 'answer') return command;
  return {
    ...command,
    answer: (inputs, telling) => withInShort(command.name, command.answer(inputs, telling), telling),
  };
}
