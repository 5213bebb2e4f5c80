import type { AnswerCommand, Telling } from '#chat/command.ts';
import type { Finding } from '#findings/finding.ts';
import { type Reply, type StillToFindOut, stopsFirst } from '#findings/reply.ts';
import { severalOf } from '#interview/choices.ts';
import { type Interview, offer } from '#interview/interview.ts';
import type { AnyQuestion } from '#interview/question.ts';
import boxfill from './boxfill.ts';
import cost from './cost.ts';
import duct from './duct.ts';
import makeup from './makeup.ts';
import parts from './parts.ts';
import power from './power.ts';
import { deliveredAirflow } from './questions/airflow.ts';
import { airflowNeeded } from './questions/fan.ts';
import runtime from './runtime.ts';
import size from './size.ts';
import sweat from './sweat.ts';
import { roomQuestions } from './words/room-questions.ts';

/** A part of the plan: the command it is, what to call it, and the findings that sum it up. */
interface Part {
  readonly id: string;
  readonly label: string;
  readonly command: AnswerCommand<unknown>;
  readonly sums: readonly string[];
}

const part = <const Id extends string>(id: Id, label: string, command: AnswerCommand<unknown>, ...sums: string[]) => ({
  id,
  label,
  command,
  sums,
});

/** In the order of a survey: the room, the fan and its duct, the air coming in, the moisture, the wiring, the money, the van. */
const wholePlan = [
  part('air-needed', 'Air the room needs', size, 'airflow-needed'),
  part('duct', 'Fan and duct', duct, 'delivered-airflow', 'best-setting', 'sound', 'remedies'),
  part('make-up', 'Make-up air and combustion', makeup, 'gap-needed', 'house-depressurisation'),
  part('run-time', 'Run time', runtime, 'run-time'),
  part('sweat', 'Sweating duct', sweat, 'condensation-starts', 'insulation-needed'),
  part('wiring-rules', 'Wiring and control', power),
  part('wiring-room', 'Room in the box', boxfill, 'volume-left'),
  part('cost', 'Running cost', cost, 'running-cost'),
  part('parts', 'Parts', parts, 'take-off'),
] as const;

const planCovers = severalOf({
  id: 'plan-covers',
  words: { spanish: roomQuestions['plan-covers'] },
  prompt: 'What should the plan cover? Leave out what does not apply to this job.',
  why: 'Each part asks its own questions; a part left out asks none. It can be added later, nothing answered is lost.',
  brief: 'Parts of the plan',
  choices: wholePlan.map(({ id, label }) => ({ id, label })),
  whenUnknown: { value: wholePlan.map(({ id }) => id), because: 'The whole job is planned.' },
});

interface PlanInputs {
  readonly planned: readonly { readonly part: Part; readonly inputs: unknown }[];
}

function* planInterview(): Interview<PlanInputs> {
  const covers = yield* offer(planCovers);
  const planned: { part: Part; inputs: unknown }[] = [];
  const ours = new Set(covers.value.flatMap((id) => workedOut[id]?.id ?? []));
  for (const each of wholePlan) {
    if (!covers.value.includes(each.id)) continue;
    planned.push({ part: each, inputs: yield* takingWhatIsWorkedOut(each.command.interview(), ours) });
  }
  return { planned };
}

/** What a part of the plan works out, so that no later part asks for it. */
const workedOut: Readonly<Record<string, AnyQuestion>> = { 'air-needed': airflowNeeded, duct: deliveredAirflow };

/** The same interview, where what the plan works out itself is taken if somebody told it, and never asked. */
function* takingWhatIsWorkedOut<Inputs>(interview: Interview<Inputs>, ids: ReadonlySet<string>): Interview<Inputs> {
  let turn = interview.next();
  while (!turn.done) {
    const { urgency, questions } = turn.value;
    const isOurs = questions.every(({ id }) => ids.has(id));
    turn = interview.next(yield { urgency: isOurs ? 'take' : urgency, questions });
  }
  return turn.value;
}

/** Noise is told only where the label gave its sones. */
const sumsUp = ({ sums }: Part, { id, value }: Finding): boolean =>
  sums.includes(id) && (id !== 'sound' || value !== undefined);

const weighty = ({ weight }: Finding): boolean => weight === 'stop' || weight === 'caution';

/** More than this on one screen is not read on a ladder; the parts hold the rest. */
const mostWarnings = 8;

