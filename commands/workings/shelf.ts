import type { Desk } from '#chat/command.ts';
import type { AnyQuestion, Question, Reading, UnitSystem } from '#interview/question.ts';
import { worded } from '#interview/worded.ts';
import { howKnown, meansNotKnown } from '#interview/words.ts';
import type { Language } from '#words/language.ts';
import { labelQuestions } from '../questions/shelf.ts';
import { shelfWords } from '../words/shelf.ts';
import { languageAt } from '../words/swap.ts';

export type ShelfFan = NonNullable<ReturnType<Desk['store']['shelfFan']>>;
export type NewShelfFan = Parameters<Desk['store']['saveShelfFans']>[0][number];

/** More fans than a small crew ever chooses among, and few enough to look through. */
export const mostFans = 500;
const longestName = 60;
const longestAnswer = 400;

const shortened = (text: string): string => {
  const clean = [...text.slice(0, 200).replace(/\p{C}/gu, '')];
  return clean.length > 30 ? `${clean.slice(0, 30).join('')}…` : clean.join('');
};

/** A name as it stands on the shelf: one line, nothing that cannot be seen. */
export function readFanName(text: string, language: Language = 'english'): Reading<string> {
  const texts = shelfWords[language];
  const name = text.slice(0, 2000).replace(/\p{C}/gu, ' ').replace(/\s+/g, ' ').trim();
  if (!/[\p{L}\p{N}]/u.test(name)) return { rejected: texts.giveName };
  if (name.length <= longestName) return { value: name };
  return { rejected: texts.nameTooLong(longestName, shortened(name)) };
}

/** A label as typed, once every answer on it has been read; what could not be read is told in sentences. */
export function readLabel(
  given: Readonly<Record<string, string | undefined>>,
  units: UnitSystem,
  language?: Language,
): { readonly label: Readonly<Record<string, string>>; readonly problems: readonly string[] } {
  const label: Record<string, string> = {};
  const problems: string[] = [];
  for (const asked of labelQuestions) {
    const question = worded(asked as AnyQuestion, language);
    const text = given[question.id]?.trim() ?? '';
    if (text === '' || meansNotKnown(text)) continue;
    const reading =
      text.length > longestAnswer
        ? { rejected: shelfWords[language ?? 'english'].tooLong(question.accepts) }
        : question.read(howKnown(text).text, units);
    if ('rejected' in reading) problems.push(`${question.id}: ${reading.rejected}`);
    else label[question.id] = text;
  }
  return { label, problems };
}

/** What the label of a fan answers to a question; `undefined` where it is silent. */
export function onLabel<Value>(
  fan: Pick<NewShelfFan, 'label' | 'units'>,
  question: Question<Value>,
): Value | undefined {
  const text = fan.label[question.id];
  if (text === undefined) return undefined;
  const reading = question.read(howKnown(text).text, fan.units);
  return 'value' in reading ? reading.value : undefined;
}

/** The same in words, in the crew's units; empty where the label is silent. */
export function labelText(fan: ShelfFan, question: AnyQuestion, units: UnitSystem, language?: Language): string {
  const value = onLabel<unknown>(fan, question);
  return value === undefined ? '' : worded(question, language).show(value, units);
}

/** An invented fan is never shown without saying so. */
export const shownName = ({ name, demo }: Pick<ShelfFan, 'name' | 'demo'>, language: Language = 'english'): string =>
  demo ? shelfWords[language].shownInvented(name) : name;

/** The fan meant: by its whole name, or by a part of it that only one fan has. */
export function fanNamed(desk: Desk, text: string): Reading<ShelfFan> {
  const exact = desk.store.shelfFan(text);
  if (exact) return { value: exact };
  const alike = text.trim() === '' ? [] : desk.store.shelfFans({ search: text, limit: 4 });
  const [only] = alike;
  if (only && alike.length === 1) return { value: only };
  const texts = shelfWords[languageAt(desk)];
  const hint = alike.length > 1 ? texts.which(alike.map(({ name }) => name)) : texts.seeList;
  return { rejected: `${texts.noSuch(shortened(text.trim()))} ${hint}` };
}

/** The fans named, each text one of them or several with commas between; with none named the shelf, where it is small. */
export function fansMeant(
  desk: Desk,
  { named, most }: { readonly named: readonly string[]; readonly most: number },
): Reading<readonly ShelfFan[]> {
  if (named.length === 0) {
    const shelf = desk.store.shelfFans({ limit: most + 1 });
    if (shelf.length === 0) return { rejected: 'The shelf is empty. Put a fan on it with /fan add, or try /fan demo.' };
    return shelf.length <= most ? { value: shelf } : { rejected: `Name up to ${most} fans, with commas between.` };
  }
  const whole = (text: string) => desk.store.shelfFan(text) !== undefined;
  const names = named
    .flatMap((text) => (whole(text) ? [text] : text.split(/[,;]/)))
    .filter((text) => text.trim() !== '');
  if (names.length > most) return { rejected: `At most ${most} fans can be compared at once.` };
  const fans = new Map<string, ShelfFan>();
  for (const name of names) {
    const found = fanNamed(desk, name.trim());
    if ('rejected' in found) return found;
    fans.set(found.value.name, found.value);
  }
  return fans.size === 0
    ? { rejected: 'Name a fan of the shelf. /fan list shows them.' }
    : { value: [...fans.values()] };
}
