import { createHash } from 'node:crypto';
import type { Chart } from '#findings/reply.ts';

/** A chart as a PNG file, drawn or being drawn. */
export interface Drawing {
  readonly bytes: Promise<Uint8Array>;
  /** How many are drawn before it; none when it is drawn already. */
  readonly ahead: number;
}

/** Draws charts, a few at a time, and keeps the latest: the same answer is the same picture. */
export interface ChartPictures {
  /** Nothing when so many are waiting that the chart is better left out. */
  of(chart: Chart): Drawing | undefined;
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
    // Drawing takes the program for a moment; what came in meanwhile is answered first.
    await new Promise(setImmediate);
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
      const ahead = before === undefined ? drawing + waiting.length : 0;
      const picture = before ?? drawn(chart);
      known.delete(mark);
      known.set(mark, picture);
      // A chart that could not be drawn may be tried again.
      if (before === undefined) picture.catch(() => known.get(mark) === picture && known.delete(mark));
      const [oldest] = known.keys();
      if (known.size > mostKept && oldest !== undefined) known.delete(oldest);
      return { bytes: picture, ahead };
    },
  };
}

/** Draws in a thread of its own, begun with the first chart, so that nobody's answer waits for somebody else's picture. */
export async function drawnChart(chart: Chart): Promise<Uint8Array> {
  const { chartElsewhere } = await import('#pictures/drawn-elsewhere.ts');
  return chartElsewhere(chart);
}
