import type { DrawableChart } from './drawable-chart.ts';
import type { Spot } from './geometry.ts';

/** A field of characters with the chart's axes laid over it. */
export interface Canvas {
  readonly column: (x: number) => number;
  readonly row: (y: number) => number;
  /** A place in the plot, in cells, not yet rounded to one. */
  readonly place: (point: readonly [x: number, y: number]) => Spot;
  readonly put: (spot: Spot, symbol: string) => void;
  readonly holds: (symbol: string) => boolean;
  readonly area: { readonly columns: number; readonly rows: number };
  readonly lines: () => readonly string[];
}

export function newCanvas({ x, y }: DrawableChart, area: { readonly columns: number; readonly rows: number }): Canvas {
  const cells = Array.from({ length: area.rows }, () => Array.from({ length: area.columns }, () => ' '));
  const across = (value: number) => ((value - x.min) / (x.max - x.min)) * (area.columns - 1);
  const down = (value: number) => ((y.max - value) / (y.max - y.min)) * (area.rows - 1);
  return {
    column: (value) => Math.round(across(value)),
    row: (value) => Math.round(down(value)),
    place: ([px, py]) => [across(px), down(py)],
    put: ([column, row], symbol) => {
      const line = cells[Math.round(row)];
      if (line?.[Math.round(column)] !== undefined) line[Math.round(column)] = symbol;
    },
    holds: (symbol) => cells.some((line) => line.includes(symbol)),
    area,
    lines: () => cells.map((line) => line.join('')),
  };
}
