import type { Finding, Table, Value } from '#findings/finding.ts';
import { heaviest, type Reply, stopsFirst } from '#findings/reply.ts';
import type { AnyQuestion, UnitSystem } from '#interview/question.ts';
import { missing, type Recall, replay } from '#interview/replay.ts';
import { worded } from '#interview/worded.ts';
import { type Citation, sources } from '#knowledge/sources.ts';
import type { Language } from '#words/language.ts';
import { understood } from './answers.ts';
import { withAssumed } from './assumed.ts';
import type { AnswerCommand } from './command.ts';
import { optionsFrom } from './options.ts';

/** A question that still needs an answer, in machine-readable form. */
interface Lacking {
  readonly id: string;
  readonly prompt: string;
  readonly accepts: string;
}

export interface OneShot {
  readonly command: string;
  readonly status: 'answered' | 'needs-answers' | 'stopped';
  readonly reply?: Reply;
  readonly missing: readonly Lacking[];
  /** Every value or name that was not understood, each in a sentence. */
  readonly problems: readonly { readonly id?: string; readonly says: string }[];
  /** How plain words were read, where the command was not named. */
  readonly notes?: readonly string[];
}

/** 0 answered, 2 needs answers or something was not understood, 3 a finding says stop. */
export const exitCode = ({ status }: OneShot): 0 | 2 | 3 => (status === 'answered' ? 0 : status === 'stopped' ? 3 : 2);

/**
 * Answers a command once from `key=value` words, on top of what `recall` knows (a saved job, or nothing).
 */
export function oneShot(
  command: AnswerCommand<unknown>,
  words: readonly string[],
  {
    units,
    language,
    recall = () => undefined,
  }: { readonly units: UnitSystem; readonly language?: Language | undefined; readonly recall?: Recall },
): OneShot {
  const { values, problems } = optionsFrom(
    words,
    command.takes.map(({ id }) => id),
    command.inWords?.id,
    language,
  );
  const given = command.takes.flatMap((question) => {
    const text = values[question.id];
    return text === undefined ? [] : [{ question, reading: understood(worded(question, language), text, units) }];
  });
  const rejected = given.flatMap(({ question, reading }) =>
    'rejected' in reading ? [{ id: question.id, says: `${question.id}: ${reading.rejected}` }] : [],
  );
  const known = new Map(given.map(({ question, reading }) => [question.id, reading]));
  const recallAll: Recall = (question) => {
    const reading = known.get(question.id);
    if (reading === undefined) return recall(question);
    if ('rejected' in reading) return undefined;
    return reading.value.how === 'unknown'
      ? { value: question.whenUnknown.value, known: false }
      : { value: reading.value.value, known: true };
  };
  const outcome = replay(command.interview(), recallAll, 'one-shot');
  const trouble = [...problems.map((says) => ({ says })), ...rejected];
  if (!outcome.complete || trouble.length > 0) {
    const lacking = missing(command.interview(), recallAll);
    const rejectedQuestions = given.flatMap(({ question, reading }) => ('rejected' in reading ? [question] : []));
    return {
      command: command.name,
      status: 'needs-answers',
      missing: [...new Set([...rejectedQuestions, ...lacking])].map((question) =>
        asLacking(worded(question, language)),
      ),
      problems: trouble,
    };
  }
  const reply = withAssumed(command.answer(outcome.inputs, { units, language }), outcome.assumed, units);
  const stopped = heaviest(reply.findings) === 'stop';
  const status = stopped ? 'stopped' : 'answered';
  const { notes } = reply;
  return { command: command.name, status, reply, missing: [], problems: [], ...(notes ? { notes } : {}) };
}

const asLacking = ({ id, prompt, accepts }: AnyQuestion): Lacking => ({ id, prompt, accepts });

/** The published shape of a one-shot answer; only this goes to standard output under `--json`. */
export function asJson(answer: OneShot): string {
  const { command, status, reply, problems } = answer;
  return JSON.stringify(
    {
      command,
      status,
      ...(reply ? { headline: reply.headline } : {}),
      findings: stopsFirst(reply?.findings ?? []).map(findingAsJson),
      missing: answer.missing,
      ...(reply?.tables ? { tables: reply.tables.map(tableAsJson) } : {}),
      ...(reply?.assumed ? { assumed: reply.assumed, assumedBecause: reply.assumedBecause ?? [] } : {}),
      ...(problems.length > 0 ? { problems } : {}),
      ...(answer.notes ? { notes: answer.notes } : {}),
    },
    null,
    1,
  );
}

const findingAsJson = ({ id, weight, says, value, working, sources: cited, table, cause, check }: Finding) => ({
  id,
  weight,
  says,
  ...(cause === undefined ? {} : { cause }),
  ...(check === undefined ? {} : { finding: check }),
  ...(value === undefined ? {} : { value: valueAsJson(value) }),
  working: working.map(({ source, ...step }) => ({ ...step, ...(source ? { source: citationAsJson(source) } : {}) })),
  ...(table === undefined ? {} : { table: tableAsJson(table) }),
  sources: cited.map(citationAsJson),
});

const tableAsJson = ({ title, columns, rows }: Table) => ({ title, columns, rows });

const valueAsJson = ({ number, unit, low, high, shown }: Value) => ({ number, unit, low, high, shown });

const citationAsJson = ({ source, where, verified }: Citation) => ({
  id: source,
  citation: sources[source].citation,
  kind: sources[source].kind,
  where,
  verified,
});
