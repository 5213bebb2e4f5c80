import type { Line } from '#findings/reply.ts';
import type { DrawableChart } from './drawable-chart.ts';
import type { Frame } from './frame.ts';
import { bottom, grown, holdsSpot, piecesWithin, right, type Spot } from './geometry.ts';

export interface DrawnLine {
  readonly role: Line['role'];
  /** The visible pieces, in pixels. */
  readonly pieces: readonly (readonly Spot[])[];
}

export type Span = readonly [upper: Spot, lower: Spot];

/** An area as its upper and lower edge at each place across, in pixels. */
export interface DrawnBand {
  readonly spans: readonly Span[];
}

/** What a chart holds, in pixels, each thing at the index it has in the chart. */
export interface Drawing {
  readonly bands: readonly DrawnBand[];
  readonly lines: readonly DrawnLine[];
  readonly levels: readonly {
    readonly axis: 'x' | 'y';
    readonly at: number;
    readonly ends: readonly [Spot, Spot] | undefined;
  }[];
  readonly marks: readonly Spot[];
}

export function drawing({ bands, lines, levels, marks }: DrawableChart, { plot, place }: Frame): Drawing {
  return {
    bands: bands.map(({ points }) => ({
      spans: points.map(([x, low, high]) => [place([x, high]), place([x, low])] as const),
    })),
    lines: lines.map(({ role, runs }) => ({
      role,
      pieces: runs.flatMap((run) => piecesWithin(run.map(place), grown(plot, 0.01))),
    })),
    levels: levels.map(({ axis, at }) => {
      const [x, y] = place(axis === 'x' ? [at, 0] : [0, at]);
      const ends: readonly [Spot, Spot] =
        axis === 'x'
          ? [
              [x, plot.top],
              [x, bottom(plot)],
            ]
          : [
              [plot.left, y],
              [right(plot), y],
            ];
      const seen = ends.every((end) => holdsSpot(grown(plot, 0.01), end));
      return { axis, at: axis === 'x' ? x : y, ends: seen ? ends : undefined };
    }),
    marks: marks.map(({ at }) => place(at)),
  };
}
