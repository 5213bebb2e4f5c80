import { describe, expect, it, test } from 'vitest';
import type { Chart } from '#findings/reply.ts';
import { type ChartLayout, chartLayout, ringRadius } from '#pictures/chart-layout.ts';
import { pictureSize, titleSetting } from '#pictures/frame.ts';
import { around, bottom, isWithin, right, segmentMeets, sharedArea } from '#pictures/geometry.ts';
import { textWidth } from '#pictures/lettering.ts';
import { ductInColdAttic, fanAgainstDuct, fourSettings, humidityAfterShower } from './invented-charts.ts';

const everyday = { fanAgainstDuct, humidityAfterShower, ductInColdAttic };
const crowded = chartLayout(fourSettings);
const fanLayout = chartLayout(fanAgainstDuct);

const said = ({ words }: ChartLayout['labels'][number]) => words.join(' ');

const overlaps = ({ labels }: ChartLayout) =>
  labels.flatMap((label, index) =>
    labels
      .slice(index + 1)
      .filter((other) => sharedArea(label.box, other.box) > 0)
      .map((other) => `${said(label)} / ${said(other)}`),
  );

const outside = ({ labels, frame }: ChartLayout) => labels.filter(({ box }) => !isWithin(box, frame.plot)).map(said);

describe.each(Object.entries(everyday))('the labels of %s', (_, chart) => {
  const layout = chartLayout(chart);

  it('name everything in the chart', () => {
    const named = [...chart.lines, ...chart.bands, ...chart.marks, ...chart.levels].map(({ label }) => label);
    expect(layout.labels.map(said).sort()).toEqual(named.sort());
  });

  it('stay inside the plot area', () => expect(outside(layout)).toEqual([]));

  it('keep off one another', () => expect(overlaps(layout)).toEqual([]));

  it('keep off marks and level lines', () => {
    const covering = layout.labels.filter(
      ({ box }) =>
        layout.marks.some((spot) => sharedArea(around(spot, ringRadius), box) > 0) ||
        layout.levels.some((ends) => segmentMeets(ends, box, 0)),
    );
    expect(covering.map(said)).toEqual([]);
  });

  it('hide no curve', () => {
    const segments = layout.lines.flatMap(({ pieces }) =>
      pieces.flatMap((piece) => piece.slice(1).map((to, index) => [piece[index] ?? to, to] as const)),
    );
    const hiding = layout.labels.filter(({ box }) => segments.some((segment) => segmentMeets(segment, box, 0)));
    expect(hiding.map(said)).toEqual([]);
  });

  it('are not run through by a leader of another', () => {
    const crossed = layout.labels.filter((label) =>
      layout.labels.some(
        (other) => other !== label && other.leader !== undefined && segmentMeets(other.leader, label.box, 0),
      ),
    );
    expect(crossed.map(said)).toEqual([]);
  });

  it('are large enough to read on a phone', () => {
    expect(layout.labels.map(({ setting }) => setting.size)).toEqual(layout.labels.map(() => 34));
  });

  it('have boxes their words fit in', () => {
    const tight = layout.labels.filter(
      ({ words, box, setting, padding }) =>
        words.some((line) => textWidth(line, setting) > box.width - 2 * padding + 0.01) ||
        words.length * setting.size > box.height - 2 * padding,
    );
    expect(tight.map(said)).toEqual([]);
  });
});

describe('the frame', () => {
  test.each(Object.entries({ fanLayout, crowded }))(
    'of %s keeps every number and title on the picture',
    (_, { frame }) => {
      for (const { words, at, anchor } of [...frame.numbers, ...frame.axisLabels]) {
        const width = textWidth(words, { face: 'regular', size: 34 });
        const start = at[0] - (anchor === 'start' ? 0 : anchor === 'end' ? width : width / 2);
        expect(start, words).toBeGreaterThanOrEqual(0);
        expect(start + width, words).toBeLessThanOrEqual(pictureSize.width);
        expect(at[1], words).toBeLessThan(pictureSize.height - 8);
      }
      for (const { words, at } of frame.title) {
        expect(at[0] + textWidth(words, titleSetting), words).toBeLessThanOrEqual(pictureSize.width);
      }
      expect(frame.title.length).toBeGreaterThan(0);
      expect(right(frame.plot)).toBeLessThan(pictureSize.width);
      expect(bottom(frame.plot)).toBeLessThan(pictureSize.height);
    },
  );

  it('has round numbers on both axes', () => {
    const { frame } = fanLayout;
    expect(frame.numbers.map(({ words }) => words)).toEqual([
      ...['0', '20', '40', '60', '80', '100', '120'],
      ...['0.0', '0.1', '0.2', '0.3', '0.4', '0.5', '0.6'],
    ]);
  });

  it('puts the least value at the lower left and the greatest at the upper right', () => {
    const { frame } = fanLayout;
    const { plot } = frame;
    expect(frame.place([0, 0])).toEqual([plot.left, bottom(plot)]);
    expect(frame.place([130, 0.6])).toEqual([right(plot), plot.top]);
  });
});

