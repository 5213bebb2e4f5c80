import type { Desk } from '#chat/command.ts';
import type { Question, Reading, UnitSystem } from '#interview/question.ts';
import { howKnown, meansNotKnown } from '#interview/words.ts';
import { labelQuestions } from '../questions/shelf.ts';

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
export function readFanName(text: string): Reading<string> {
  const name = text.slice(0, 2000).replace(/\p{C}/gu, ' ').replace(/\s+/g, ' ').trim();
  if (!/[\p{L}\p{N}]/u.test(name)) return { rejected: 'Give the fan a name, such as Hall bath 80.' };
  if (name.length <= longestName) return { value: name };
  return { rejected: `A name has at most ${longestName} characters; shorten “${shortened(name)}”.` };
}

/** A label as typed, once every answer on it has been read; what could not be read is told in sentences. */
export function readLabel(
  given: Readonly<Record<string, string | undefined>>,
  units: UnitSystem,
): { readonly label: Readonly<Record<string, string>>; readonly problems: readonly string[] } {
  const label: Record<string, string> = {};
  const problems: string[] = [];
  for (const question of labelQuestions) {
    const text = given[question.id]?.trim() ?? '';
    if (text === '' || meansNotKnown(text)) continue;
    const reading = text.length > longestAnswer ? tooLong(question.accepts) : question.read(howKnown(text).text, units);
    if ('rejected' in reading) problems.push(`${question.id}: ${reading.rejected}`);
    else label[question.id] = text;
  }
  return { label, problems };
}

const tooLong = (accepts: string): { readonly rejected: string } => ({
  rejected: `That is too long. Give ${accepts}.`,
});

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
export function labelText<Value>(fan: ShelfFan, question: Question<Value>, units: UnitSystem): string {
  const value = onLabel(fan, question);
  return value === undefined ? '' : question.show(value, units);
}

/** An invented fan is never shown without saying so. */
export const shownName = ({ name, demo }: Pick<ShelfFan, 'name' | 'demo'>): string =>
  demo ? `${name} (invented)` : name;

/** The fan meant: by its whole name, or by a part of it that only one fan has. */
export function fanNamed(desk: Desk, text: string): Reading<ShelfFan> {
  const exact = desk.store.shelfFan(text);
  if (exact) return { value: exact };
  const alike = text.trim() === '' ? [] : desk.store.shelfFans({ search: text, limit: 4 });
  const [only] = alike;
  if (only && alike.length === 1) return { value: only };
  const hint =
    alike.length > 1
      ? `Which: ${alike.map(({ name }) => name).join(', ')}?`
      : 'See those that are there with /fan list.';
  return { rejected: `There is no fan “${shortened(text.trim())}” on the shelf. ${hint}` };
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
