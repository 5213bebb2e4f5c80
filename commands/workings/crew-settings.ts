import type { Desk } from '#chat/command.ts';
import { oneOf } from '#interview/choices.ts';
import type { AnyQuestion, Choice, Reading, UnitSystem } from '#interview/question.ts';
import { worded } from '#interview/worded.ts';
import { howKnown, meansNotKnown, plain } from '#interview/words.ts';
import { leading } from '#quantity/units.ts';
import { type Language, languageMeant } from '#words/language.ts';
import { atticTemperature } from '../questions/attic.ts';
import { buildingCodeEdition } from '../questions/codes.ts';
import { altitude } from '../questions/duct.ts';
import { electricalCodeEdition } from '../questions/electrical-code.ts';
import { crewWords } from '../words/crew.ts';
import { crewChangeWords } from '../words/crew-changes.ts';
import { languageAt } from '../words/swap.ts';
import { crewContact } from './crew-contact.ts';

/** Something the crew settles once for all its jobs. */
export interface CrewSetting {
  /** What it is called as an option. */
  readonly id: string;
  readonly brief: string;
  /** Where it is kept. */
  readonly key: string;
  /** What goes on while nobody has set it. */
  unset(language?: Language): string;
  /** The text to keep, or what was wrong with it. */
  read(text: string, units: UnitSystem, language?: Language): Reading<string>;
  /** What was kept, as a person reads it. */
  show(kept: string, units: UnitSystem, language?: Language): string;
  suggest(typed: string): readonly Choice[];
}

const fitting = (choices: readonly Choice[], typed: string): readonly Choice[] => {
  const said = plain(typed);
  return choices.filter(({ id, label }) => [id, label].some((name) => name.toLowerCase().includes(said)));
};

const choicesOf = ({ widget }: AnyQuestion): readonly Choice[] =>
  widget.kind === 'text' ? [{ id: widget.placeholder, label: `for example ${widget.placeholder}` }] : widget.choices;

/**
 * The usual answer to a question, kept in words that mean the same in either system of units: a bare "5000" would turn from
 * feet into metres when the crew changes its units.
 */
function usual(question: AnyQuestion): CrewSetting {
  const read = (text: string, units: UnitSystem, language?: Language) =>
    worded(question, language).read(howKnown(text).text, units);
  const same = (text: string) => JSON.stringify(read(text, 'inch-pound')) === JSON.stringify(read(text, 'metric'));
  return {
    id: question.id,
    brief: question.brief,
    key: `usual:${question.id}`,
    unset: (language) => worded(question, language).whenUnknown.because,
    read(text, units, language = 'english') {
      if (meansNotKnown(text)) return { rejected: crewChangeWords[language].leaveOut };
      const reading = read(text, units, language);
      if ('rejected' in reading) return reading;
      return { value: same(text) ? text.trim() : question.show(reading.value, leading(units)) };
    },
    show(kept, units, language = 'english') {
      const reading = read(kept, units);
      if ('rejected' in reading) return crewWords[language].notUnderstood(kept);
      return worded(question, language).show(reading.value, units);
    },
    suggest: (typed) => fitting(choicesOf(question), typed),
  };
}

const unsetSays =
  (id: string) =>
  (language: Language = 'english'): string =>
    crewWords[language].unset[id] ?? '';

const unitSystem = oneOf({
  id: 'units',
  prompt: 'Which units does the crew write in?',
  why: 'A number without a unit is read in these, and they come first in every answer. With both it is read as inch-pound, and the metric stands beside every number.',
  brief: 'Units: inch-pound, metric, or both beside each other',
  choices: [
    { id: 'inch-pound', label: 'inch-pound', also: ['imperial', 'us', 'inches', 'inch', 'feet', 'cfm', 'ip'] },
    { id: 'metric', label: 'metric', also: ['si', 'mm', 'metres', 'meters', 'l/s'] },
    { id: 'both', label: 'both, inch-pound first', also: ['two', 'both units', 'dual'] },
  ],
  whenUnknown: { value: 'inch-pound', because: 'Most crews here write inches and cfm.' },
});

const units: CrewSetting = {
  id: unitSystem.id,
  brief: unitSystem.brief,
  key: unitSystem.id,
  unset: unsetSays(unitSystem.id),
  read: (text, system) => unitSystem.read(text, system),
  show: (kept, _, language = 'english') => crewWords[language].unitNames[kept] ?? kept,
  suggest: (typed) => fitting(choicesOf(unitSystem), typed),
};

const zones = ['UTC', ...Intl.supportedValuesOf('timeZone')];
const zoneWords = (zone: string): string => zone.toLowerCase().replaceAll('_', ' ');

/** As people in North America call their time, by the town whose clock shows it. */
const calledZones: Readonly<Record<string, string>> = {
  eastern: 'America/New_York',
  central: 'America/Chicago',
  mountain: 'America/Denver',
  arizona: 'America/Phoenix',
  pacific: 'America/Los_Angeles',
  alaska: 'America/Anchorage',
  hawaii: 'Pacific/Honolulu',
  atlantic: 'America/Halifax',
  newfoundland: 'America/St_Johns',
};

