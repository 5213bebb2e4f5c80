import { describe, expect, it, test } from 'vitest';
import type { Chart } from '#findings/reply.ts';
import { chartSvg } from '#pictures/chart-svg.ts';
import { ductInColdAttic, fanAgainstDuct, fourSettings, humidityAfterShower } from './invented-charts.ts';

const tags = (svg: string, name: string) => svg.match(new RegExp(`<${name}\\b[^>]*>`, 'g')) ?? [];

/** Every word that a reader sees. */
const seen = (svg: string) => [...svg.matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map(([, words]) => words).join(' ');

describe.each(Object.entries({ fanAgainstDuct, humidityAfterShower, ductInColdAttic, fourSettings }))(
  'the picture of %s',
  (_, chart) => {
    const svg = chartSvg(chart);

    it('says its title, both axes with units, and every name', () => {
      const words = seen(svg);
      for (const { label } of [chart.x, chart.y, ...chart.levels]) expect(words).toContain(label);
      for (const word of [chart.title, ...chart.lines.map(({ label }) => label)].flatMap((text) => text.split(' '))) {
        expect(words).toContain(word);
      }
    });

    it('clips what it draws to the plot area', () => {
      expect(svg).toContain('<clipPath id="plot"><rect ');
      const clipped = svg.slice(svg.indexOf('<g clip-path="url(#plot)">'), svg.indexOf('</g>'));
      expect(tags(clipped, 'path')).toHaveLength(chart.lines.length + chart.bands.length + chart.levels.length);
      expect(tags(clipped, 'text')).toEqual([]);
    });

    it('holds no number that is not one, and stands on white', () => {
      expect(svg).not.toMatch(/NaN|Infinity|undefined/);
      expect(svg).toContain('<rect width="1200" height="800" fill="#ffffff"/>');
    });

    it('tells a reader who cannot see it what it shows', () => {
      expect(svg).toContain('role="img"');
      expect(svg).toContain(`<desc>${chart.alt}</desc>`);
    });
  },
);

it('tells the roles apart without colour', () => {
  const pens = (['main', 'other', 'system', 'limit'] as const).map((role) => {
    const svg = chartSvg({
      ...fanAgainstDuct,
      lines: [
        {
          label: role,
          role,
          points: [
            [0, 0],
            [100, 0.5],
          ],
        },
      ],
    });
    const [path] = svg.match(new RegExp(`<path class="${role}"[^>]*>`)) ?? [];
    return [
      path?.match(/stroke-width="([\d.]+)"/)?.[1],
      path?.match(/stroke-dasharray="([^"]+)"/)?.[1] ?? 'solid',
    ].join(' ');
  });
  expect(new Set(pens).size).toBe(4);
  expect(pens.filter((pen) => pen.endsWith('solid'))).toHaveLength(2);
});

describe('text from outside', () => {
  const hostile = `<script>"x" & 'y'</script>`;
  const svg = chartSvg({
    ...fanAgainstDuct,
    title: hostile,
    alt: hostile,
    x: { ...fanAgainstDuct.x, label: hostile },
    y: { ...fanAgainstDuct.y, label: hostile },
    lines: fanAgainstDuct.lines.map((line) => ({ ...line, label: hostile })),
    bands: fanAgainstDuct.bands.map((band) => ({ ...band, label: hostile })),
    marks: fanAgainstDuct.marks.map((mark) => ({ ...mark, label: hostile })),
    levels: fanAgainstDuct.levels.map((level) => ({ ...level, label: hostile })),
  });

  it('is shown and never obeyed', () => {
    expect(svg).not.toContain('<script');
    expect(seen(svg)).toContain('&lt;script&gt;&quot;x&quot; &amp;');
  });

  it('loses control characters, half characters and direction overrides', () => {
    const odd = chartSvg({ ...fanAgainstDuct, title: 'a\u0000b\u001bc\ud800d\u202ee\nf' });
    expect(seen(odd)).toContain('abcde f');
  });

  it('may be written from right to left or hold pictographs', () => {
    const title = 'מאוורר 80 مروحة 漢字 🔥 fan';
    expect(seen(chartSvg({ ...fanAgainstDuct, title }))).toContain('מאוורר 80 مروحة 漢字 fan');
  });
});

describe('degenerate charts', () => {
  const bare: Chart = { ...fanAgainstDuct, lines: [], bands: [], marks: [], levels: [] };
  const nothing = Number.NaN;
  test.each<[string, Chart]>([
    ['empty', bare],
    ['a line without points', { ...bare, lines: [{ label: 'a', role: 'main', points: [] }] }],
    ['a line of one point', { ...bare, lines: [{ label: 'a', role: 'limit', points: [[5, 0.3]] }] }],
    ['a band of one point', { ...bare, bands: [{ label: 'a', points: [[5, 0.1, 0.3]] }] }],
    ['axes without width', { ...fanAgainstDuct, x: { label: 'x', min: 5, max: 5 }, y: { label: 'y', min: 0, max: 0 } }],
    ['axes upside down', { ...fanAgainstDuct, y: { label: 'y', min: 0.6, max: 0 } }],
    [
      'axes without numbers',
      { ...fanAgainstDuct, x: { label: '', min: nothing, max: nothing }, y: { label: '', min: nothing, max: nothing } },
    ],
    [
      'not a number anywhere',
      {
        ...bare,
        lines: [
          {
            label: 'a',
            role: 'main',
            points: [
              [nothing, nothing],
              [1, Number.POSITIVE_INFINITY],
            ],
          },
        ],
        bands: [{ label: 'b', points: [[1, nothing, 2]] }],
        marks: [{ label: 'm', at: [nothing, 1] }],
        levels: [{ label: 'l', axis: 'x', at: nothing }],
      },
    ],
    [
      'huge numbers',
      {
        ...bare,
        x: { label: 'x', min: -1e300, max: 1e300 },
        y: { label: 'y', min: -1e15, max: 1e15 },
        lines: [
          {
            label: 'a',
            role: 'main',
            points: [
              [-1e300, -1e300],
              [0, 0],
              [1e300, 1e300],
              [1e15, 1e15],
            ],
          },
        ],
      },
    ],
    ['tiny numbers', { ...bare, x: { label: 'x', min: 0, max: 1e-12 }, marks: [{ label: 'm', at: [1e-13, 0.2] }] }],
    [
      'labels without words',
      { ...fanAgainstDuct, title: '', lines: fanAgainstDuct.lines.map((line) => ({ ...line, label: ' ' })) },
    ],
    ['a title of 400 characters', { ...fanAgainstDuct, title: 'long title '.repeat(37) }],
  ])('%s: drawn without a number that is not one', (_, chart) => {
    const svg = chartSvg(chart);
    expect(svg).not.toMatch(/NaN|Infinity|undefined/);
    expect(svg.startsWith('<svg ')).toBe(true);
    expect(svg.endsWith('</svg>')).toBe(true);
    expect(tags(svg, 'g')).toHaveLength(svg.match(/<\/g>/g)?.length ?? 0);
  });
});
