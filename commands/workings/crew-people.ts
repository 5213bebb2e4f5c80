import type { Desk } from '#chat/command.ts';
import type { Choice, Reading } from '#interview/question.ts';
import { plain } from '#interview/words.ts';
import type { Language } from '#words/language.ts';
import { crewWords } from '../words/crew.ts';
import { crewChangeWords } from '../words/crew-changes.ts';
import { languageAt } from '../words/swap.ts';

export type Member = ReturnType<Desk['store']['members']>[number];
export type MemberKind = Member['kinds'][number];
export type QualificationKind = Member['qualifications'][number]['kind'];

export const kindChoices = [
  { id: 'lead', label: crewWords.english.kinds.lead },
  { id: 'apprentice', label: crewWords.english.kinds.apprentice },
  { id: 'office', label: crewWords.english.kinds.office },
] as const satisfies readonly (Choice & { id: MemberKind })[];

export const qualificationChoices = [
  { id: 'electrically-qualified', label: crewWords.english.qualifications['electrically-qualified'] },
  { id: 'licensed-electrician', label: crewWords.english.qualifications['licensed-electrician'] },
  { id: 'certified-renovator', label: crewWords.english.qualifications['certified-renovator'] },
  { id: 'combustion-tester', label: crewWords.english.qualifications['combustion-tester'] },
] as const satisfies readonly (Choice & { id: QualificationKind })[];

/** The id of the choice meant, or nothing. */
export const chosen = <Id extends string>(choices: readonly { readonly id: Id }[], text: string): Id | undefined =>
  choices.find(({ id }) => id === plain(text).replace(/\s+/g, '-'))?.id;

export function readQualification(text: string, language: Language = 'english'): Reading<QualificationKind> {
  const kind = chosen(qualificationChoices, text);
  const ids = qualificationChoices.map(({ id }) => id);
  return kind === undefined ? { rejected: crewChangeWords[language].sayWhich(ids) } : { value: kind };
}

/** More people than a small crew ever has. */
export const mostMembers = 100;

const mention = /^<@!?(\d{1,20})>$/;
export const isMention = (who: string): boolean => mention.test(who);

const oneLine = (text: string): string => text.slice(0, 2000).replace(/\p{C}/gu, ' ').replace(/\s+/g, ' ').trim();

/** A name or a number as it stands in the records: one line, nothing that cannot be seen. */
export function readWords(
  text: string,
  { most, ask, language = 'english' }: { most: number; ask: string; language?: Language },
): Reading<string> {
  const words = oneLine(text);
  if (!/[\p{L}\p{N}]/u.test(words) || words.length > most)
    return { rejected: crewChangeWords[language].atMost(ask, most) };
  return { value: words };
}

/**
 * Who is meant, as events will name the person: a mention where the crew speaks in mentions, so that what the person presses
 * is known as theirs; else a name.
 */
export function readPerson(desk: Desk, text: string): Reading<string> {
  const { speaker } = desk;
  const language = languageAt(desk);
  const { nameOneSuchAs: ask, nameOneWithAt } = crewChangeWords[language];
  const said = oneLine(text);
  const [, id] = mention.exec(said) ?? [];
  if (id !== undefined) return { value: `<@${id}>` };
  if (isMention(speaker.who)) return { rejected: nameOneWithAt };
  if (/^[<@]/.test(said)) return { rejected: ask };
  return readWords(said, { most: 60, ask, language });
}

/** The member meant, by who they are or by the name the crew has for them. */
export function memberNamed(desk: Desk, text: string): Reading<Member> {
  const said = oneLine(text);
  const [, id] = mention.exec(said) ?? [];
  const members = desk.store.members();
  const known = members.find(({ who }) => who === (id === undefined ? said : `<@${id}>`));
  if (known) return { value: known };
  const alike = members.filter(({ name }) => name.toLowerCase() === said.toLowerCase());
  const [only] = alike;
  if (only && alike.length === 1) return { value: only };
  const { nobodyNamed, sameName } = crewWords[languageAt(desk)];
  return { rejected: only ? sameName : nobodyNamed };
}

export const memberSuggestions = ({ store }: Desk, typed: string): readonly Choice[] =>
  store
    .members()
    .filter(({ name }) => name.toLowerCase().includes(typed.trim().toLowerCase()))
    .slice(0, 25)
    .map(({ who, name }) => ({ id: who, label: name }));

/** A day of the calendar, written 2027-03-31. */
export function readDay(text: string, language: Language = 'english'): Reading<string> {
  const { twoDays, lastDay } = crewChangeWords[language];
  const typed = text.trim().slice(0, 20);
  const [, month = '', day = '', year = ''] = /^(\d{1,2})\/(\d{1,2})\/((?:20)?\d{2})$/.exec(typed) ?? [];
  // A day up to the 12th could as well be a month, and a license must not hold longer than it does.
  if (year !== '' && Number(day) <= 12 && day !== month) {
    return { rejected: twoDays(typed) };
  }
  const said = year === '' ? typed : `20${year.slice(-2)}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
  const at = /^\d{4}-\d{2}-\d{2}$/.test(said) ? new Date(`${said}T00:00:00Z`) : new Date(Number.NaN);
  return !Number.isNaN(at.getTime()) && at.toISOString().startsWith(said) ? { value: said } : { rejected: lastDay };
}

export const kindsText = ({ kinds }: Pick<Member, 'kinds'>, language: Language = 'english'): string => {
  const words = crewWords[language];
  return kinds.length === 0 ? words.member : kinds.map((kind) => words.kinds[kind]).join(', ');
};

/** "licensed electrician EL-20419, to 2026-06-30"; a lapsed one says so first. */
export function qualificationText(
  { kind, number, expires, lapsed }: Member['qualifications'][number],
  language: Language = 'english',
): string {
  const words = crewWords[language];
  const says = words.qualification(words.qualifications[kind], number, expires);
  return lapsed ? words.lapsed(says) : says;
}
