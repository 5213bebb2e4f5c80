import type { Axis, Chart } from '#findings/reply.ts';
import { type AxisNumber, axisNumbers } from './axis-numbers.ts';
import { type DrawableChart, drawableChart } from './drawable-chart.ts';
import { asciiText, plainText } from './plain-text.ts';
import { type Canvas, newCanvas } from './sketch-canvas.ts';
import { sketchItems } from './sketch-items.ts';

export interface TextSize {
  /** Columns of the whole sketch, numbers included. */
  readonly width?: number;
  /** Rows of the plot area; title, axis and key come on top of that. */
  readonly height?: number;
  /** True for a terminal that knows nothing beyond ASCII. */
  readonly ascii?: boolean;
}

interface Pen {
  readonly text: (text: string) => string;
  readonly upright: string;
  readonly level: string;
  readonly corner: string;
  readonly rowTick: string;
  readonly columnTick: string;
  /** One symbol for each area, in turn. */
  readonly shades: string;
}

const ascii: Pen = {
  text: asciiText,
  upright: '|',
  level: '-',
  corner: '+',
  rowTick: '+',
  columnTick: '+',
  shades: ':;',
};
const boxDrawing: Pen = {
  text: plainText,
  upright: '│',
  level: '─',
  corner: '└',
  rowTick: '┤',
  columnTick: '┬',
  shades: '░▒',
};

/** The chart as a sketch in characters with a key under it, for a terminal. Lines end without spaces. */
export function chartText(chart: Chart, size: TextSize = {}): string {
  const pen = size.ascii === true ? ascii : boxDrawing;
  const width = Math.max(30, Math.floor(size.width ?? 64));
  const height = Math.max(5, Math.floor(size.height ?? 16));
  const drawable = drawableChart(chart, pen.text);
  const asNumber = (number: AxisNumber) => ({ ...number, words: pen.text(number.words) });
  const rowNumbers = axisNumbers(drawable.y, 8, (numbers) => height >= 2 * numbers.length).map(asNumber);
  const gutter = Math.max(...rowNumbers.map(({ words }) => words.length)) + 1;
  const columns = Math.max(10, width - gutter - 1);
  const canvas = newCanvas(drawable, { columns, rows: height });
  const key = drawAll(canvas, drawable, pen);
  return [
    ...filled(drawable.title, width),
    ...filled(drawable.y.label, width),
    ...canvas.lines().map((line, row) => {
      const number = rowNumbers.find(({ value }) => canvas.row(value) === row);
      return `${(number?.words ?? '').padStart(gutter - 1)} ${number === undefined ? pen.upright : pen.rowTick}${line}`;
    }),
    ...lowerAxis(drawable.x, { canvas, columns, gutter, pen, asNumber }),
    ...filled(drawable.x.label, width).map((line) => line.padStart(gutter + 1 + columns)),
    ...key.flatMap(({ symbol, says }) =>
      filled(says, width - 4).map((line, index) => (index === 0 ? `  ${symbol} ${line}` : `    ${line}`)),
    ),
  ]
    .map((line) => line.trimEnd())
    .join('\n');
}

interface KeyEntry {
  readonly symbol: string;
  readonly says: string;
}

/** Draws everything and tells what each symbol means, in the order the chart names things. */
function drawAll(canvas: Canvas, chart: DrawableChart, pen: Pen): readonly KeyEntry[] {
  const items = sketchItems(canvas, chart, pen.shades);
  for (const { spots, symbol } of items.toSorted((a, b) => a.layer - b.layer)) {
    for (const spot of spots) canvas.put(spot, symbol);
  }
  return items
    .filter(({ label }) => label !== '')
    .map(({ symbol, label, spots }) => {
      const { columns, rows } = canvas.area;
      const seen = spots.some(([column, row]) => isCell(column, columns) && isCell(row, rows));
      if (!seen) return { symbol, says: `${label} (off the chart)` };
      return { symbol, says: canvas.holds(symbol) ? label : `${label} (behind the others)` };
    });
}

const isCell = (at: number, count: number): boolean => Math.round(at) >= 0 && Math.round(at) < count;

/** The line under the plot and the numbers under that, each centred on its column as far as the width allows. */
function lowerAxis(
  axis: Axis,
  paper: {
    readonly canvas: Canvas;
    readonly columns: number;
    readonly gutter: number;
    readonly pen: Pen;
    readonly asNumber: (number: AxisNumber) => AxisNumber;
  },
): readonly string[] {
  const { canvas, columns, gutter, pen, asNumber } = paper;
  const whole = gutter + 1 + columns;
  const starts = ({ value, words }: AxisNumber) =>
    Math.max(0, Math.min(gutter + 1 + canvas.column(value) - Math.floor(words.length / 2), whole - words.length));
  const apart = (numbers: readonly AxisNumber[]) =>
    numbers.every((number, index) => {
      const before = numbers[index - 1];
      return before === undefined || starts(number) - starts(before) >= before.words.length + 2;
    });
  const numbers = axisNumbers(axis, 10, (tried) => apart(tried.map(asNumber))).map(asNumber);
  const line = Array.from({ length: columns }, (_, column) =>
    numbers.some(({ value }) => canvas.column(value) === column) ? pen.columnTick : pen.level,
  );
  const under = numbers.reduce((text, number) => {
    const start = starts(number);
    return start < text.length ? text : text.padEnd(start) + number.words;
  }, '');
  return [`${' '.repeat(gutter)}${pen.corner}${line.join('')}`, under];
}

/** Text broken between words to a width; a longer word is left whole. */
function filled(text: string, width: number): readonly string[] {
  const lines: string[] = [];
  for (const word of text.split(' ').filter((part) => part !== '')) {
    const line = lines.at(-1);
    if (line !== undefined && line.length + 1 + word.length <= width) lines[lines.length - 1] = `${line} ${word}`;
    else lines.push(word);
  }
  return lines;
}
