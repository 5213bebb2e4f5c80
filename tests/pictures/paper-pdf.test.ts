import { describe, expect, it } from 'vitest';
import type { Paper } from '#findings/paper.ts';
import { paperElsewhere } from '#pictures/drawn-elsewhere.ts';
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

describe('set in a thread of its own', () => {
  it('a paper is the same paper, and what happens meanwhile here does not wait for it', async () => {
    const here = await paperPdf(paper(400));
    const again = paperElsewhere(paper(400));
    let [longest, last] = [0, performance.now()];
    const beat = setInterval(() => {
      longest = Math.max(longest, performance.now() - last);
      last = performance.now();
    }, 5);
    const elsewhere = await again;
    clearInterval(beat);
    expect(Buffer.compare(Buffer.from(here), Buffer.from(elsewhere))).toBe(0);
    const start = performance.now();
    await paperPdf(paper(400));
    // Setting it here would hold everything up for all of that time.
    expect(longest).toBeLessThan(performance.now() - start);
  }, 30_000);

  it('one that cannot be set fails alone', async () => {
    const bad = {
      ...paper(1),
      blocks: [{ kind: 'picture', png: new Uint8Array([1, 2]), alt: 'x', height: 20 }],
    } as const;
    const [failed, set] = await Promise.allSettled([paperElsewhere(bad), paperElsewhere(paper(1))]);
    expect(failed.status).toBe('rejected');
    expect(set.status).toBe('fulfilled');
  }, 30_000);
});