describe('a crowded chart', () => {
  it('uses smaller letters before it lets labels overlap', () => {
    expect(overlaps(crowded)).toEqual([]);
    expect(outside(crowded)).toEqual([]);
    expect(crowded.labels.every(({ setting }) => setting.size < 34)).toBe(true);
  });
});

describe('awkward charts', () => {
  const bare: Chart = { ...fanAgainstDuct, lines: [], bands: [], marks: [], levels: [] };

  it('draws an empty chart as an empty frame', () => {
    const layout = chartLayout(bare);
    expect(layout.labels).toEqual([]);
    expect(layout.frame.numbers.length).toBeGreaterThan(4);
  });

  it('gives an axis without width some width', () => {
    const { frame } = chartLayout({ ...bare, x: { label: 'x', min: 5, max: 5 }, y: { label: 'y', min: 0, max: 0 } });
    const [x, y] = frame.place([5, 0]);
    expect(x).toBeCloseTo(frame.plot.left + frame.plot.width / 2);
    expect(y).toBeCloseTo(frame.plot.top + frame.plot.height / 2);
  });

  it('takes a missing end of an axis from the data', () => {
    const { frame } = chartLayout({
      ...bare,
      x: { label: 'x', min: Number.NaN, max: Number.POSITIVE_INFINITY },
      lines: [
        {
          label: 'a',
          role: 'main',
          points: [
            [10, 0.1],
            [30, 0.2],
          ],
        },
      ],
    });
    expect(frame.place([10, 0])[0]).toBeCloseTo(frame.plot.left);
    expect(frame.place([30, 0])[0]).toBeCloseTo(right(frame.plot));
  });

  it('leaves a gap where a number is missing', () => {
    const { lines } = chartLayout({
      ...bare,
      lines: [
        {
          label: 'a',
          role: 'main',
          points: [
            [10, 0.1],
            [20, 0.1],
            [30, Number.NaN],
            [40, 0.2],
            [50, 0.2],
          ],
        },
      ],
    });
    expect(lines[0]?.pieces.map((piece) => piece.length)).toEqual([2, 2]);
  });

  it('points at what lies off the chart instead of leaving it out', () => {
    const layout = chartLayout({
      ...bare,
      marks: [{ label: 'Far off', at: [500, 0.3] }],
      levels: [
        { label: 'Airflow needed', axis: 'x', at: 180 },
        { label: 'Below', axis: 'y', at: -1 },
      ],
      lines: [
        {
          label: 'Above',
          role: 'other',
          points: [
            [50, 2],
            [60, 3],
          ],
        },
      ],
    });
    expect(layout.labels.map(said)).toEqual(['Far off →', 'Airflow needed →', '↓ Below', '↑ Above']);
    expect([layout.marks, layout.levels, layout.lines[0]?.pieces]).toEqual([[], [], []]);
    expect(overlaps(layout)).toEqual([]);
    expect(outside(layout)).toEqual([]);
  });

  it('labels an area given by its two ends, far apart or off the chart', () => {
    const wide = chartLayout({
      ...bare,
      bands: [
        {
          label: 'Range',
          points: [
            [-50, 0.2, 0.4],
            [300, 0.2, 0.4],
          ],
        },
      ],
    });
    expect(wide.labels.map(said)).toEqual(['Range']);
    const above = chartLayout({
      ...bare,
      bands: [
        {
          label: 'Range',
          points: [
            [0, 2, 3],
            [130, 2, 3],
          ],
        },
      ],
    });
    expect(above.labels.map(said)).toEqual(['↑ Range']);
  });

  it('labels a curve of one point', () => {
    const layout = chartLayout({ ...bare, lines: [{ label: 'Only point', role: 'main', points: [[50, 0.3]] }] });
    expect(layout.labels.map(said)).toEqual(['Only point']);
  });

  it('shortens labels of 200 characters and still keeps them apart', () => {
    const long = (label: string) => `${label} and what it means for this house `.repeat(9).slice(0, 200);
    const layout = chartLayout({
      ...fanAgainstDuct,
      lines: fanAgainstDuct.lines.map((line) => ({ ...line, label: long(line.label) })),
      marks: [{ label: 'W'.repeat(200), at: [68, 0.345] }],
    });
    expect(layout.labels.filter((label) => said(label).endsWith('…'))).toHaveLength(4);
    expect(overlaps(layout)).toEqual([]);
    expect(outside(layout)).toEqual([]);
  });

  it('keeps the area between two curves upright when low and high trade places', () => {
    const { bands } = chartLayout({
      ...bare,
      bands: [
        {
          label: 'b',
          points: [
            [10, 0.5, 0.1],
            [20, 0.1, 0.5],
          ],
        },
      ],
    });
    expect(bands[0]?.spans.every(([upper, lower]) => upper[1] < lower[1])).toBe(true);
  });
});

it('lays the same chart out the same way every time', () => {
  expect(JSON.stringify(fanLayout)).toBe(JSON.stringify(chartLayout(structuredClone(fanAgainstDuct))));
});
