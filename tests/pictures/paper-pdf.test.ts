import { expect, it } from 'vitest';
import type { Paper } from '#findings/paper.ts';
import { paperPdf } from '#pictures/paper-pdf.ts';

/** Invented, as are the house and its people. */
const paper = (rows: number): Paper => ({
  title: 'Your new bathroom fan',
  under: '14 Maple St, an invented house',
  made: new Date('2026-11-25T12:00:00Z'),
  foot: 'Made from the job sheet.',
  blocks: [
    { kind: 'figures', figures: [{ number: '70 cfm', says: 'air it really moves' }] },
    { kind: 'warning', title: 'Call at once', lines: ['If an alarm sounds, go outside first.'] },
    {
      kind: 'table',
      columns: ['what', 'answer'],
      widths: [0.5, 0.5],
      rows: Array.from({ length: rows }, (_, index) => [
        `row ${index}`,
        'an answer\u0000 with a hidden character \u001b[31m',
      ]),
    },
  ],
});

const text = (bytes: Uint8Array): string => Buffer.from(bytes).toString('latin1');
const pages = (bytes: Uint8Array): number => [...text(bytes).matchAll(/\/Type \/Page\b/g)].length;

it('the same facts make the same page, byte for byte', async () => {
  const [one, other] = await Promise.all([paperPdf(paper(3)), paperPdf(paper(3))]);
  expect(text(one).startsWith('%PDF-')).toBe(true);
  expect(Buffer.compare(Buffer.from(one), Buffer.from(other))).toBe(0);
});

it('a long table goes on over as many pages as it needs, and a short one stays on one', async () => {
  expect(pages(await paperPdf(paper(3)))).toBe(1);
  expect(pages(await paperPdf(paper(120)))).toBeGreaterThan(2);
});

it('control characters somebody pasted do not reach the page', async () => {
  await expect(paperPdf(paper(1))).resolves.toBeInstanceOf(Uint8Array);
});
