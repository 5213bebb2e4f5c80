import Table from 'cli-table3';
import type { Table as TableOf } from '#findings/finding.ts';
import { linesOf, type Paper, paragraph, safe } from './paper.ts';

const gap = 2;

/** No frame: columns stand apart by spaces alone. */
const unframed = {
  top: '',
  'top-mid': '',
  'top-left': '',
  'top-right': '',
  bottom: '',
  'bottom-mid': '',
  'bottom-left': '',
  'bottom-right': '',
  left: '',
  'left-mid': '',
  mid: '',
  'mid-mid': '',
  right: '',
  'right-mid': '',
  middle: ' '.repeat(gap),
} as const;

const longest = (texts: readonly string[]): number => Math.max(1, ...texts.map((text) => [...text].length));

/** A column narrower than this is read word by word, and a list does better. */
const readable = 16;

/**
 * Column widths that fit: the widest gives way first, but none below its longest word or what can be read. Nothing where
 * that is not enough.
 */
function fitted(columns: readonly (readonly string[])[], room: number): readonly number[] | undefined {
  const widths = columns.map(longest);
  const least = columns.map((cells, index) =>
    Math.max(longest(cells.flatMap((cell) => cell.split(/\s+/))), Math.min(readable, widths[index] as number)),
  );
  const used = () => widths.reduce((sum, width) => sum + width, 0) + gap * (widths.length - 1);
  for (let excess = used() - room; excess > 0; excess -= 1) {
    const yielding = widths.map((width, index) => (width > (least[index] as number) ? width : 0));
    const widest = Math.max(...yielding);
    if (widest === 0) return undefined;
    widths[yielding.indexOf(widest)] = widest - 1;
  }
  return widths;
}

/** A table in columns where they fit the paper; on narrow paper each row as a short list. */
export function tableText({ title, columns, rows }: TableOf, paper: Paper): string {
  const all = [columns, ...rows].map((row) => columns.map((_, index) => safe(row[index] ?? '')));
  const widths = fitted(
    columns.map((_, index) => all.map((row) => row[index] as string)),
    paper.width - gap,
  );
  const body = widths ? inColumns(all, widths) : rows.map((row) => asList(columns, row, paper));
  return [paragraph(title, paper), ...body].join('\n');
}

function inColumns(all: readonly (readonly string[])[], widths: readonly number[]): readonly string[] {
  const table = new Table({
    chars: unframed,
    style: { head: [], border: [], compact: true, 'padding-left': 0, 'padding-right': 0 },
    colWidths: [...widths],
  });
  for (const row of all) table.push(row.map((cell, index) => linesOf(cell, widths[index] as number).join('\n')));
  return table
    .toString()
    .split('\n')
    .map((line) => `  ${line}`.trimEnd());
}

function asList(columns: readonly string[], [first = '', ...rest]: readonly string[], paper: Paper): string {
  const others = rest.map((cell, index) => paragraph(`${columns[index + 1] ?? ''}: ${cell}`, paper, '    '));
  return [paragraph(first, paper, '  '), ...others].join('\n');
}
