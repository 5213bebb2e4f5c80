import type { Desk } from '#chat/command.ts';
import type { Finding, Table } from '#findings/finding.ts';
import type { Language } from '#words/language.ts';
import { crewWords } from '../words/crew.ts';
import { kindsText, qualificationText } from './crew-people.ts';
import { crewSettings, retentionText } from './crew-settings.ts';
import { remark } from './plain-replies.ts';

/** The whole of the crew in one table: what is settled for every job, then who is who. */
export function crewTable({ store, telling }: Desk, language: Language = 'english'): Table {
  const words = crewWords[language];
  const by = (key: string) => store.settingHistory(key).at(-1)?.who ?? '';
  return {
    title: words.title,
    columns: words.columns,
    rows: [
      ...crewSettings.map(({ id, key, unset, show }) => {
        const kept = store.setting(key);
        return kept === undefined
          ? [id, words.notSet(unset(language)), '']
          : [id, show(kept, telling.units, language), by(key)];
      }),
      [words.kept, retentionText(store.retention(), language), ''],
      ...store
        .members()
        .map((member) => [
          member.name,
          [kindsText(member, language), ...member.qualifications.map((each) => qualificationText(each, language))].join(
            '; ',
          ),
          member.enteredBy,
        ]),
    ],
  };
}

export const lapsedFindings = ({ store }: Desk, language: Language = 'english'): readonly Finding[] =>
  store
    .members()
    .flatMap(({ name, qualifications }) =>
      qualifications
        .filter(({ lapsed }) => lapsed)
        .map((each) =>
          remark('lapsed', 'caution', crewWords[language].mayNotSign(name, qualificationText(each, language))),
        ),
    );
