import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Row } from './rows.ts';

const guide = fileURLToPath(new URL('../../DEVELOPERS.md', import.meta.url));
const [from, to] = ['<!-- figures: written by npm run bench -- --keep -->', '<!-- end of figures -->'];

/** What one run of the bench has measured. */
export interface Measured {
  readonly title: string;
  readonly rows: readonly Row[];
}

const cell = (text: string): string => text.replaceAll('|', '\\|');

/** The figures of one section as a table under its title. */
const asTable = ({ title, rows }: Measured): string =>
  [
    `**${cell(title)}**`,
    '',
    '| | measured | aim |',
    '|---|---|---|',
    ...rows.map(
      ({ what, measured: figure, aim }) =>
        `| ${cell(what)} | ${cell(figure)} | ${aim ? `${cell(aim.says)}: ${aim.met ? 'met' : '**missed**'}` : ''} |`,
    ),
  ].join('\n');

/** The tables that stand in the guide, each by its title. */
const standing = (text: string): readonly (readonly [title: string, table: string])[] =>
  text.split(/\n\n(?=\*\*)/).flatMap((table) => {
    const title = /^\*\*(.+)\*\*/.exec(table.trim())?.[1];
    return title === undefined ? [] : [[title, table.trim()] as const];
  });

/**
 * Writes the figures into the guide: a section measured again in place of what stood there, the others as they are, a new one
 * at the end. What is outside the two marks stays.
 *
 * @throws Error where the guide has lost its marks.
 */
export function keepFigures(machine: string, measured: readonly Measured[]): void {
  const text = readFileSync(guide, 'utf8');
  const [start, end] = [text.indexOf(from), text.indexOf(to)];
  if (start < 0 || end < start)
    throw new Error(`DEVELOPERS.md has no place for figures: put back “${from}” and “${to}”`);
  const tables = new Map(standing(text.slice(start + from.length, end)));
  for (const section of measured) tables.set(cell(section.title), asTable(section));
  const figures = [from, machine, '', [...tables.values()].join('\n\n'), '', ''].join('\n');
  writeFileSync(guide, text.slice(0, start) + figures + text.slice(end));
}
