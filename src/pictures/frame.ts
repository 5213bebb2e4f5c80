import { scaleLinear } from 'd3-scale';
import { type AxisNumber, axisNumbers } from './axis-numbers.ts';
import type { DrawableChart } from './drawable-chart.ts';
import { type Box, bottom, right, type Spot } from './geometry.ts';
import { balanced, lineSpacing, type Setting, textWidth, wrapped } from './lettering.ts';

/** The full size of a picture in pixels. A phone shows it about 350 pixels wide, which is what sets the sizes of text. */
export const pictureSize = { width: 1200, height: 800 } as const;

export const titleSetting: Setting = { face: 'bold', size: 42 };
export const axisSetting: Setting = { face: 'regular', size: 34 };

/** A word or number with the spot its baseline starts, ends or is centred on. */
export interface Lettering {
  readonly words: string;
  readonly at: Spot;
  readonly anchor: 'start' | 'middle' | 'end';
}

/** Everything around the curves: the plot area, its grid and numbers, title and axis labels, and the way from data to pixels. */
export interface Frame {
  readonly plot: Box;
  readonly title: readonly Lettering[];
  readonly axisLabels: readonly Lettering[];
  readonly numbers: readonly Lettering[];
  /** Pixel positions of the grid lines. */
  readonly grid: { readonly x: readonly number[]; readonly y: readonly number[] };
  readonly place: (point: readonly [x: number, y: number]) => Spot;
}

const margin = 36;
const gap = 12;
const { size } = axisSetting;
const axisLine = size * lineSpacing;
/** How far a baseline lies below the top of its line, in ems. */
const ascent = 0.93;
/** Half the height of a figure, in ems: what a number is lowered by to stand level with its grid line. */
const halfFigure = 0.36;
/** Between the label of the upright axis and the plot: the topmost number stands half a line above it. */
const labelDrop = 2 * gap;

export function frame(chart: DrawableChart): Frame {
  const titleLines = titleIn(pictureSize.width - 2 * margin, chart.title);
  const titleTop = margin * 0.75;
  const top = titleTop + titleLines.length * titleSetting.size * lineSpacing + gap + axisLine + labelDrop;
  const height = pictureSize.height - top - (2 * axisLine + 2 * gap + margin * 0.5);
  const up = axisNumbers(chart.y, 8, (numbers) => height / numbers.length > axisLine * 1.5);
  const left = margin + widest(up) + gap;
  const width = pictureSize.width - left - margin - 10;
  const across = axisNumbers(chart.x, 10, (numbers) => width / numbers.length > widest(numbers) + 40);
  const plot: Box = { left, top, width, height };
  const x = scaleLinear([chart.x.min, chart.x.max], [left, right(plot)]);
  const y = scaleLinear([chart.y.min, chart.y.max], [bottom(plot), top]);
  return {
    plot,
    title: titleLines.map((words, index) => ({
      words,
      at: [margin, titleTop + (index * lineSpacing + ascent) * titleSetting.size],
      anchor: 'start',
    })),
    axisLabels: axisLabels(chart, plot),
    numbers: [
      ...across.map(({ value, words }): Lettering => {
        const at = insidePicture(x(value), words);
        return { words, at: [at, bottom(plot) + gap + ascent * size], anchor: 'middle' };
      }),
      ...up.map(
        ({ value, words }): Lettering => ({
          words,
          at: [left - gap, y(value) + halfFigure * size],
          anchor: 'end',
        }),
      ),
    ],
    grid: { x: across.map(({ value }) => x(value)), y: up.map(({ value }) => y(value)) },
    place: ([px, py]) => [onPaper(x(px)), onPaper(y(py))],
  };
}

/** The title in as few lines as it needs, three at most, evenly filled so that no word is left alone. */
function titleIn(width: number, title: string): readonly string[] {
  const lines = wrapped(title, { width, lines: 3 }, titleSetting);
  const even = lines.at(-1)?.endsWith('…') ? undefined : balanced(title, lines.length, titleSetting);
  return even?.every((line) => textWidth(line, titleSetting) <= width) ? even : lines;
}

const widest = (numbers: readonly AxisNumber[]): number =>
  Math.max(0, ...numbers.map(({ words }) => textWidth(words, axisSetting)));

/** The quantity of the upright axis is written level above it, where it reads without tilting the phone. */
function axisLabels(chart: DrawableChart, plot: Box): readonly Lettering[] {
  const fitted = (text: string, width: number) => wrapped(text, { width, lines: 1 }, axisSetting)[0];
  const across = fitted(chart.x.label, right(plot) - margin);
  const upward = fitted(chart.y.label, pictureSize.width - 2 * margin);
  const baseline = bottom(plot) + 1.5 * gap + axisLine + ascent * size;
  return [
    ...(across === undefined ? [] : [{ words: across, at: [right(plot), baseline], anchor: 'end' } as const]),
    ...(upward === undefined
      ? []
      : [
          {
            words: upward,
            at: [margin, plot.top - labelDrop - axisLine + ascent * size],
            anchor: 'start',
          } as const,
        ]),
  ];
}

/** Keeps a number at the end of the lower axis from running off the picture. */
function insidePicture(at: number, words: string): number {
  const half = textWidth(words, axisSetting) / 2 + 6;
  return Math.min(Math.max(at, half), pictureSize.width - half);
}

/** Far off the paper every curve looks the same; pixel numbers stay small enough for any renderer. */
const onPaper = (pixels: number): number => Math.min(Math.max(pixels, -1e6), 1e6);
