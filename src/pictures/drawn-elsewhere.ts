import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';
import { Worker } from 'node:worker_threads';
import type { Paper } from '#findings/paper.ts';
import type { Chart } from '#findings/reply.ts';
import type { Drawn, Wanted } from './drawing-worker.ts';

interface Waiting {
  readonly done: (bytes: Uint8Array) => void;
  readonly failed: (error: Error) => void;
}

/** More than this waiting are more than any crew hands over or asks for at once. */
const mostWaiting = 140;

const waiting = new Map<number, Waiting>();
let worker: Worker | undefined;
let count = 0;

/** The sources are TypeScript there as they are here, so what reads them is put in before the first of them. */
const beginning =
  "const { loader, first } = require('node:worker_threads').workerData;" +
  'import(loader).then(({ register }) => { register(); return import(first); });';

const workerData = {
  loader: pathToFileURL(
    createRequire(import.meta.url)
      .resolve('tsx/esm/api')
      .replace(/\.cjs$/, '.mjs'),
  ).href,
  first: new URL('./drawing-worker.ts', import.meta.url).href,
};

/** One thread for all papers and charts, begun with the first and begun anew after it has failed. It does not keep the program. */
function thread(): Worker {
  if (worker) return worker;
  const fresh = new Worker(beginning, { eval: true, workerData, execArgv: [] });
  const broken = (error: Error): void => {
    if (worker === fresh) worker = undefined;
    for (const { failed } of waiting.values()) failed(error);
    waiting.clear();
  };
  fresh.on('error', broken);
  fresh.on('exit', (code) => broken(new Error(`the thread that draws ended with ${code}`)));
  fresh.on('message', (set: Drawn) => {
    const asked = waiting.get(set.number);
    waiting.delete(set.number);
    if (waiting.size === 0) fresh.unref();
    if ('bytes' in set) asked?.done(set.bytes);
    else asked?.failed(new Error(set.failed));
  });
  worker = fresh;
  return fresh;
}

/** What is asked for, without the number it goes by. */
type Asked = { readonly paper: Paper } | { readonly chart: Chart };

function elsewhere(asked: Asked): Promise<Uint8Array> {
  if (waiting.size >= mostWaiting) return Promise.reject(new Error('too many are waiting to be drawn'));
  return new Promise((done, failed) => {
    count += 1;
    const drawer = thread();
    drawer.ref();
    waiting.set(count, { done, failed });
    try {
      drawer.postMessage({ number: count, ...asked } satisfies Wanted);
    } catch (error) {
      // What cannot be carried over is told at once, and the thread goes on for the others.
      waiting.delete(count);
      failed(error);
    }
  });
}

/**
 * Sets a paper as `paperPdf` does, in a thread of its own, so that nobody else waits while it is set.
 *
 * @throws Error when it cannot be set, or when too many are waiting already.
 */
export const paperElsewhere = (paper: Paper): Promise<Uint8Array> => elsewhere({ paper });

/**
 * Draws a chart as `chartPng` does, in that same thread: placing its labels takes as long as many answers.
 *
 * @throws Error when it cannot be drawn, or when too many are waiting already.
 */
export const chartElsewhere = (chart: Chart): Promise<Uint8Array> => elsewhere({ chart });
