import type { Reading } from '#interview/question.ts';

/** More than any list of fans; a file beyond it is refused before it is looked at. */
const limits = { characters: 200_000, records: 501, fields: 40, field: 1000 } as const;

/** What a spreadsheet would take for a formula, or would hide, at the start of a cell. */
const risky = /^['=+\-@\t\r\n\uff1d\uff0b\uff0d\uff20]/;

/** A cell that no spreadsheet runs: an apostrophe stands before what would begin a formula. */
const guarded = (text: string): string => (risky.test(text) ? `'${text}` : text);

/** Undoes `guarded`; an apostrophe somebody typed before anything else stays. */
const unguarded = (text: string): string => (text.startsWith("'") && risky.test(text.slice(1)) ? text.slice(1) : text);

const cell = (text: string): string => {
  const safe = guarded(text);
  return /[",;\t\r\n]|^\s|\s$/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
};

/** Rows as a file for a spreadsheet (RFC 4180), with the mark by which one knows the letters for UTF-8. */
export const csvText = (rows: readonly (readonly string[])[]): string =>
  `\ufeff${rows.map((row) => `${row.map(cell).join(',')}\r\n`).join('')}`;

/** The mark between cells: a comma, or what a spreadsheet of another country puts there. Marks inside quotes are text. */
function separatorOf(text: string): string {
  const [head = ''] = text.replace(/"[^"]*"/g, '').split(/[\r\n]/, 1);
  const count = (mark: string) => head.split(mark).length;
  return [',', ';', '\t'].reduce((most, mark) => (count(mark) > count(most) ? mark : most));
}

/** A text being taken apart: what has been read, and where the reading stands. */
interface Taking {
  readonly text: string;
  readonly separator: string;
  at: number;
}

/** The text of a cell in quotes, from after the opening one; `undefined` when no closing quote follows. */
function quoted(taking: Taking): string | undefined {
  let value = '';
  for (;;) {
    const end = taking.text.indexOf('"', taking.at);
    if (end < 0) return undefined;
    value += taking.text.slice(taking.at, end);
    taking.at = end + 1;
    if (taking.text[taking.at] !== '"') return value;
    value += '"';
    taking.at += 1;
  }
}

/** One cell, up to the separator or the end of the row. */
function field(taking: Taking): string | undefined {
  let value = '';
  if (taking.text[taking.at] === '"') {
    taking.at += 1;
    const inside = quoted(taking);
    if (inside === undefined) return undefined;
    value = inside;
  }
  const start = taking.at;
  while (taking.at < taking.text.length && !`${taking.separator}\r\n`.includes(taking.text[taking.at] as string)) {
    taking.at += 1;
  }
  return value + taking.text.slice(start, taking.at);
}

const pastLineEnd = (taking: Taking): void => {
  taking.at += taking.text.startsWith('\r\n', taking.at) ? 2 : 1;
};

/** The cells of a CSV text, row by row, as typed. A file that is too big or broken is refused in a sentence. */
export function csvRows(given: string): Reading<readonly (readonly string[])[]> {
  if (given.length > limits.characters) return { rejected: 'That file is too long. Give at most 500 fans.' };
  const text = given.replace(/^\ufeff/, '');
  const taking: Taking = { text, separator: separatorOf(text), at: 0 };
  const rows: string[][] = [];
  let row: string[] = [];
  while (taking.at < text.length) {
    const value = field(taking);
    const place = `row ${rows.length + 1}`;
    if (value === undefined) return { rejected: `In ${place} a quote is opened and never closed.` };
    if (value.length > limits.field) return { rejected: `In ${place} a cell is too long.` };
    row.push(unguarded(value.trim()));
    if (row.length > limits.fields) return { rejected: `In ${place} there are too many cells.` };
    const ended = taking.at >= text.length || text[taking.at] !== taking.separator;
    if (!ended) {
      taking.at += 1;
      if (taking.at >= text.length) row.push('');
      continue;
    }
    pastLineEnd(taking);
    rows.push(row);
    row = [];
    if (rows.length > limits.records) return { rejected: 'That file has too many rows. Give at most 500 fans.' };
  }
  if (row.length > 0) rows.push(row);
  return { value: rows };
}
