import { parentPort } from 'node:worker_threads';
import type { Paper } from '#findings/paper.ts';
import type { Chart } from '#findings/reply.ts';

/** A paper to be set or a chart to be drawn, by a number that comes back with it. */
export type Wanted = { readonly number: number } & ({ readonly paper: Paper } | { readonly chart: Chart });

export type Drawn = { readonly number: number } & ({ readonly bytes: Uint8Array } | { readonly failed: string });

/** Each kind loads what draws it with the first of its kind. */
async function bytesOf(wanted: Wanted): Promise<Uint8Array> {
  if ('paper' in wanted) return (await import('./paper-pdf.ts')).paperPdf(wanted.paper);
  return (await import('./chart-png.ts')).chartPng(wanted.chart);
}

parentPort?.on('message', (wanted: Wanted) => {
  const { number } = wanted;
  bytesOf(wanted).then(
    (bytes) => parentPort?.postMessage({ number, bytes } satisfies Drawn),
    (error: unknown) => parentPort?.postMessage({ number, failed: String(error) } satisfies Drawn),
  );
});
