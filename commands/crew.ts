import type { Action, DeskCommand, DeskOption } from '#chat/command.ts';
import { plain } from '#interview/words.ts';
import { crewWords } from './words/crew.ts';
import { crewChangeWords } from './words/crew-changes.ts';
import { languageAt } from './words/swap.ts';
import { add, person, qualify, remove, unqualify } from './workings/crew-membership.ts';
import { memberNamed, memberSuggestions, readWords } from './workings/crew-people.ts';
import { cleared, crewSettings, readRetention, retentionText, settle, settledAs } from './workings/crew-settings.ts';
import { crewTable, lapsedFindings } from './workings/crew-table.ts';
import { notUnderstood, remark, saying } from './workings/plain-replies.ts';

const show: Action = {
  name: 'show',
  summary: 'Show what the crew has settled for its jobs, and who may sign for what.',
  options: [],
  act: (desk) => {
    const members = desk.store.members();
    const leads = members.filter(({ kinds }) => kinds.includes('lead')).length;
    const language = languageAt(desk);
    const words = crewWords[language];
    return saying(words.headline(members.length, leads), {
      language,
      findings: [
        ...(leads === 0 ? [remark('no-lead', 'advice', words.nameLead)] : []),
        ...lapsedFindings(desk, language),
      ],
      tables: [crewTable(desk, language)],
    });
  },
};

const set: Action = {
  name: 'set',
  summary: 'Settle units, codes, time zone, the crew’s name and phone for every job.',
  managersOnly: true,
  options: crewSettings.map(
    ({ id, brief, suggest }): DeskOption => ({
      id,
      brief: `${brief}; ${cleared} takes it away`,
      suggest: (_, typed) => suggest(typed),
    }),
  ),
  act(desk, given) {
    const language = languageAt(desk);
    const texts = crewChangeWords[language];
    const { set: done, problems } = settle(desk, given);
    if (done.length + problems.length === 0)
      return saying(texts.sayWhatToSet, { language, tables: [crewTable(desk, language)] });
    return saying(done.length === 0 ? texts.nothingChanged : texts.settled(done.map((each) => settledAs(desk, each))), {
      language,
      findings: notUnderstood(problems),
    });
  },
};

const retention: Action = {
  name: 'retention',
  summary: 'Say how long closed jobs are kept before they are erased for good.',
  managersOnly: true,
  options: [{ id: 'keep', brief: 'how long after closing: 18 months, 2 years, or forever', required: true }],
  act(desk, { keep: text = '' }) {
    const { store, speaker } = desk;
    const language = languageAt(desk);
    const texts = crewChangeWords[language];
    const months = readRetention(text, language);
    if ('rejected' in months) return saying(months.rejected, { language });
    store.saveRetention(months.value, speaker);
    const expired = store.expiredSheets().length;
    return saying(texts.kept(retentionText(months.value, language)), {
      language,
      findings: expired === 0 ? [] : [remark('about-to-go', 'caution', texts.aboutToGo(expired))],
    });
  },
};

const forget: Action = {
  name: 'forget',
  summary: 'Make a person unknown in all the records here: “someone” stands in place of the name.',
  managersOnly: true,
  options: [
    { ...person, suggest: memberSuggestions },
    { id: 'confirm', brief: 'yes, once you have read what it does', choices: [{ id: 'yes', label: 'yes' }] },
  ],
  act(desk, { person: text = '', confirm }) {
    const language = languageAt(desk);
    const texts = crewChangeWords[language];
    const words = readWords(text, { most: 80, ask: texts.nameOne, language });
    if ('rejected' in words) return saying(words.rejected, { language });
    const found = memberNamed(desk, text);
    const names = 'value' in found ? [found.value.who, found.value.name] : [words.value.replace(/^<@!(?=\d)/, '<@')];
    const records = desk.store.recordsNaming(names);
    if (records === 0) return saying(texts.nobodyInRecords, { language });
    if (confirm === undefined || plain(confirm) !== 'yes') {
      return saying(texts.standsIn(records), {
        language,
        findings: [remark('for-good', 'caution', texts.forGood), remark('backups', 'advice', texts.backups)],
      });
    }
    const changed = desk.store.forgetPerson(names);
    return saying(texts.forgotten(changed), { language });
  },
};

const crew: DeskCommand = {
  kind: 'desk',
  name: 'crew',
  summary: 'What the crew settles once for all its jobs: units, codes, leads and who is licensed for what.',
  example: 'set units=metric building-code-edition=irc-2021',
  moreExamples: [
    'set crew-name="Ana and Sons" crew-phone="555-0100"',
    'add person="Ana Ruiz" as=lead',
    'qualify person="Ana Ruiz" what=licensed-electrician number="EL-1" expires=2027-03-31',
    'qualify person="Ana Ruiz" what=electrically-qualified number="training record 12" expires=2027-03-31',
  ],
  actions: [show, set, add, remove, qualify, unqualify, retention, forget],
};

export default crew;
