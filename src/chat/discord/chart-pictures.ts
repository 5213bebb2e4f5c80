import { createHash } from 'node:crypto';
import type { Chart } from '#findings/reply.ts';

/** Draws charts, a few at a time, and keeps the latest: the same answer is the same picture. */
export interface ChartPictures {
  /** The chart as a PNG file; nothing when so many are waiting that it is better left out. */
  of(chart: Chart): Promise<Uint8Array> | undefined;
}

interface Bounds {
  /** Drawn at the same time. Each takes the program for a moment, in which nobody else is answered. */
  readonly atOnce: number;
  readonly waiting: number;
  readonly kept: number;
}

const usual: Bounds = { atOnce: 1, waiting: 100, kept: 48 };

export function chartPictures(
  draw: (chart: Chart) => Promise<Uint8Array>,
  bounds: Partial<Bounds> = {},
): ChartPictures {
  const { atOnce, waiting: mostWaiting, kept: mostKept } = { ...usual, ...bounds };
  const known = new Map<string, Promise<Uint8Array>>();
  const waiting: (() => void)[] = [];
  let drawing = 0;

  const turn = async (): Promise<void> => {
    if (drawing < atOnce) drawing += 1;
    else await new Promise<void>((resolve) => waiting.push(resolve));
  };
  const done = (): void => {
    const next = waiting.shift();
    if (next) next();
    else drawing -= 1;
  };
  const drawn = async (chart: Chart): Promise<Uint8Array> => {
    await turn();
    try {
      return await draw(chart);
    } finally {
      done();
    }
  };

  return {
    of(chart) {
      const mark = createHash('sha256').update(JSON.stringify(chart)).digest('base64');
      const before = known.get(mark);
      if (before === undefined && waiting.length >= mostWaiting) return undefined;
      const picture = before ?? drawn(chart);
      known.delete(mark);
      known.set(mark, picture);
      // A chart that could not be drawn may be tried again.
      if (before === undefined) picture.catch(() => known.get(mark) === picture && known.delete(mark));
      const [oldest] = known.keys();
      if (known.size > mostKept && oldest !== undefined) known.delete(oldest);
      return picture;
    },
  };
}

/** Draws with the program's own pictures, which are loaded with the first chart. */
export async function drawnChart(chart: Chart): Promise<Uint8Array> {
  const { chartPng } = await import('#pictures/chart-png.ts');
  return chartPng(chart);
}
