import { describe, expect, it } from 'vitest';
import type { Chart } from '#findings/reply.ts';
import { barsSvg } from '#pictures/bars-svg.ts';
import { barsText } from '#pictures/bars-text.ts';
import { chartPng } from '#pictures/chart-png.ts';

/** Invented counts. */
const chart = (...amounts: readonly number[]): Chart => ({
  title: 'Causes of the callbacks of 2026',
  x: { label: 'callbacks with this cause', min: 0, max: Math.max(...amounts) },
  y: { label: 'cause', min: 0, max: amounts.length },
  bars: amounts.map((amount, index) => ({ label: `cause <${index + 1}>`, amount, shown: `${amount} of 9` })),
  lines: [],
  bands: [],
  marks: [],
  levels: [],
  alt: 'Counts.',
});

const widths = (svg: string) =>
  [...svg.matchAll(/class="bar"[^>]* width="([\d.]+)"/g)].map(([, width]) => Number(width));

describe('bars', () => {
  it('are as long as their amounts, in the picture and in the sketch', () => {
    const [six = 0, three = 0, one = 0] = widths(barsSvg(chart(6, 3, 1)));
    expect(three / six).toBeCloseTo(1 / 2, 2);
    expect(one / six).toBeCloseTo(1 / 6, 2);
    const marks = barsText(chart(6, 3, 1), { width: 72 })
      .split('\n')
      .flatMap((row) => (row.includes('█') ? [row.split('█').length - 1] : []));
    expect((marks[1] ?? 0) / (marks[0] ?? 1)).toBeCloseTo(1 / 2, 1);
  });

  it('have a title, a named axis with whole numbers, and the amount at the end of each', () => {
    const svg = barsSvg(chart(4, 2));
    for (const words of ['Causes of the callbacks of 2026', 'callbacks with this cause', '4 of 9', '>3<']) {
      expect(svg).toContain(words);
    }
    expect(svg).not.toContain('>0.5<');
    expect(svg).toContain('cause &lt;1&gt;');
    const text = barsText(chart(4, 2), { width: 60 });
    expect(text).toMatch(/^Causes of the callbacks of 2026\ncause <1> │█+ 4 of 9\n/);
    for (const row of text.split('\n')) expect(row.length).toBeLessThanOrEqual(60);
  });

  it('stay on the paper, and make a picture', async () => {
    const svg = barsSvg(chart(20, 11, 8, 8, 3, 2, 1, 1));
    for (const width of widths(svg)) expect(width).toBeLessThan(1200 - 36);
    const png = await chartPng(chart(1), { width: 300 });
    expect([...png.subarray(1, 4)]).toEqual([...Buffer.from('PNG')]);
  });
});
