import type { Writable } from 'node:stream';
import type { PressOffer, Reply } from '#findings/reply.ts';
import type { UnitSystem } from '#quantity/units.ts';
import { openStore, type ScopedStore, type Store } from '#store/store.ts';
import { type Language, languageTold } from '#words/language.ts';
import { terminalWords } from '#words/terminal.ts';
import { crewLanguage, recallFor, unitsOf } from '../answers.ts';
import type { AnswerCommand, Command, Desk, DeskCommand, Start } from '../command.ts';
import { deskFor } from '../desk.ts';
import { asJson, exitCode, type OneShot, oneShot } from '../one-shot.ts';
import { clipped, nearest } from '../options.ts';
import { chartFile } from './chart-file.ts';
import { deskAnswer } from './desk.ts';
import { photoAt } from './given-photo.ts';
import { type Paper, paperOf, paragraph } from './paper.ts';
import { replyText } from './render.ts';
import { keptFiles } from './reply-files.ts';

interface Given {
  readonly commands: readonly Command[];
  readonly settings: { readonly FANWRIGHT_DB: string };
  readonly who: string;
  /** The language asked for; the crew's own setting holds where it is left out and the records are open anyway. */
  readonly language?: Language | undefined;
  /** The units asked for; those of the job named hold where they are left out, else inch-pound. */
  readonly units?: UnitSystem | undefined;
  readonly environment: NodeJS.ProcessEnv;
  readonly output: Writable & { readonly columns?: number; readonly isTTY?: boolean };
}

/**
 * Answers one command from the words after `npm start --` and ends. With `job=…` it starts from that job's sheet; without,
 * from nothing. The records are opened only where they are needed, so a question can be asked while Discord has them.
 *
 * @returns the exit code: 0 answered, 2 needs answers or something was not understood, 3 a finding says stop.
 */
export async function answerOnce(words: readonly string[], given: Given): Promise<number> {
  const json = words.includes('--json');
  const { told, rest } = languageTold(words);
  const { units, rest: said } = unitsTold(rest);
  // What a machine reads stays English, unless the very line asks otherwise.
  const asked = { ...given, units, language: told ?? (json ? undefined : given.language) };
  const paper = paperOf(given.output, given.environment);
  const [name = '', ...options] = helpAsked(said.filter((word) => word !== '--json'));
  const records = recordsOf(given.settings.FANWRIGHT_DB);
  try {
    const answer = answerTo(name, options, asked, records);
    given.output.write(`${json ? asJson(answer) : await asText(answer, paper, asked.language)}\n`);
    return exitCode(answer);
  } finally {
    records.close();
  }
}

/** `--units=both` anywhere says in which units. */
function unitsTold(words: readonly string[]): { readonly units?: UnitSystem; readonly rest: readonly string[] } {
  const named = words.findLast((word) => isUnits(word))?.slice('--units='.length);
  const units = unitSystems.find((each) => each === named);
  // A name that is none of them is left in, so that it is refused like any word that was not understood.
  return units === undefined ? { rest: words } : { units, rest: words.filter((word) => !isUnits(word)) };
}

const isUnits = (word: string): boolean => word.startsWith('--units=');
const unitSystems: readonly UnitSystem[] = ['inch-pound', 'metric', 'both'];

/** `--help` anywhere asks for help, as people expect. */
function helpAsked(words: readonly string[]): readonly string[] {
  const wanted = words.filter((word) => word !== '--help' && word !== '-h');
  return wanted.length === words.length || wanted[0] === 'help' ? wanted : ['help', ...wanted.slice(0, 1)];
}

