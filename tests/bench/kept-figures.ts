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

/** The figures of a run as tables, one for each section. */
const asTables = (measured: readonly Measured[]): string =>
  measured
    .map(({ title, rows }) =>
      [
        `**${title}**`,
        '',
        '| | measured | aim |',
        '|---|---|---|',
        ...rows.map(
          ({ what, measured: figure, aim }) =>
            `| ${cell(what)} | ${cell(figure)} | ${aim ? `${cell(aim.says)}: ${aim.met ? 'met' : '**missed**'}` : ''} |`,
        ),
      ].join('\n'),
    )
    .join('\n\n');

/**
 * Writes the figures into the guide in place of those that stood there; what is outside the two marks stays.
 *
 * @throws Error where the guide has lost its marks.
 */
export function keepFigures(machine: string, measured: readonly Measured[]): void {
  const text = readFileSync(guide, 'utf8');
  const [start, end] = [text.indexOf(from), text.indexOf(to)];
  if (start < 0 || end < start)
    throw new Error(`DEVELOPERS.md has no place for figures: put back “${from}” and “${to}”`);
  const figures = `${from}\n${machine}\n\n${asTables(measured)}\n\n`;
  writeFileSync(guide, text.slice(0, start) + figures + text.slice(end));
}
