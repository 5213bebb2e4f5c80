import type { Line } from '#findings/reply.ts';
import type { DrawableChart } from './drawable-chart.ts';
import { piecesWithin, type Spot, spotsAlong } from './geometry.ts';
import type { Canvas } from './sketch-canvas.ts';

/** One thing of the chart in characters: the cells it takes and the symbol it is drawn with. */
export interface SketchItem {
  readonly symbol: string;
  readonly label: string;
  /** What is drawn first is covered by what is drawn later. */
  readonly layer: number;
  readonly spots: readonly Spot[];
}

const layers: Record<Line['role'], number> = { guess: 1, other: 2, limit: 3, system: 4, main: 5 };
const firstSymbols: Record<Line['role'], string> = { main: '*', other: '.', system: 'o', limit: 'x', guess: ':' };
const moreSymbols = 'abcdefghijklmnpqrstuvwyzABCDEFGHIJKLMNPQRSTUVWYZ';

/** Everything in the chart, in the order it names things. Areas take the shades in turn. */
export const sketchItems = (canvas: Canvas, chart: DrawableChart, shades: string): readonly SketchItem[] => [
  ...lineItems(canvas, chart),
  ...bandItems(canvas, chart, shades),
  ...markItems(canvas, chart),
  ...levelItems(canvas, chart),
];

function lineItems(canvas: Canvas, { lines }: DrawableChart): readonly SketchItem[] {
  const { columns, rows } = canvas.area;
  const plot = { left: -0.49, top: -0.49, width: columns - 0.02, height: rows - 0.02 };
  const used = new Set<Line['role']>();
  let extra = 0;
  return lines.map(({ label, role, runs }) => {
    const symbol =
      role !== 'guess' && used.has(role) ? (moreSymbols[extra++ % moreSymbols.length] ?? '.') : firstSymbols[role];
    used.add(role);
    const spots = runs.flatMap((run) =>
      piecesWithin(run.map(canvas.place), plot).flatMap((piece) => spotsAlong(piece, 0.25)),
    );
    return { symbol, label, layer: layers[role], spots };
  });
}

const bandItems = (canvas: Canvas, { bands }: DrawableChart, shades: string): readonly SketchItem[] =>
  bands.map(({ label, points }, index) => ({
    symbol: shades[index % shades.length] ?? ':',
    label,
    layer: 0,
    spots: shadedCells(canvas, points),
  }));

/** Cells whose middle lies between the two edges of a band, the edges drawn straight from point to point. */
function shadedCells(
  canvas: Canvas,
  points: readonly (readonly [x: number, low: number, high: number])[],
): readonly Spot[] {
  const found: Spot[] = [];
  const shade = (column: number, upper: number, lower: number) => {
    for (
      let row = Math.max(0, Math.ceil(upper - 0.25));
      row <= Math.min(canvas.area.rows - 1, lower + 0.25);
      row += 1
    ) {
      found.push([column, row]);
    }
  };
  for (const [index, [x, low, high]] of points.entries()) {
    const [at, upper] = canvas.place([x, high]);
    const [, lower] = canvas.place([x, low]);
    const before = points[index - 1] ?? [x, low, high];
    const [start, upperBefore] = canvas.place([before[0], before[2]]);
    const [, lowerBefore] = canvas.place([before[0], before[1]]);
    for (let column = Math.max(0, Math.ceil(start)); column <= Math.min(canvas.area.columns - 1, at); column += 1) {
      const share = at === start ? 1 : (column - start) / (at - start);
      shade(column, upperBefore + (upper - upperBefore) * share, lowerBefore + (lower - lowerBefore) * share);
    }
  }
  return found;
}

const markItems = (canvas: Canvas, { marks }: DrawableChart): readonly SketchItem[] =>
  marks.map(({ label, at }, index) => ({
    symbol: marks.length > 1 && index < 9 ? String(index + 1) : '@',
    label,
    layer: 6,
    spots: [canvas.place(at)],
  }));

function levelItems(canvas: Canvas, { levels, x, y }: DrawableChart): readonly SketchItem[] {
  const { columns, rows } = canvas.area;
  const used = { x: 0, y: 0 };
  const symbols = { x: '|!I', y: '-=_' } as const;
  return levels.map(({ label, axis, at }) => {
    const symbol = symbols[axis][used[axis] % 3] ?? '|';
    used[axis] += 1;
    const [column, row] = canvas.place(axis === 'x' ? [at, y.min] : [x.min, at]);
    const spots =
      axis === 'x'
        ? Array.from({ length: rows }, (_, index): Spot => [column, index])
        : Array.from({ length: columns }, (_, index): Spot => [index, row]);
    return { symbol, label, layer: 1, spots };
  });
}
