import type { Action, Desk, DeskOption } from '#chat/command.ts';
import type { Reply } from '#findings/reply.ts';
import { crewChangeWords } from '../words/crew-changes.ts';
import { languageAt } from '../words/swap.ts';
import {
  chosen,
  isMention,
  kindChoices,
  kindsText,
  type Member,
  memberNamed,
  memberSuggestions,
  mostMembers,
  qualificationChoices,
  qualificationText,
  readDay,
  readPerson,
  readQualification,
  readWords,
} from './crew-people.ts';
import { lapsedFindings } from './crew-table.ts';
import { notUnderstood, saying } from './plain-replies.ts';

export const person: DeskOption = {
  id: 'person',
  brief: 'the person: @ in a server, a name in the terminal',
  required: true,
};
const member: DeskOption = { ...person, suggest: memberSuggestions };

/** Keeps a member; /crew show has the whole crew. */
function keep(desk: Desk, changed: Pick<Member, 'who' | 'name' | 'kinds' | 'qualifications'>, headline: string): Reply {
  const { who, name, kinds } = changed;
  const qualifications = changed.qualifications.map(({ kind, number, expires }) => ({ kind, number, expires }));
  const kept = desk.store.saveMember({ who, name, kinds, qualifications }, desk.speaker);
  const language = languageAt(desk);
  if (!kept) return saying(crewChangeWords[language].tooOften, { language });
  return saying(headline, { language, findings: lapsedFindings(desk, language) });
}

export const add: Action = {
  name: 'add',
  summary: 'Take a person into the crew as lead, apprentice or office.',
  managersOnly: true,
  options: [
    person,
    { id: 'as', brief: 'lead, apprentice or office', required: true, choices: kindChoices },
    { id: 'name', brief: 'how the records call the person' },
  ],
  act(desk, { person: text = '', as = '', name: typed }) {
    const language = languageAt(desk);
    const texts = crewChangeWords[language];
    const who = readPerson(desk, text);
    const kind = chosen(kindChoices, as);
    if ('rejected' in who) return saying(who.rejected, { language });
    if (kind === undefined) return saying(texts.sayAsWhat, { language });
    const before = desk.store.member(who.value);
    const wanted = typed ?? before?.name ?? (isMention(who.value) ? '' : who.value);
    const name = readWords(wanted, { most: 60, ask: texts.giveName, language });
    if ('rejected' in name) return saying(name.rejected, { language });
    if (!before && desk.store.members().length >= mostMembers)
      return saying(texts.mostMembers(mostMembers), { language });
    const kinds = kindChoices.map(({ id }) => id).filter((id) => id === kind || before?.kinds.includes(id));
    const changed = { who: who.value, name: name.value, kinds, qualifications: before?.qualifications ?? [] };
    const signing = kind === 'lead' ? ` ${texts.needsQualify}` : '';
    return keep(desk, changed, `${texts.isIn(name.value, kindsText(changed, language))}${signing}`);
  },
};

export const remove: Action = {
  name: 'remove',
  summary: 'Take a person out of the crew, or take one part away, such as lead.',
  managersOnly: true,
  options: [member, { id: 'as', brief: 'only this part; all of it when left out', choices: kindChoices }],
  act(desk, { person: text = '', as }) {
    const language = languageAt(desk);
    const texts = crewChangeWords[language];
    const found = memberNamed(desk, text);
    if ('rejected' in found) return saying(found.rejected, { language });
    const { who, name, kinds, qualifications } = found.value;
    const kind = as === undefined ? undefined : chosen(kindChoices, as);
    if (as !== undefined && kind === undefined) return saying(texts.sayWhichPart, { language });
    const left = kinds.filter((each) => kind !== undefined && each !== kind);
    if (left.length > 0) {
      const changed = { who, name, kinds: left, qualifications };
      return keep(desk, changed, texts.isInStill(name, kindsText(changed, language)));
    }
    desk.store.removeMember(who, desk.speaker);
    return saying(texts.isOut(name), { language });
  },
};

const what: DeskOption = {
  id: 'what',
  brief: `the qualification: ${qualificationChoices.map(({ id }) => id).join(', ')}`,
  required: true,
  choices: qualificationChoices,
};

export const qualify: Action = {
  name: 'qualify',
  summary: 'Enter what a member is qualified or licensed for, with its number and last day.',
  managersOnly: true,
  options: [
    member,
    what,
    { id: 'number', brief: 'of the license, certificate or training record', required: true },
    { id: 'expires', brief: 'the last day it holds, such as 2027-03-31', required: true },
  ],
  act(desk, { person: text = '', what: wanted = '', number: typed = '', expires: day = '' }) {
    const language = languageAt(desk);
    const texts = crewChangeWords[language];
    const found = memberNamed(desk, text);
    const number = readWords(typed, { most: 40, ask: texts.giveNumber, language });
    const expires = readDay(day, language);
    const kind = readQualification(wanted, language);
    const problems = [found, kind, number, expires].flatMap((each) => ('rejected' in each ? [each.rejected] : []));
    if ('rejected' in found || 'rejected' in kind || 'rejected' in number || 'rejected' in expires) {
      return saying(texts.nothingChanged, { language, findings: notUnderstood(problems) });
    }
    const others = found.value.qualifications.filter((each) => each.kind !== kind.value);
    const own = { kind: kind.value, number: number.value, expires: expires.value, lapsed: false };
    return keep(
      desk,
      { ...found.value, qualifications: [...others, own] },
      `${found.value.name}: ${qualificationText(own, language)}.`,
    );
  },
};

export const unqualify: Action = {
  name: 'unqualify',
  summary: 'Take a qualification of a member away.',
  managersOnly: true,
  options: [member, what],
  act(desk, { person: text = '', what: wanted = '' }) {
    const language = languageAt(desk);
    const texts = crewChangeWords[language];
    const found = memberNamed(desk, text);
    if ('rejected' in found) return saying(found.rejected, { language });
    const { name, qualifications } = found.value;
    const meant = chosen(qualificationChoices, wanted);
    const left = qualifications.filter(({ kind }) => kind !== meant);
    if (left.length === qualifications.length) return saying(texts.noSuch(name), { language });
    return keep(desk, { ...found.value, qualifications: left }, texts.qualificationGone(name));
  },
};
