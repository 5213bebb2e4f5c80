import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';
import { Worker } from 'node:worker_threads';
import type { Paper } from '#findings/paper.ts';
import type { PaperSet } from './paper-worker.ts';

interface Waiting {
  readonly done: (bytes: Uint8Array) => void;
  readonly failed: (error: Error) => void;
}

/** More papers than this waiting to be set are more than any crew hands over at once. */
const mostWaiting = 40;

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
  first: new URL('./paper-worker.ts', import.meta.url).href,
};

/** One thread for all papers, begun with the first and begun anew after it has failed. It does not keep the program. */
function thread(): Worker {
  if (worker) return worker;
  const fresh = new Worker(beginning, { eval: true, workerData, execArgv: [] });
  const broken = (error: Error): void => {
    if (worker === fresh) worker = undefined;
    for (const { failed } of waiting.values()) failed(error);
    waiting.clear();
  };
  fresh.on('error', broken);
  fresh.on('exit', (code) => broken(new Error(`the thread that sets papers ended with ${code}`)));
  fresh.on('message', (set: PaperSet) => {
    const asked = waiting.get(set.number);
    waiting.delete(set.number);
    if (waiting.size === 0) fresh.unref();
    if ('bytes' in set) asked?.done(set.bytes);
    else asked?.failed(new Error(set.failed));
  });
  worker = fresh;
  return fresh;
}

/**
 * Sets a paper as `paperPdf` does, in a thread of its own, so that nobody else waits while it is set.
 *
 * @throws Error when it cannot be set, or when too many are waiting already.
 */
export function paperElsewhere(paper: Paper): Promise<Uint8Array> {
  if (waiting.size >= mostWaiting) return Promise.reject(new Error('too many papers are waiting to be set'));
  return new Promise((done, failed) => {
    count += 1;
    waiting.set(count, { done, failed });
    const setter = thread();
    setter.ref();
    setter.postMessage({ number: count, paper });
  });
}
