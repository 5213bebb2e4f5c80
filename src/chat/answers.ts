import type { AnyQuestion, FactHow, Reading, UnitSystem } from '#interview/question.ts';
import type { Recall } from '#interview/replay.ts';
import { readsNotKnown, worded } from '#interview/worded.ts';
import { howKnown, meansNotKnown } from '#interview/words.ts';
import { leading } from '#quantity/units.ts';
import type { FactRow, NewFact } from '#store/facts.ts';
import type { ScopedStore } from '#store/store.ts';
import { conversationWords } from '#words/conversation.ts';
import { type Language, languageMeant } from '#words/language.ts';
import type { AnswerCommand, Speaker } from './command.ts';
import { readOnce } from './reading-once.ts';

/** An answer as it goes on the sheet: what was typed, the value it was read as, and how it is known. */
export interface Understood {
  readonly typed: string;
  readonly value: unknown;
  readonly how: FactHow;
}

/** Reads one typed answer. "don't know" is always an answer. */
export function understood(question: AnyQuestion, typed: string, units: UnitSystem): Reading<Understood> {
  if (meansNotKnown(typed)) return { value: { typed: typed.trim(), value: null, how: 'unknown' } };
  const said = howKnown(typed);
  const reading = readOnce(question, said.text, units);
  return 'rejected' in reading ? reading : { value: { typed: typed.trim(), value: reading.value, how: said.how } };
}

/** The units a crew writes and reads; a bare number means the first of them. */
export function unitsOf(store: ScopedStore): UnitSystem {
  const kept = store.setting('units');
  return kept === 'metric' || kept === 'both' ? kept : 'inch-pound';
}

/** The language a crew is answered in where a person's own is not known; nothing where nobody has set it. */
export const crewLanguage = (store: ScopedStore): Language | undefined =>
  languageMeant(store.setting('language') ?? '');

const factOf = (question: AnyQuestion, answer: Understood, units: UnitSystem, who: string): NewFact => ({
  fact: question.id,
  typed: answer.typed,
  units: leading(units),
  value: answer.value,
  how: answer.how,
  who,
});

/** A fact put on a sheet, by the row it stands in. */
export interface Noted {
  readonly fact: string;
  readonly row: number;
}

/**
 * Notes answers on a sheet, all in one step. Bad ones are not noted; each is named in a sentence of its own, and by its id among
 * the unread. For each "don't know" a sentence says what is taken instead, and why.
 */
export function noteAnswers(
  store: ScopedStore,
  sheet: number,
  answers: readonly (readonly [AnyQuestion, string])[],
  { who, language }: Pick<Speaker, 'who' | 'language'>,
): { readonly noted: readonly Noted[]; readonly notes: readonly string[]; readonly unread: readonly string[] } {
  const units = unitsOf(store);
  const read = answers.map(([question, text]) => ({
    question,
    reading: understood(worded(question, language), text, units),
  }));
  const rows = store.addFacts(
    sheet,
    read.flatMap(({ question, reading }) => ('value' in reading ? [factOf(question, reading.value, units, who)] : [])),
  );
  return {
    noted: rows.map(({ id, fact }) => ({ fact, row: id })),
    unread: read.flatMap(({ question, reading }) => ('rejected' in reading ? [question.id] : [])),
    notes: read.flatMap(({ question, reading }) => {
      if ('rejected' in reading) {
        return [answers.length > 1 ? `${worded(question, language).brief}: ${reading.rejected}` : reading.rejected];
      }
      return reading.value.how === 'unknown' ? [standIn(question, units, language)] : [];
    }),
  };
}

/** What goes on in place of an answer nobody had: "Ceiling height: taken as 8 to 9 ft. Most houses have 8 ft ceilings." */
function standIn(question: AnyQuestion, units: UnitSystem, language: Language = 'english'): string {
  const asked = worded(question, language);
  const { standIn: inWords } = conversationWords[asked.language ?? 'english'];
  return inWords(asked.brief, standInOf(question, units, language), asked.whenUnknown.because);
}

/** What stands in for an answer nobody has, as a person reads it; nothing where not knowing is itself the answer. */
export function standInOf(question: AnyQuestion, units: UnitSystem, language?: Language): string | undefined {
  if (question.unknownCounts) return undefined;
  const asked = worded(question, language);
  const written = standIns.get(asked) ?? {};
  standIns.set(asked, written);
  if (!(units in written)) written[units] = standInWritten(question, asked, units);
  return written[units];
}

/** A question's stand-in never changes, and a plan writes fifty of them. */
const standIns = new WeakMap<AnyQuestion, Partial<Record<UnitSystem, string | undefined>>>();

function standInWritten(question: AnyQuestion, asked: AnyQuestion, units: UnitSystem): string | undefined {
  const { value } = question.whenUnknown;
  return value === null || readsNotKnown(question.show(value, units)) ? undefined : asked.show(value, units);
}

/**
 * What a sheet knows as it stands now, behind the crew's own settings where the sheet is silent. A fact that can no longer be
 * read (the rules of reading have changed since) counts as unanswered, so that it is asked again rather than guessed. Each
 * is read once, however often it is asked for.
 */
export function recallFrom(store: ScopedStore, sheet: number): Recall {
  const facts = store.newestFacts(sheet);
  const known = new Map<AnyQuestion, ReturnType<Recall>>();
  const looked = (question: AnyQuestion): ReturnType<Recall> => {
    const fact = facts.get(question.id);
    if (fact) return answerOf(question, fact);
    const usual = store.setting(`usual:${question.id}`);
    return typeof usual !== 'string'
      ? undefined
      : answerOf(question, { typed: usual, units: leading(unitsOf(store)), how: 'told' });
  };
  return (question) => {
    if (!known.has(question)) known.set(question, looked(question));
    return known.get(question);
  };
}

/** What a command may build on: the sheet, and what else the records of the job say to it. */
export function recallFor(store: ScopedStore, sheet: number, command: AnswerCommand<unknown>): Recall {
  const recall = recallFrom(store, sheet);
  return command.recalling?.(recall, { store, sheet }) ?? recall;
}

function answerOf(question: AnyQuestion, fact: Pick<FactRow, 'typed' | 'units' | 'how'>) {
  if (fact.how === 'unknown') return { value: question.whenUnknown.value, known: false };
  const reading = readOnce(question, howKnown(fact.typed).text, fact.units);
  return 'value' in reading ? { value: reading.value, known: true } : undefined;
}
