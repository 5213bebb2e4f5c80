import { parentPort } from 'node:worker_threads';
import type { Paper } from '#findings/paper.ts';
import { paperPdf } from './paper-pdf.ts';

/** A paper to be set, by a number that comes back with it. */
export interface PaperWanted {
  readonly number: number;
  readonly paper: Paper;
}

export type PaperSet = { readonly number: number } & ({ readonly bytes: Uint8Array } | { readonly failed: string });

parentPort?.on('message', ({ number, paper }: PaperWanted) => {
  // Begun behind a promise, so that a paper that cannot even be begun does not end the thread for the others.
  Promise.resolve()
    .then(() => paperPdf(paper))
    .then(
      (bytes) => parentPort?.postMessage({ number, bytes } satisfies PaperSet),
      (error: unknown) => parentPort?.postMessage({ number, failed: String(error) } satisfies PaperSet),
    );
});
