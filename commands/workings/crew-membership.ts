import type { Action, Desk, DeskOption } from '#chat/command.ts';
import type { Reply } from '#findings/reply.ts';
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
  if (!kept) return saying('The crew has been changed too often to keep more changes.');
  return saying(headline, { findings: lapsedFindings(desk) });
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
    const who = readPerson(desk, text);
    const kind = chosen(kindChoices, as);
    if ('rejected' in who) return saying(who.rejected);
    if (kind === undefined) return saying('Say as what: lead, apprentice or office.');
    const before = desk.store.member(who.value);
    const wanted = typed ?? before?.name ?? (isMention(who.value) ? '' : who.value);
    const name = readWords(wanted, { most: 60, ask: 'Give name: how the records call the person, such as Ana.' });
    if ('rejected' in name) return saying(name.rejected);
    if (!before && desk.store.members().length >= mostMembers)
      return saying(`A crew has at most ${mostMembers} members.`);
    const kinds = kindChoices.map(({ id }) => id).filter((id) => id === kind || before?.kinds.includes(id));
    const changed = { who: who.value, name: name.value, kinds, qualifications: before?.qualifications ?? [] };
    const signing = kind === 'lead' ? ' What the law asks a license for needs /crew qualify as well.' : '';
    return keep(desk, changed, `${name.value} is in the crew: ${kindsText(changed)}.${signing}`);
  },
};

export const remove: Action = {
  name: 'remove',
  summary: 'Take a person out of the crew, or take one part away, such as lead.',
  managersOnly: true,
  options: [member, { id: 'as', brief: 'only this part; all of it when left out', choices: kindChoices }],
  act(desk, { person: text = '', as }) {
    const found = memberNamed(desk, text);
    if ('rejected' in found) return saying(found.rejected);
    const { who, name, kinds, qualifications } = found.value;
    const kind = as === undefined ? undefined : chosen(kindChoices, as);
    if (as !== undefined && kind === undefined) return saying('Say which part: lead, apprentice or office.');
    const left = kinds.filter((each) => kind !== undefined && each !== kind);
    if (left.length > 0) {
      const changed = { who, name, kinds: left, qualifications };
      return keep(desk, changed, `${name} is in the crew still: ${kindsText(changed)}.`);
    }
    desk.store.removeMember(who, desk.speaker);
    return saying(`${name} is no longer in the crew and signs nothing. What was signed before stands.`);
  },
};

const what: DeskOption = { id: 'what', brief: 'the qualification', required: true, choices: qualificationChoices };

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
    const found = memberNamed(desk, text);
    const number = readWords(typed, { most: 40, ask: 'Give number: of the license, certificate or training record.' });
    const expires = readDay(day);
    const kind = readQualification(wanted);
    const problems = [found, kind, number, expires].flatMap((each) => ('rejected' in each ? [each.rejected] : []));
    if ('rejected' in found || 'rejected' in kind || 'rejected' in number || 'rejected' in expires) {
      return saying('Nothing was changed.', { findings: notUnderstood(problems) });
    }
    const others = found.value.qualifications.filter((each) => each.kind !== kind.value);
    const own = { kind: kind.value, number: number.value, expires: expires.value, lapsed: false };
    return keep(
      desk,
      { ...found.value, qualifications: [...others, own] },
      `${found.value.name}: ${qualificationText(own)}.`,
    );
  },
};

export const unqualify: Action = {
  name: 'unqualify',
  summary: 'Take a qualification of a member away.',
  managersOnly: true,
  options: [member, what],
  act(desk, { person: text = '', what: wanted = '' }) {
    const found = memberNamed(desk, text);
    if ('rejected' in found) return saying(found.rejected);
    const { name, qualifications } = found.value;
    const meant = chosen(qualificationChoices, wanted);
    const left = qualifications.filter(({ kind }) => kind !== meant);
    if (left.length === qualifications.length) return saying(`${name} has no such qualification here.`);
    return keep(
      desk,
      { ...found.value, qualifications: left },
      `Taken away from ${name}. What was signed before stands.`,
    );
  },
};
