import type { AnyQuestion } from '#interview/question.ts';
import type { Action, Command, Desk, DeskCommand } from '../command.ts';
import type { Asking } from '../screen.ts';

const turns = ["don't know", 'why', 'back', 'stop'] as const;

/**
 * What would complete a typed line, for the line editor: the candidates, and the end of the line they would replace.
 */
export function completionsOf(
  line: string,
  commands: readonly Command[],
  asking: Asking | undefined,
  desk: Desk,
): readonly [candidates: string[], typed: string] {
  if (asking && !line.startsWith('/')) return answers(line, asking);
  const slash = line.startsWith('/') ? '/' : '';
  const name = /^\/?(\S+)\s+/.exec(line);
  if (!name) {
    return among(
      commands.map((command) => `${slash}${command.name} `),
      line,
    );
  }
  const command = commands.find((each) => each.name === name[1]?.toLowerCase());
  const rest = line.slice(name[0].length);
  if (!command) return [[], line];
  if (command.kind === 'desk')
    return among([...command.actions.map(actionWord).filter(Boolean), ...suggested(command, rest, desk)], rest);
  return options(rest, command.takes);
}

/** What a command that does one thing offers for its first option; it is said in words, so its names complete. */
function suggested({ actions }: DeskCommand, typed: string, desk: Desk): readonly string[] {
  const [first] = actions.find(({ name }) => name === '')?.options ?? [];
  return (first?.suggest?.(desk, typed) ?? []).map(({ label }) => label);
}

const actionWord = ({ name }: Action): string => (name === '' ? '' : `${name} `);

const among = (words: readonly string[], typed: string): readonly [string[], string] => [
  words.filter((word) => word.toLowerCase().startsWith(typed.toLowerCase())),
  typed,
];

/** The choices of a question, the last of several after a comma, and the words that are always an answer. */
function answers(line: string, { question, choices }: Asking): readonly [string[], string] {
  const several = question.widget.kind === 'several';
  const typed = several ? (/[^,]*$/.exec(line)?.[0] ?? line).trimStart() : line;
  const labels = choices.map(({ id, label }) => (question.growing ? id : label));
  return among(typed === line ? [...labels, ...turns] : labels, typed);
}

/** Names of options not given yet, or the choices of the one being given. */
function options(rest: string, takes: readonly AnyQuestion[]): readonly [string[], string] {
  const value = /(?:^|\s)([a-z-]+)=([^=\s]*)$/.exec(rest);
  const asked = takes.find(({ id }) => id === value?.[1]);
  if (value && asked) {
    const choices = asked.widget.kind === 'text' ? [] : asked.widget.choices.map(({ id }) => `${id} `);
    return among(choices, value[2] as string);
  }
  const typed = /\S*$/.exec(rest)?.[0] ?? '';
  const left = takes.filter(({ id }) => !new RegExp(`(?:^|\\s)${id}=`).test(rest));
  return among(
    left.map(({ id }) => `${id}=`),
    typed,
  );
}
