import type { AnswerCommand } from '#chat/command.ts';
import { commands } from '#commands/index.ts';
import { plainReading } from '#commands/plain-words/reading.ts';

const answering = commands.filter((command): command is AnswerCommand<unknown> => command.kind === 'answer');
const questions = new Map(answering.flatMap(({ takes }) => takes).map((each) => [each.id, each]));

/** Whether two answers to a question come to the same. */
function alike(id: string, one: string | undefined, other: string): boolean {
  const question = questions.get(id);
  if (one === undefined || question === undefined) return false;
  const [read, wanted] = [question.read(one, 'inch-pound'), question.read(other, 'inch-pound')];
  if ('rejected' in read || 'rejected' in wanted) return false;
  return question.show(read.value, 'inch-pound') === question.show(wanted.value, 'inch-pound');
}

/** Whether the command would take this answer at all: what it does not is named to the one who asked. */
const taken = (command: string, id: string, answer: string): boolean =>
  answering
    .find(({ name }) => name === command)
    ?.takes.some((each) => each.id === id && !('rejected' in each.read(answer, 'inch-pound'))) === true;

interface Phrasing {
  readonly text: string;
  readonly command: string;
  readonly facts: Readonly<Record<string, string | undefined>>;
}

/**
 * A phrasing of the corpus held against its reading: the command, and each fact as the command that was meant would take it.
 * What a complaint is about is told in its own words and has no other form, so it is not counted.
 */
export function scored({ text, command, facts }: Phrasing): {
  command: boolean;
  facts: readonly boolean[];
  /** Facts with a number that were read as another than was told, or were not told at all. */
  wrong: readonly string[];
} {
  const { readings } = plainReading(text, 'inch-pound');
  const reading = readings.find((each) => each.command === command);
  return {
    wrong: Object.entries(reading?.facts ?? {}).flatMap(([id, answer]) =>
      id === 'complaint' || !/\d/.test(answer) || !taken(command, id, answer) || alike(id, answer, facts[id] ?? '')
        ? []
        : [`${id} ${answer}`],
    ),
    command: readings[0]?.command === command,
    facts: Object.entries(facts).flatMap(([id, answer]) =>
      id === 'complaint' || answer === undefined ? [] : [alike(id, reading?.facts[id], answer)],
    ),
  };
}
