import { once } from 'node:events';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { ChecklistStep } from '#knowledge/checklist.ts';
import { started } from '../../chat/terminal/program.ts';
import { photo } from '../stand-in/uploads.ts';
import { Died } from './day.ts';
import { stepShown } from './demo-job.ts';
import type { Asked, Place, Sight } from './sight.ts';

/** What a terminal printed, and in which life of the program. */
interface TerminalSight extends Sight {
  readonly life: number;
  readonly step: ChecklistStep | undefined;
}

/** One keyboard at which several people work, each naming themselves. */
export interface Terminal {
  readonly place: Place<TerminalSight>;
  /** Ends the program with SIGKILL and starts it again on the same records. */
  restart(): Promise<void>;
  /** The program is killed when the next line is on its way. */
  killNext(): void;
  /** The input ends, as when the window is closed. */
  close(): Promise<number | null>;
}

/** The program in a folder of its own, talking through its standard input and output. */
export function openTerminal(folder: string, file: string): Terminal {
  let life = 0;
  let fatal = false;
  const start = () => {
    const child = started(folder, [], { FANWRIGHT_DB: file });
    let out = '';
    child.stdout?.setEncoding('utf8').on('data', (text: string) => {
      out += text;
    });
    const ended = once(child, 'close').then(([code]) => code as number | null);
    return { child, ended, said: () => out };
  };
  let program = start();

  /** Types a line and an empty one after it, whose echo says that the answer is complete. */
  async function typed(line: string): Promise<string> {
    const { child, ended, said } = program;
    const echo = `> ${line}\n`;
    const before = said().length;
    child.stdin?.write(`${line}\n\n`);
    if (fatal) {
      fatal = false;
      child.kill('SIGKILL');
    }
    for (;;) {
      const now = said().slice(before);
      const from = now.indexOf(echo);
      const end = from < 0 ? -1 : now.indexOf('> \n', from + echo.length);
      if (end >= 0) return now.slice(from + echo.length, end).trim();
      const died = await Promise.race([once(child.stdout as NodeJS.ReadableStream, 'data'), ended.then(() => 'died')]);
      if (died === 'died') throw new Died('The program was killed.');
    }
  }

  const says = async (line: string, step?: ChecklistStep): Promise<TerminalSight> =>
    sightOf(await typed(line), life, step);

  const place: Place<TerminalSight> = {
    type(who, words, given = {}) {
      const options = Object.entries(given).map(([id, value]) => `${id}="${value}"`);
      const as = words.startsWith('swap ') ? [`as=${who}`] : [];
      return says([words, ...options, ...as].join(' '));
    },
    async press(who, on, label) {
      // The numbers of a page are gone with the program that printed it.
      const page = on.life === life ? on : await place.type(who, 'swap next');
      const number = page.presses.indexOf(label) + 1;
      return number === 0 ? page : says(String(number), page.step);
    },
    fill(who, { form = [], step, life: then }, values) {
      if (then !== life) return place.type(who, 'swap next');
      const [asked] = form;
      const value = (asked && values[asked.id]) ?? '-';
      const number = (asked?.choices.indexOf(value) ?? -1) + 1;
      if (value.endsWith('.png'))
        writeFileSync(join(folder, value), Buffer.concat([photo().bytes, Buffer.from(value)]));
      return says(number > 0 ? String(number) : value, step);
    },
  };

  return {
    place,
    async restart() {
      program.child.kill('SIGKILL');
      await program.ended;
      life += 1;
      program = start();
    },
    killNext() {
      fatal = true;
    },
    async close() {
      program.child.stdin?.end();
      return program.ended;
    },
  };
}

/** Lines that were broken to fit are one again; each choice begins with its number. */
const joined = (text: string): string => text.replace(/\n(?! *\d+ {2})\s*/g, ' ');

function sightOf(text: string, life: number, before: ChecklistStep | undefined): TerminalSight {
  const [headline = ''] = text.split('\n\n');
  const step = stepShown(headline.replaceAll('\n', ' '), 'swap') ?? before;
  const [page = '', offers = ''] = text.split('Type a number:\n');
  const field = offers === '' ? fieldIn(page.split('\n\n').at(-1) ?? '', step) : undefined;
  return {
    headline: headline.replaceAll('\n', ' '),
    text,
    presses: numbered(offers),
    ...(field ? { form: [field] } : {}),
    refused: false,
    life,
    step,
  };
}

const numbered = (text: string): readonly string[] =>
  joined(text)
    .split('\n')
    .flatMap((line) => /^ *\d+ {2}(.+)$/.exec(line)?.[1] ?? []);

/** The field a terminal asks for, under the id of the part it belongs to. */
function fieldIn(text: string, step: ChecklistStep | undefined): Asked | undefined {
  const [question = '', ...below] = joined(text).split('\n');
  const [, label, accepts = '', optional] =
    /^(.+?)\? ?(?:\((.*)\))?( Or a dash where it does not apply\.)?$/.exec(question.trim()) ?? [];
  const slots = (step?.evidence ?? []).flatMap((part) =>
    part.kind === 'pair'
      ? [part.first, part.second].map((side) => ({ id: side.id, label: `${part.label}: ${side.label}` }))
      : [{ id: part.id, label: part.label }],
  );
  const slot = slots.find((each) => each.label === label);
  return (
    slot && {
      id: slot.id,
      label: slot.label,
      accepts,
      optional: optional !== undefined,
      choices: numbered(below.join('\n')),
    }
  );
}
