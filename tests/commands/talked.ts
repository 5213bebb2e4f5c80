import type { AnswerCommand } from '#chat/command.ts';
import { type OneShot, oneShot } from '#chat/one-shot.ts';
import { terminalSession } from '#chat/terminal/session.ts';
import type { Finding } from '#findings/finding.ts';
import { openStore } from '#store/store.ts';

/** A command answered once from `key=value` words, as a crew that works in inches and feet. */
export const once = (command: AnswerCommand<unknown>, ...words: readonly string[]): OneShot =>
  oneShot(command, words, { units: 'inch-pound' });

/** The finding of a name in a one-shot answer. */
export function findingOf({ reply, problems, missing }: OneShot, id: string): Finding {
  const found = reply?.findings.find((finding) => finding.id === id);
  if (!found) {
    const ids = reply?.findings.map((finding) => finding.id).join(', ');
    const lacking = [...problems.map(({ says }) => says), ...missing.map((each) => `${each.id} is missing`)].join(' ');
    throw new Error(`There is no finding ${id}, only ${ids ?? 'none'}. ${lacking}`);
  }
  return found;
}

/** What a person types and what comes back, line by line, until the answer; of that the headline and the findings. */
export async function talked(command: AnswerCommand<unknown>, ...lines: readonly string[]): Promise<string> {
  const store = openStore(':memory:');
  const session = terminalSession({
    store: store.scoped('test'),
    commands: [command],
    who: 'apprentice',
    paper: { width: 100, colour: false },
    drawn: async () => undefined,
  });
  const said: string[] = [];
  for (const line of lines) {
    const answer = await session.say(line);
    const told = session.asking() ? answer : (answer.split('\n\n').slice(0, 3).join('\n\n') ?? '');
    said.push(`you: ${line}\nbot: ${told.replace(/\n/g, '\n     ')}`);
  }
  store.close();
  return `\n${said.join('\n').replace(/[ \t]+$/gm, '')}\n`;
}
