import { stripVTControlCharacters } from 'node:util';
import Table from 'cli-table3';
import wrapAnsi from 'wrap-ansi';
import type { Finding, Table as TableOf, Weight } from '#findings/finding.ts';
import { type Reply, stopsFirst } from '#findings/reply.ts';
import { chartText } from '#pictures/chart-text.ts';
import { citationText, stepText, weightWords } from '../saying.ts';
import type { Asking, Screen } from '../screen.ts';

/** How wide the terminal is and whether it may be coloured. Colour is decoration: every word stands without it. */
export interface Paper {
  readonly width: number;
  readonly colour: boolean;
}

const colours: Readonly<Record<Weight, string>> = {
  stop: '\x1b[1;31m',
  caution: '\x1b[1m',
  advice: '\x1b[36m',
  good: '',
};

/** Text that came from a person or a file, made safe to print: no control characters, no escapes. */
const safe = (text: string): string =>
  [...stripVTControlCharacters(text)].filter((character) => character >= ' ' || character === '\n').join('');

const wrapped = (text: string, { width }: Paper, indent = ''): string =>
  wrapAnsi(safe(text), Math.max(20, width - indent.length), { hard: true, trim: false })
    .split('\n')
    .map((line, index) => (index === 0 ? line : indent + line))
    .join('\n');

const painted = (text: string, colour: string, paper: Paper): string =>
  paper.colour && colour !== '' ? `${colour}${text}\x1b[0m` : text;

/** A whole screen as text: notes, then the answer or the question. */
export function screenText(screen: Screen, paper: Paper): string {
  const parts = [
    ...screen.notes.map((note) => wrapped(note, paper)),
    ...(screen.reply ? [replyText(screen.reply, paper)] : []),
    ...(screen.asking ? [askingText(screen.asking, paper)] : []),
  ];
  return parts.join('\n');
}

function askingText(asking: Asking, paper: Paper): string {
  const choices = asking.choices.map(({ label, hint }, index) =>
    wrapped(`  ${index + 1}  ${label}${hint ? ` (${hint})` : ''}`, paper, '     '),
  );
  return [wrapped(asking.prompt, paper), ...choices].join('\n');
}

export function replyText(reply: Reply, paper: Paper): string {
  const findings = stopsFirst(reply.findings);
  const tables = [...findings.flatMap(({ table }) => (table ? [table] : [])), ...(reply.tables ?? [])];
  return [
    painted(wrapped(reply.headline, paper), '\x1b[1m', paper),
    '',
    ...findings.map((finding) => findingText(finding, paper)),
    ...tables.map((table) => `\n${tableText(table, paper)}`),
    ...(reply.chart ? ['', chartText(reply.chart, { width: Math.min(72, paper.width), height: 16 })] : []),
    ...(reply.assumed && reply.assumed.length > 0
      ? ['', 'Taken for granted:', ...reply.assumed.map((line) => wrapped(`  - ${line}`, paper, '    '))]
      : []),
  ].join('\n');
}

function findingText({ weight, says }: Finding, paper: Paper): string {
  const word = `${weightWords[weight]}:`.padEnd(9);
  return painted(word, colours[weight], paper) + wrapped(says, { ...paper, width: paper.width - 9 }, ' '.repeat(9));
}

export function tableText({ title, columns, rows }: TableOf, paper: Paper): string {
  const widest = Math.max(12, Math.floor((paper.width - 4) / Math.max(1, columns.length)) + 12);
  const table = new Table({
    head: columns.map(safe),
    style: { head: [], border: [], compact: true },
    chars: {
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
      middle: '  ',
    },
    wordWrap: true,
  });
  for (const row of rows) table.push(row.map((cell) => wrapAnsi(safe(cell), widest, { hard: true })));
  return `${safe(title)}\n${table.toString()}`;
}

/** The working of a reply, line by line, so that a person with a calculator can follow it. */
export function workingText(reply: Reply, paper: Paper): string {
  return stopsFirst(reply.findings)
    .map(({ id, working, sources: cited }) => {
      const lines = working.map((step) => wrapped(`  ${stepText(step)}`, paper, '    '));
      const places = cited.map((citation) => wrapped(`  from: ${citationText(citation)}`, paper, '    '));
      return [`${id}`, ...lines, ...places].join('\n');
    })
    .join('\n\n');
}
