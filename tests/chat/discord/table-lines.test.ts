import { expect, it } from 'vitest';
import { replyText } from '#chat/discord/text.ts';

const lines = (columns: readonly string[], rows: readonly (readonly string[])[]) =>
  replyText({ headline: 'A table.', findings: [], tables: [{ title: 'Found', columns, rows }] }).blocks.join('\n');

it('an empty cell keeps its place under the names of the columns, and leaves no empty stars', () => {
  const text = lines(
    ['name', 'needs', 'by'],
    [
      ['one', '', 'Ann'],
      ['', '2', ''],
    ],
  );
  expect(text).toContain('**one** · – · ');
  expect(text.split('\n').at(-1)).toBe('2');
  expect(text).not.toContain('****');
});

it('with two columns an empty cell is left out', () => {
  expect(lines(['', 'signs'], [['there', '']])).toMatch(/\*\*there\*\*$/);
});
