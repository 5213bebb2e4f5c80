import type { Action, Desk } from '#chat/command.ts';
import type { Reply } from '#findings/reply.ts';
import { plain } from '#interview/words.ts';
import { demoFans } from '#knowledge/demo-fans.ts';
import { shelfWords } from '../words/shelf.ts';
import { languageAt } from '../words/swap.ts';
import { counted, saying } from './plain-replies.ts';
import { mostFans, type NewShelfFan } from './shelf.ts';
import { csvOfFans, fansFromCsv, type RowTrouble } from './shelf-list.ts';

/** Puts fans on the shelf, or says in a sentence why there is no room. */
export function shelved(desk: Desk, fans: readonly NewShelfFan[]): string | undefined {
  const { store, speaker } = desk;
  const texts = shelfWords[languageAt(desk)];
  const fresh = fans.filter(({ name }) => store.shelfFan(name) === undefined).length;
  if (store.shelfFans({ limit: mostFans + 1 }).length + fresh > mostFans) {
    return texts.full(mostFans);
  }
  return store.saveShelfFans(fans, speaker) ? undefined : texts.tooOften;
}

const mostTroubles = 20;

function troubleTable(troubles: readonly RowTrouble[]): Partial<Reply> {
  if (troubles.length === 0) return {};
  const more = troubles.length - mostTroubles;
  return {
    tables: [
      {
        title: 'Not understood',
        columns: ['row', 'what is wrong'],
        rows: [
          ...troubles.slice(0, mostTroubles).map(({ row, says }) => [String(row), says]),
          ...(more > 0 ? [['…', `${more} more. Mend these first.`]] : []),
        ],
      },
    ],
  };
}

export const importFans: Action = {
  name: 'import',
  summary: 'Put a list of fans on the shelf: CSV with the columns /fan export writes.',
  options: [
    { id: 'file', brief: 'the path of a CSV file', file: true },
    { id: 'csv', brief: 'the list itself as CSV text, when it is short', longest: 6000 },
  ],
  act(desk, { file, csv }) {
    const text = file ?? csv;
    if (text === undefined || text.trim() === '') {
      return saying(
        'Give the list as CSV. Its first row names the columns: name and fan-curve, and what else is known.',
      );
    }
    // A line of chat has no line ends, so they may be written as \n.
    const list = fansFromCsv(file === undefined ? text.replaceAll('\\n', '\n') : text, desk.telling.units);
    if ('rejected' in list) return saying(list.rejected);
    const { fans, troubles } = list.value;
    const known = fans.filter(({ name }) => desk.store.shelfFan(name) !== undefined).length;
    const refused = fans.length === 0 ? undefined : shelved(desk, fans);
    if (refused !== undefined) return saying(refused);
    const bad = new Set(troubles.filter(({ row }) => row > 1).map(({ row }) => row)).size;
    const parts = [
      counted(fans.length - known, 'fan is new on the shelf', 'fans are new on the shelf'),
      ...(known > 0 ? [`${counted(known, 'was', 'were')} replaced`] : []),
      ...(bad > 0 ? [`${counted(bad, 'row was', 'rows were')} left out`] : []),
    ];
    return saying(`${parts.join(', ')}.`, troubleTable(troubles));
  },
};

export const exportFans: Action = {
  name: 'export',
  summary: 'Take the whole shelf away as a CSV list for a spreadsheet.',
  options: [],
  act(desk) {
    const language = languageAt(desk);
    const texts = shelfWords[language];
    const fans = desk.store.shelfFans();
    if (fans.length === 0) return saying(texts.emptyShelf, { language });
    return saying(texts.exported(fans.length), {
      language,
      files: [{ name: 'fans.csv', type: 'text/csv', text: csvOfFans(fans) }],
    });
  },
};

export const demo: Action = {
  name: 'demo',
  summary: 'Put a few invented fans on the shelf to try things with, or take them off again.',
  options: [
    {
      id: 'what',
      brief: 'put them on (the usual), or take them off',
      choices: [
        { id: 'put', label: 'put them on' },
        { id: 'take', label: 'take them off' },
      ],
    },
  ],
  act(desk, { what = 'put' }) {
    const { store, speaker } = desk;
    if (plain(what) === 'take') {
      const gone = store.shelfFans().filter((fan) => fan.demo && store.removeShelfFan(fan.name, speaker)).length;
      return saying(
        gone === 0
          ? 'No invented fan is on the shelf. /fan demo puts some there.'
          : `${counted(gone, 'invented fan', 'invented fans')} taken off the shelf.`,
      );
    }
    const wanted = demoFans.filter(({ name }) => store.shelfFan(name) === undefined);
    const refused = shelved(
      desk,
      wanted.map(({ name, label }) => ({ name, label, units: 'inch-pound', demo: true })),
    );
    if (refused !== undefined) return saying(refused);
    return saying(
      `${counted(wanted.length, 'invented fan is', 'invented fans are')} new on the shelf. Compare them in a duct with /fan compare.`,
      {
        findings: [
          {
            id: 'invented',
            weight: 'caution',
            says: 'Buy nothing by these: they are made up to try things with, and no such fans exist.',
            working: [],
            sources: [{ source: 'own-working', verified: false }],
          },
        ],
        tables: [
          {
            title: 'Invented fans',
            columns: ['name', 'what it stands for'],
            rows: demoFans.map(({ name, note }) => [name, note]),
          },
        ],
      },
    );
  },
};
