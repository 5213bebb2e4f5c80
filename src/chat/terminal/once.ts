import type { Writable } from 'node:stream';
import { openStore } from '#store/store.ts';
import { recallFrom, unitsOf } from '../answers.ts';
import type { AnswerCommand, Command } from '../command.ts';
import { asJson, exitCode, type OneShot, oneShot } from '../one-shot.ts';
import { clipped, nearest } from '../options.ts';
import { chartFile } from './chart-file.ts';
import { type Paper, replyText } from './render.ts';
import { deskText } from './session.ts';

interface Given {
  readonly commands: readonly Command[];
  readonly settings: { readonly FANWRIGHT_DB: string };
  readonly output: Writable & { readonly columns?: number; readonly isTTY?: boolean };
}

/**
 * Answers one command from the words after `npm start --` and ends. With `job=…` it starts from that job's sheet (and reads
 * the records); without, from nothing.
 *
 * @returns the exit code: 0 answered, 2 needs answers or something was not understood, 3 a finding says stop.
 */
export async function answerOnce(words: readonly string[], { commands, settings, output }: Given): Promise<number> {
  const json = words.includes('--json');
  const [name = '', ...rest] = words.filter((word) => word !== '--json');
  const command = commands.find((each) => each.name === name.replace(/^\//, '').toLowerCase());
  const paper: Paper = { width: Math.min(100, output.columns ?? 88), colour: false };
  const say = (text: string) => output.write(`${text}\n`);
  if (!command) {
    const meant = nearest(
      name,
      commands.map((each) => each.name),
    );
    const says = `There is no “${clipped(name)}” command. ${meant ? `Did you mean ${meant}?` : `There are ${commands.map((each) => each.name).join(', ')}.`}`;
    say(
      json
        ? JSON.stringify({
            command: clipped(name),
            status: 'needs-answers',
            findings: [],
            missing: [],
            problems: [{ says }],
          })
        : says,
    );
    return 2;
  }
  const job = rest.find((word) => word.startsWith('job='))?.slice(4);
  if (command.kind === 'desk' || job !== undefined) return withRecords(command, rest, job, json);
  return told(oneShot(command, rest, { units: 'inch-pound' }), json);

  async function told(answer: OneShot, asked: boolean): Promise<number> {
    say(asked ? asJson(answer) : await text(answer));
    return exitCode(answer);
  }

  async function text({ command: which, reply, missing, problems }: OneShot): Promise<string> {
    if (!reply) {
      return [
        ...problems.map(({ says }) => says),
        ...missing.map(({ id, prompt, accepts }) => `${id} is needed. ${prompt} (${accepts})`),
      ].join('\n');
    }
    const path = await chartFile('charts', which, reply);
    return [replyText(reply, paper), ...(path ? ['', `Chart: ${path}`] : [])].join('\n');
  }

  async function withRecords(
    which: Command,
    given: readonly string[],
    wanted: string | undefined,
    asked: boolean,
  ): Promise<number> {
    const store = openStore(settings.FANWRIGHT_DB);
    try {
      const scoped = store.scoped('terminal');
      const units = unitsOf(scoped);
      if (which.kind === 'desk') {
        say(
          deskText(
            which,
            given,
            { store: scoped, speaker: { channel: 'terminal', who: 'you' }, telling: { units }, commands },
            paper,
          ),
        );
        return 0;
      }
      const sheet = scoped.findSheet(wanted ?? '');
      if (!sheet) {
        say(`There is no job “${clipped(wanted ?? '')}” here. See them with: job list`);
        return 2;
      }
      const answers = given.filter((word) => !word.startsWith('job='));
      return await told(
        oneShot(which as AnswerCommand<unknown>, answers, { units, recall: recallFrom(scoped, sheet.number) }),
        asked,
      );
    } finally {
      store.close();
    }
  }
}
