import type { Desk } from '#chat/command.ts';
import type { Finding, Table } from '#findings/finding.ts';
import { kindsText, qualificationText } from './crew-people.ts';
import { crewSettings, retentionText } from './crew-settings.ts';
import { remark } from './plain-replies.ts';

/** The whole of the crew in one table: what is settled for every job, then who is who. */
export function crewTable({ store, telling }: Desk): Table {
  const by = (key: string) => store.settingHistory(key).at(-1)?.who ?? '';
  return {
    title: 'The crew',
    columns: ['what', 'is', 'by'],
    rows: [
      ...crewSettings.map(({ id, key, unset, show }) => {
        const kept = store.setting(key);
        return kept === undefined ? [id, `not set. ${unset}`, ''] : [id, show(kept, telling.units), by(key)];
      }),
      ['closed jobs are kept', retentionText(store.retention()), ''],
      ...store
        .members()
        .map((member) => [
          member.name,
          [kindsText(member), ...member.qualifications.map(qualificationText)].join('; '),
          member.enteredBy,
        ]),
    ],
  };
}

export const lapsedFindings = ({ store }: Desk): readonly Finding[] =>
  store
    .members()
    .flatMap(({ name, qualifications }) =>
      qualifications
        .filter(({ lapsed }) => lapsed)
        .map((each) =>
          remark('lapsed', 'caution', `${name} may not sign on this any more: ${qualificationText(each)}.`),
        ),
    );