function answerTo(name: string, rest: readonly string[], given: Given, records: Records): OneShot {
  const { commands } = given;
  const command = commands.find((each) => each.name === name.replace(/^\//, '').toLowerCase());
  if (!command) return refused(clipped(name), [unknown(name, commands)]);
  if (command.kind === 'desk') return fromDesk(command, rest, deskOf(given, records));
  const job = rest.filter((word) => word.startsWith('job=')).map((word) => word.slice(4));
  const { language, units } = given;
  if (job.length === 0) return oneShot(command, rest, { units: units ?? 'inch-pound', language });
  return onSheet(command, rest, { job: job.at(-1) ?? '', language, units }, records.scoped());
}

function onSheet(
  command: AnswerCommand<unknown>,
  rest: readonly string[],
  { job, language, units }: { readonly job: string } & Pick<Given, 'language' | 'units'>,
  store: ScopedStore,
): OneShot {
  const sheet = store.findSheet(job);
  if (!sheet) return refused(command.name, [`There is no job “${clipped(job)}” here. See them with: job list`]);
  return oneShot(
    command,
    rest.filter((word) => !word.startsWith('job=')),
    {
      units: units ?? unitsOf(store),
      language: language ?? crewLanguage(store),
      recall: recallFor(store, sheet.number, command),
    },
  );
}

function fromDesk(command: DeskCommand, words: readonly string[], desk: Desk): OneShot {
  const answer = deskAnswer(command, words, desk);
  if ('problems' in answer) return refused(command.name, answer.problems);
  if ('start' in answer.reply) return fromStart(answer.reply, desk);
  if (answer.reply.refused) return refused(command.name, [answer.reply.headline]);
  // What the plain words may mean is asked back, so nothing is answered yet.
  const status = command.name === 'ask' ? 'needs-answers' : 'answered';
  return {
    command: command.name,
    status,
    reply: answer.reply,
    missing: [],
    problems: [],
    notes: answer.reply.notes ?? [],
  };
}

function fromStart({ start, given, notes, unasked }: Start, { commands, speaker, bareUnits }: Desk): OneShot {
  const command = commands.find((each) => each.name === start);
  if (command?.kind !== 'answer') return refused(clipped(start), [unknown(start, commands)]);
  const words = Object.entries({ ...unasked?.given, ...given }).map(([id, answer]) => `${id}=${answer}`);
  const answer = oneShot(command, words, { units: bareUnits, language: speaker.language });
  return { ...answer, notes: [...notes, ...(unasked?.notes ?? []), ...(answer.notes ?? [])] };
}

const refused = (command: string, sentences: readonly string[]): OneShot => ({
  command,
  status: 'needs-answers',
  missing: [],
  problems: sentences.map((says) => ({ says })),
});

function unknown(name: string, commands: readonly Command[]): string {
  const names = commands.map((each) => each.name);
  if (name === '') return `Name a command: ${names.join(', ')}.`;
  const meant = nearest(name.toLowerCase(), names);
  return `There is no “${clipped(name)}” command. ${meant ? `Did you mean ${meant}?` : `There are ${names.join(', ')}.`}`;
}

/** The records, opened when first asked for. */
interface Records {
  scoped(): ScopedStore;
  opened(): boolean;
  close(): void;
}

function recordsOf(file: string): Records {
  let store: Store | undefined;
  return {
    scoped() {
      store ??= openStore(file);
      return store.scoped('terminal');
    },
    opened: () => store !== undefined,
    close: () => store?.close(),
  };
}

const deskOf = ({ commands, who, language, units }: Given, records: Records): Desk =>
  deskFor({
    store: () => records.scoped(),
    recordsOpen: () => records.opened(),
    units,
    speaker: { channel: 'terminal', who, language },
    commands,
    mayManage: true,
    photo: (path) => photoAt(path, language),
  });

async function asText(
  { command, reply, missing, problems, notes = [] }: OneShot,
  paper: Paper,
  language: Language = 'english',
): Promise<string> {
  const { chart, isNeeded } = terminalWords[language];
  const read = notes.map((note) => paragraph(note, paper));
  if (reply) {
    const path = await chartFile('charts', command, reply);
    const where = [...(path === undefined ? [] : [chart(path)]), ...(await keptFiles('lists', reply))];
    const below = [...where, ...toType(reply)];
    return [...read, replyText(reply, paper), ...(below.length > 0 ? ['', ...below] : [])].join('\n');
  }
  const lacking = missing.filter(({ id }) => !problems.some((problem) => problem.id === id));
  return [
    ...read,
    ...problems.map(({ says }) => paragraph(says, paper)),
    ...lacking.map(({ id, prompt, accepts }) => paragraph(isNeeded(id, prompt, accepts), paper)),
  ].join('\n');
}

/** What to type to go on, where buttons or a form would stand elsewhere. */
function toType({ asks, presses = [] }: Reply): readonly string[] {
  const line = ({ command, action, given }: Omit<PressOffer, 'label'>): string =>
    [
      command,
      ...(action === '' ? [] : [action]),
      ...Object.entries(given).map(([key, value]) => `${key}=${/\s/.test(value) ? `"${value}"` : value}`),
    ].join(' ');
  if (!asks) return presses.map((offer) => `${offer.label}: ${line(offer)}`);
  const values = asks.fields.map(
    ({ id, choices = [] }) => `${id.replace(/^part-/, '')}=${choices.map((each) => each.id).join('|') || '…'}`,
  );
  return [`Type: ${line(asks)} value="${values.join(' ')}"`];
}
