import { describe, expect, it } from 'vitest';
import { linesOf, paperOf, paragraph, safe } from '#chat/terminal/paper.ts';
import { replyText } from '#chat/terminal/render.ts';
import { tableText } from '#chat/terminal/table-text.ts';
import { workingText } from '#chat/terminal/working-text.ts';
import type { Reply } from '#findings/reply.ts';

const wide = { width: 80, colour: false };
const narrow = { width: 39, colour: false };

describe('a paragraph', () => {
  it('is lined up under its beginning', () => {
    expect(paragraph('one two three four five six seven eight', narrow, 'Fine:    ')).toBe(
      'Fine:    one two three four five six\n         seven eight',
    );
  });

  it('keeps a number with its unit', () => {
    expect(linesOf('it moves 54 cfm', 12)).toEqual(['it moves', '54 cfm']);
    expect(linesOf('a gap of 1 1/4 in', 14)).toEqual(['a gap of', '1 1/4 in']);
    expect(linesOf('about 0.25 in. w.g. there', 18)).toEqual(['about', '0.25 in. w.g.', 'there']);
  });

  it('cuts a word that is longer than the line', () => {
    for (const line of linesOf('x'.repeat(1000), 20)) expect(line.length).toBeLessThanOrEqual(20);
  });
});

describe('text from elsewhere', () => {
  it('prints without escapes, controls or marks that turn the line', () => {
    expect(safe('\x1b[31mred\x1b[0m\x07\u009b\u202e\u061c\u2028\ufeff\0 ok\r\nnext\tline')).toBe('red ok\nnext line');
  });
});

describe('the paper', () => {
  it('is as wide as the window up to a readable line, and coloured only where that is wanted', () => {
    expect(paperOf({ columns: 40, isTTY: true }, {})).toEqual({ width: 39, colour: true });
    expect(paperOf({ columns: 300, isTTY: true }, {})).toEqual({ width: 99, colour: true });
    expect(paperOf({ columns: 5 }, {}).width).toBe(29);
    expect(paperOf({}, {})).toEqual({ width: 87, colour: false });
    expect(paperOf({ isTTY: true }, { NO_COLOR: '1' }).colour).toBe(false);
    expect(paperOf({ isTTY: true }, { NO_COLOR: '' }).colour).toBe(true);
    expect(paperOf({ isTTY: true }, { TERM: 'dumb' }).colour).toBe(false);
  });
});

const table = {
  title: 'What would help',
  columns: ['change', 'would deliver', 'gain'],
  rows: [
    ['Replace the flex with smooth pipe of the same size', '78 cfm', '+8 cfm'],
    ['Reroute to save one elbow', '71 cfm', '+1 cfm'],
  ],
};

describe('a table', () => {
  it('stands in columns where they fit', () => {
    expect(tableText(table, wide)).toBe(
      [
        'What would help',
        '  change                                              would deliver  gain',
        '  Replace the flex with smooth pipe of the same size  78 cfm         +8 cfm',
        '  Reroute to save one elbow                           71 cfm         +1 cfm',
      ].join('\n'),
    );
  });

  it('lets its widest column give way, down to its longest word', () => {
    const text = tableText(table, { ...wide, width: 50 });
    for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(50);
    expect(text).toContain('78 cfm');
  });

  it('becomes a list where it does not fit', () => {
    const long = {
      ...table,
      columns: [...table.columns, 'responsibility'],
      rows: [[...(table.rows[0] ?? []), 'electrician']],
    };
    expect(tableText(long, narrow)).toBe(
      [
        'What would help',
        '  Replace the flex with smooth pipe of',
        '  the same size',
        '    would deliver: 78 cfm',
        '    gain: +8 cfm',
        '    responsibility: electrician',
      ].join('\n'),
    );
  });

  it('bears rows that are short, empty or full of escapes', () => {
    const odd = { title: 'Odd', columns: ['a', 'b'], rows: [[], ['x'], ['\x1b[31mred', 'two\nlines']] };
    expect(tableText(odd, wide)).not.toMatch(/[^\P{Cc}\n]/u);
    expect(tableText({ ...odd, rows: [] }, wide)).toContain('a  b');
  });
});

const citation = { source: 'common-practice', where: 'a page', verified: false } as const;
const reply: Reply = {
  headline: 'About 54 cfm.',
  findings: [
    { id: 'fine-one', weight: 'good', says: 'All is well.', working: [], sources: [] },
    {
      id: 'stop-one',
      weight: 'stop',
      says: 'Do not go on.',
      working: [
        { what: 'Area', how: '2 × 3', value: '6 sq ft', source: citation },
        { what: 'Given', value: '4 ft' },
      ],
      sources: [citation],
    },
  ],
  assumed: ['Ceiling height: 8 ft'],
  assumedBecause: ['Ceiling height: Most are.'],
};

describe('an answer', () => {
  it('says what stops first, in words as well as in colour', () => {
    const plain = replyText(reply, wide);
    expect(plain.split('\n').slice(0, 4)).toEqual([
      'About 54 cfm.',
      '',
      'STOP:    Do not go on.',
      'Fine:    All is well.',
    ]);
    const coloured = replyText(reply, { ...wide, colour: true });
    expect(coloured).toContain('\x1b[1;31mSTOP:    \x1b[0mDo not go on.');
    expect(safe(coloured)).toBe(plain);
  });

  it('never runs over the paper', () => {
    for (const width of [29, 39, 60, 99]) {
      const text = replyText({ ...reply, tables: [table] }, { width, colour: false });
      for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(width);
    }
  });
});

describe('the working', () => {
  it('names each source once, at the end, and points to it by number', () => {
    expect(workingText(reply, { ...wide, width: 99 })).toBe(
      [
        'Stop one [1]',
        '  Area: 2 × 3 = 6 sq ft [1]',
        '  Given: 4 ft',
        '',
        'Taken for granted',
        '  Ceiling height: Most are.',
        '',
        'Sources',
        '   [1] Common practice in the trade; no published source; a page (common practice)',
      ].join('\n'),
    );
  });

  it('says so where there is none', () => {
    expect(workingText({ headline: 'Done.', findings: [] }, wide)).toBe('There is no working behind this answer.');
  });
});