/** By its whole name, by what people call it, or by its town where no other zone has one of that name: "Denver". */
function readZone(text: string, _: UnitSystem, language: Language = 'english'): Reading<string> {
  const said = zoneWords(plain(text.slice(0, 100)));
  const called = calledZones[said.replace(/^us\/|(?: standard| daylight)? time$/g, '')];
  if (called !== undefined) return { value: called };
  const exact = zones.find((zone) => zoneWords(zone) === said);
  const towns = zones.filter((zone) => zoneWords(zone).endsWith(`/${said}`));
  const zone = exact ?? (towns.length === 1 ? towns[0] : undefined);
  return zone === undefined ? { rejected: crewChangeWords[language].zone } : { value: zone };
}

const timeZone: CrewSetting = {
  id: 'time-zone',
  brief: 'Time zone, such as America/Denver',
  key: 'time-zone',
  unset: unsetSays('time-zone'),
  read: readZone,
  show: (kept) => kept,
  suggest: (typed) =>
    zones
      .filter((zone) => zoneWords(zone).includes(zoneWords(plain(typed))))
      .slice(0, 25)
      .map((zone) => ({ id: zone, label: zone })),
};

const languageNames: Readonly<Record<Language, string>> = { english: 'English', spanish: 'Español' };

const language: CrewSetting = {
  id: 'language',
  brief: 'Language where a person’s own is not known: English or Español',
  key: 'language',
  unset: unsetSays('language'),
  read(text, _, own = 'english') {
    const meant = languageMeant(text);
    return meant === undefined ? { rejected: crewChangeWords[own].language } : { value: meant };
  },
  show: (kept) => languageNames[languageMeant(kept) ?? 'english'],
  suggest: (typed) =>
    fitting(
      Object.values(languageNames).map((name) => ({ id: name, label: name })),
      typed,
    ),
};

/** Everything a crew settles for all its jobs, in the order it is shown. */
export const crewSettings: readonly CrewSetting[] = [
  units,
  usual(buildingCodeEdition as AnyQuestion),
  usual(electricalCodeEdition as AnyQuestion),
  usual(altitude as AnyQuestion),
  usual(atticTemperature as AnyQuestion),
  timeZone,
  language,
  ...crewContact,
];

/** What to say to have a setting taken away again. */
export const cleared = 'clear';

/** Settles what was given. Bad values are all told, each in the words of its own question; good ones are kept. */
export function settle(
  desk: Desk,
  given: Readonly<Record<string, string>>,
): { readonly set: readonly CrewSetting[]; readonly problems: readonly string[] } {
  const { store, speaker, telling } = desk;
  const wanted = crewSettings.flatMap((setting) => {
    const text = given[setting.id];
    return text === undefined ? [] : [{ setting, text: text.slice(0, 200) }];
  });
  // Units given in the same breath hold for the numbers beside them.
  const system = units.read(given[units.id] ?? '', telling.units);
  const now = 'value' in system ? (system.value === 'metric' ? 'metric' : 'inch-pound') : telling.units;
  const read = wanted.map(({ setting, text }) => ({
    setting,
    reading: plain(text) === cleared ? { value: null } : setting.read(text, now, languageAt(desk)),
  }));
  const good = read.flatMap(({ setting, reading }) => ('value' in reading ? [{ setting, value: reading.value }] : []));
  for (const { setting, value } of good) store.saveSetting(setting.key, { value, who: speaker.who });
  return {
    set: good.map(({ setting }) => setting),
    problems: read.flatMap(({ setting, reading }) =>
      'rejected' in reading ? [`${setting.id}: ${reading.rejected}`] : [],
    ),
  };
}

/** "time-zone America/Chicago", or that it was taken away. */
export function settledAs(desk: Desk, { id, key, show }: CrewSetting): string {
  const language = languageAt(desk);
  const kept = desk.store.setting(key);
  return kept === undefined
    ? crewChangeWords[language].takenAway(id)
    : `${id} ${show(kept, desk.telling.units, language)}`;
}

/** How long closed jobs are kept, in months; `null` for good. */
export function readRetention(text: string, language: Language = 'english'): Reading<number | null> {
  const said = plain(text.slice(0, 100));
  if (['forever', 'for good', 'always', 'everything', 'siempre', 'para siempre', cleared].includes(said))
    return { value: null };
  const [, number = '', unit = ''] = /^(\d{1,3})\s*(months?|mes(?:es)?|m|years?|yrs?|y|años?|anos?)$/.exec(said) ?? [];
  const months = Number(number) * (/^[ya]/.test(unit) ? 12 : 1);
  return number !== '' && months >= 1 && months <= 600
    ? { value: months }
    : { rejected: crewChangeWords[language].howLongKept };
}

export const retentionText = (months: number | null, language: Language = 'english'): string => {
  const { afterMonths, afterYears, forGood } = crewWords[language];
  if (months === null) return forGood;
  return months % 12 === 0 ? afterYears(months / 12) : afterMonths(months);
};