function answer({ planned }: PlanInputs, telling: Telling): Reply {
  const replies = planned.map(({ part: each, inputs }) => ({
    part: each,
    reply: each.command.answer(inputs, telling),
  }));
  const warnings = stopsFirst(replies.flatMap(({ reply }) => reply.findings.filter(weighty)));
  const summed = replies.map(({ part: each, reply }) => ({ part: each, lines: summary(each, reply) }));
  const stops = warnings.filter(({ weight }) => weight === 'stop').length;
  const shown = warnings.slice(0, Math.max(mostWarnings, stops));
  const rest = warnings.length - shown.length;
  return {
    headline: headlineOf(replies, stops),
    findings: [
      ...shown.map(withoutTable),
      ...replies.flatMap(({ part: each, reply }) =>
        reply.findings.filter((finding) => sumsUp(each, finding) && !weighty(finding)).map(withoutTable),
      ),
      ...(rest > 0
        ? [
            {
              id: 'more-cautions',
              weight: 'caution',
              says: `${rest} more cautions stand in the parts below; read each part before the work.`,
              working: [],
              sources: [],
            } as const,
          ]
        : []),
    ],
    tables: [
      {
        title: 'The plan',
        columns: ['part', 'result'],
        rows: summed.map(({ part: each, lines }) => [each.label, lines]),
      },
    ],
    stillToFindOut: toFindOut(replies),
    assumed: [...new Set(replies.flatMap(({ reply }) => reply.assumed ?? []))],
    suggestions: replies.map(({ part: each }) => ({ label: each.label, command: each.command.name })),
    ...chartOf(replies),
  };
}

/** The parts hold the tables; a plan on a phone does not. */
const withoutTable = ({ table: _, ...finding }: Finding): Finding => finding;

/** What nobody knew, by the part that asks for it, what is worth most in certainty first. */
const toFindOut = (replies: Replies): StillToFindOut => ({
  title: 'Still to find out',
  columns: ['part', 'find out'],
  parts: replies.map(({ part: each }) => each.label),
  first: replies.flatMap(({ part: each, reply }) =>
    reply.findings.filter(({ id }) => id === 'measure-next').map(({ says }) => [each.label, says] as const),
  ),
  partOf: new Map(
    replies.toReversed().flatMap(({ part: each }) => each.command.takes.map(({ id }) => [id, each.label] as const)),
  ),
});

type Replies = readonly { readonly part: Part; readonly reply: Reply }[];

const chartOf = (replies: Replies): Pick<Reply, 'chart'> => {
  const chart = replies.find(({ part: each }) => each.id === 'duct')?.reply.chart;
  return chart ? { chart } : {};
};

function headlineOf(replies: Replies, stops: number): string {
  const value = (id: string) =>
    replies.flatMap(({ reply }) => reply.findings).find((finding) => finding.id === id)?.value?.shown;
  const needed = value('airflow-needed');
  const delivered = value('delivered-airflow');
  const air = [needed ? `needs ${needed}` : '', delivered ? `gets ${delivered}` : ''].filter(Boolean).join('; ');
  const stop = stops === 0 ? '' : ` ${stops === 1 ? 'One thing stops' : `${stops} things stop`} the work first.`;
  return `The plan${air === '' ? '' : `: the room ${air}`}.${stop}`;
}

/** The finding that sums a part up, or how many warnings it holds where none does. */
function summary(each: Part, reply: Reply): string {
  const lines = reply.findings
    .filter((finding) => sumsUp(each, finding))
    .map(({ says, value }) => value?.shown ?? says);
  if (lines.length > 0) return lines.join('; ');
  const warnings = reply.findings.filter(weighty).length;
  return warnings === 0 ? reply.headline : `${warnings} ${warnings === 1 ? 'warning' : 'warnings'} to read`;
}

const once = (questions: readonly AnyQuestion[]): readonly AnyQuestion[] => [
  ...new Map(questions.map((question) => [question.id, question])).values(),
];

const plan: AnswerCommand<PlanInputs> = {
  kind: 'answer',
  name: 'plan',
  summary: 'The whole job in survey order: air, fan and duct, make-up air, run time, wiring, parts.',
  example:
    'plan-covers="air-needed, duct" room-length="8 ft" room-width="5 ft" fan-curve="84@0.1 66@0.25" collar="4 in" duct-run="14 ft 4 in flex; 2 x elbow 90; wall cap"',
  takes: once([planCovers, ...wholePlan.flatMap(({ command }) => command.takes)]),
  interview: planInterview,
  answer,
};

export default plan;
