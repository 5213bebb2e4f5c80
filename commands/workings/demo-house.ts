import type { Desk } from '#chat/command.ts';
import type { Reply } from '#findings/reply.ts';
import type { AnyQuestion } from '#interview/question.ts';
import { howKnown, meansNotKnown } from '#interview/words.ts';
import { type DemoStop, demoHouse } from '#knowledge/demo-house.ts';
import type { Sheet } from './job-sheets.ts';

type NewFact = Parameters<Desk['store']['addFacts']>[1][number];

/** Whether a job is the demo house: its name says so wherever it is shown, and no counts of a crew hold it. */
export const isInvented = ({ name }: Pick<Sheet, 'name'>): boolean => name === demoHouse.name;

/** The house lies open in a place of its own, so that no channel's sheet is touched. */
const place = 'demo';

/** The job of the demo house, made at the first look and brought back where somebody closed it. */
export function demoSheet({ store, speaker: { who } }: Desk): Sheet {
  const found = store.findSheet(demoHouse.name);
  if (found?.state === 'closed') return store.reopenSheet(found.number, { who });
  return found ?? store.openSheet({ channel: place, name: demoHouse.name, who });
}

/** Erases the demo house with everything on it. @returns the numbers of the jobs that went. */
export function putAway({ store }: Desk): readonly number[] {
  const gone: number[] = [];
  for (let found = store.findSheet(demoHouse.name); found; found = store.findSheet(demoHouse.name)) {
    store.eraseSheet(found.number);
    gone.push(found.number);
  }
  return gone;
}

/** More rounds of questions than any command asks. */
const mostRounds = 60;

const upTo = (stop: DemoStop): readonly DemoStop[] => demoHouse.stops.slice(0, demoHouse.stops.indexOf(stop) + 1);

/** What the house answers as it stands at a stop, each under the id of its question. */
export const toldBy = (stop: DemoStop): Readonly<Record<string, string>> =>
  Object.assign({}, ...upTo(stop).map(({ answers }) => answers));

/** A command and what the house says to its questions. */
interface Asked {
  readonly command: string;
  readonly told: Readonly<Record<string, string>>;
}

/**
 * Brings the sheet to where it stands at a stop, whichever was looked at before: what was said up to there counts, and
 * nothing else.
 */
export function bringTo(desk: Desk, sheet: number, stop: DemoStop): void {
  const { store, speaker } = desk;
  const told = toldBy(stop);
  for (const [fact, { typed, how }] of store.newestFacts(sheet)) {
    if (told[fact] === typed || how === 'unknown') continue;
    while (store.retractNewest(sheet, { who: speaker.who, fact })) {
      // Each brings back the one before it, until none is left.
    }
  }
  for (const { answers, keeps, shows } of upTo(stop)) {
    note(desk, sheet, answers);
    if (keeps) answered(desk, sheet, { command: shows.command, told });
  }
}

/**
 * What a command answers in the demo house. Every question it asks on the way is answered as the house has it; where the house
 * is silent, nobody knows, or enough is asked.
 */
export function answered(desk: Desk, sheet: number, { command, told }: Asked): Reply {
  for (let round = 0; round < mostRounds; round += 1) {
    const outcome = desk.answerOn(sheet, command);
    if ('reply' in outcome) {
      const { keeps = [] } = outcome.reply;
      note(desk, sheet, Object.fromEntries(keeps.map(({ fact, typed }) => [fact, `${typed} measured`])));
      return outcome.reply;
    }
    desk.store.addFacts(
      sheet,
      outcome.lacks.map((question) => factOf(desk, question, told[question.id] ?? passedBy(question))),
    );
  }
  throw new Error(`${command} asks without end in the demo house`);
}

/** What is said where the house is silent. */
const passedBy = ({ widget }: AnyQuestion): string =>
  widget.kind === 'one' && widget.choices.some(({ id }) => id === 'enough') ? 'enough' : "don't know";

/** Puts answers on the sheet that are not on it yet. */
function note({ commands, ...desk }: Desk, sheet: number, answers: Readonly<Record<string, string>>): void {
  const questions = commands.flatMap((command) => (command.kind === 'answer' ? command.takes : []));
  const known = desk.store.newestFacts(sheet);
  const facts = Object.entries(answers).flatMap(([id, typed]) => {
    const question = questions.find((each) => each.id === id);
    return question && known.get(id)?.typed !== typed ? [factOf(desk, question, typed)] : [];
  });
  desk.store.addFacts(sheet, facts);
}

/** @throws Error when the house says what its question does not take: a mistake of ours. */
function factOf({ speaker }: Pick<Desk, 'speaker'>, question: AnyQuestion, typed: string): NewFact {
  const fact = { fact: question.id, typed, units: 'inch-pound', who: speaker.who } as const;
  if (meansNotKnown(typed)) return { ...fact, value: null, how: 'unknown' };
  const { text, how } = howKnown(typed);
  const reading = question.read(text, fact.units);
  if ('rejected' in reading) throw new Error(`knowledge/demo/house.json › ${question.id}: ${reading.rejected}`);
  return { ...fact, value: reading.value, how };
}
