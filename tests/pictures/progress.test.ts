import { describe, expect, it } from 'vitest';
import type { Progress, StepMark } from '#findings/progress.ts';
import { chartPng } from '#pictures/chart-png.ts';
import { progressSvg } from '#pictures/progress-svg.ts';
import { progressText } from '#pictures/progress-text.ts';
import { fanAgainstDuct } from './invented-charts.ts';

/** Invented: three stages with every kind of step. */
const progress: Progress = {
  stages: [
    { label: 'Survey', marks: ['done', 'done', 'passed', 'done'] },
    { label: 'Lock and prove dead', marks: ['done', 'stopped', 'hold'] },
    { label: 'Close', marks: ['open', 'open', 'hold'] },
  ],
  remarks: ['Stopped: Tester. It shows nothing.', 'Hold: Sign dead (E06) waits for a lead'],
};
const svg = (more: Partial<Progress> = {}) =>
  progressSvg({ title: 'Fan swap, job 1: 5 of 10 steps', alt: 'in words', progress: { ...progress, ...more } });

const wordsIn = (picture: string): string[] =>
  [...picture.matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map(([, words = '']) => words);

describe('the picture of how far a list is', () => {
  it('has a cell for each step, a count for each stage, and says what each kind of cell means', () => {
    const picture = svg();
    const cells = (mark: StepMark) => picture.split(`class="${mark}"`).length - 1;
    // One of each stands in the key as well.
    expect([cells('done'), cells('passed'), cells('hold'), cells('open'), cells('stopped')]).toEqual([5, 2, 3, 3, 2]);
    expect(wordsIn(picture)).toEqual(
      expect.arrayContaining([
        '4 of 4',
        '1 of 3',
        '0 of 3',
        'done',
        'passed over',
        'hold, to be signed',
        'open',
        'stopped',
      ]),
    );
    expect(wordsIn(picture)).toContain('Hold: Sign dead (E06) waits for a lead');
  });

  it('tells the kinds apart by shape: without any colour no two look alike', () => {
    const marks: readonly StepMark[] = ['done', 'passed', 'hold', 'open', 'stopped'];
    const shapes = marks.map((mark) => {
      const [shape = ''] =
        svg({ stages: [{ label: 'x', marks: [mark] }], remarks: [] }).match(/<rect class=.*$/m) ?? [];
      // Filled, hatched and empty stay what they are on a grey printer; the hue does not.
      return shape
        .replace(/class="\w+"/, '')
        .replace(/#ffffff/gi, 'empty')
        .replace(/#[0-9a-f]{6}/gi, 'ink');
    });
    expect(new Set(shapes).size).toBe(marks.length);
  });

  it('stays within its frame however long the list, the names and the remarks are', () => {
    const picture = svg({
      stages: [{ label: 'x'.repeat(200), marks: Array.from({ length: 60 }, () => 'hold' as const) }],
      remarks: Array.from({ length: 30 }, (_, index) => `Hold ${index} ${'waits for somebody '.repeat(20)}`),
    });
    const ends = [...picture.matchAll(/<rect class="\w+" x="([\d.]+)" y="[\d.]+" width="([\d.]+)"/g)].map(
      ([, x, wide]) => Number(x) + Number(wide),
    );
    expect(Math.max(...ends)).toBeLessThan(1200);
    expect(Number(/height="(\d+)"/.exec(picture)?.[1])).toBeLessThan(900);
    expect(wordsIn(picture)).toContain('and 26 more');
  });

  it('takes names and remarks as words, whatever is in them', () => {
    const picture = svg({ stages: [{ label: '</svg><script>', marks: ['open'] }], remarks: ['"&<\u202e\u0000'] });
    expect(picture).not.toContain('<script>');
    expect(picture).toContain('&lt;/svg&gt;&lt;script&gt;');
  });

  it('is drawn to PNG in place of curves', async () => {
    const png = await chartPng({ ...fanAgainstDuct, progress }, { width: 400 });
    expect(Buffer.from(png).subarray(1, 4).toString()).toBe('PNG');
    expect(Buffer.from(png).readUInt32BE(16)).toBe(400);
  });
});

it('in a terminal it is a row of letters for each stage', () => {
  expect(`\n${progressText(progress)}\n`).toMatchInlineSnapshot(`
    "
    Survey               ##~#  4 of 4
    Lock and prove dead  #XH   1 of 3
    Close                ..H   0 of 3

      # done   ~ passed over   H hold, to be signed   . open   X stopped
    "
  `);
});
