import { type Box, type Spot, spotsAlong } from './geometry.ts';

/** A curve or straight line on the paper, as dots along it. `weight` says how much harm it does to hide one. */
export interface Stroke {
  readonly id: string;
  readonly weight: number;
  readonly dots: readonly Spot[];
}

export interface InkMap {
  /** The weight of all strokes in a box. */
  readonly all: (box: Box) => number;
  /** The weight of one stroke in a box, rounded to the same cells. */
  readonly of: (id: string, box: Box) => number;
}

const dotSpacing = 5;

/** Cells are finer than the dots are apart, so that a box is judged by what it covers and little more. */
const cell = 4;

/** A drawn line as evenly spaced dots. */
export const strokeDots = (spots: readonly Spot[]): readonly Spot[] => spotsAlong(spots, dotSpacing);

/** Counts of ink by box: four look-ups a question, however much is drawn. */
export function inkMap(plot: Box, strokes: readonly Stroke[]): InkMap {
  const all = summedTable(plot, strokes);
  const each = new Map(strokes.map((stroke) => [stroke.id, summedTable(plot, [stroke])]));
  return { all, of: (id, box) => each.get(id)?.(box) ?? 0 };
}

/** A summed-area table: each entry holds the ink above and to the left of a cell. */
function summedTable(plot: Box, strokes: readonly Stroke[]): (box: Box) => number {
  const columns = Math.ceil(plot.width / cell) + 1;
  const rows = Math.ceil(plot.height / cell) + 1;
  const stride = columns + 1;
  const sums = new Uint32Array(stride * (rows + 1));
  const column = (x: number) => Math.min(Math.max(Math.floor((x - plot.left) / cell), 0), columns - 1);
  const row = (y: number) => Math.min(Math.max(Math.floor((y - plot.top) / cell), 0), rows - 1);
  const sum = (c: number, r: number) => sums[r * stride + c] ?? 0;
  for (const { dots, weight } of strokes) {
    for (const [x, y] of dots) sums[(row(y) + 1) * stride + column(x) + 1] = sum(column(x) + 1, row(y) + 1) + weight;
  }
  for (let r = 1; r <= rows; r += 1) {
    for (let c = 1; c <= columns; c += 1) {
      sums[r * stride + c] = sum(c, r) + sum(c - 1, r) + sum(c, r - 1) - sum(c - 1, r - 1);
    }
  }
  return ({ left, top, width, height }) => {
    const [c1, r1] = [column(left), row(top)];
    const [c2, r2] = [column(left + width) + 1, row(top + height) + 1];
    return sum(c2, r2) - sum(c1, r2) - sum(c2, r1) + sum(c1, r1);
  };
}
