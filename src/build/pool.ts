/** Spreads the making of files over this thread and prerender workers, one for each further processor. */

import { availableParallelism } from 'node:os';
import { setImmediate as turnOfEvents } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import { keptSince } from '../resultStore.ts';
import type { Route } from '../site/route.ts';
import { allEnded } from './allEnded.ts';
import type { FinishedFile } from './finishedSite.ts';
import { type Maker, type MakerInput, makerOf } from './make.ts';

export interface WorkerInput {
  input: MakerInput;
  keptSince: number;
}

export type FromWorker = { finished: FinishedFile[] } | { problem: string };

const workerFile = fileURLToPath(new URL('worker.ts', import.meta.url));

/** Files handed out at a time: few, so that no thread is left with much to do at the end, and neighbors, which share what they show. */
const batchSize = 24;
/**
 * Below this many files no worker is started: each loads the program, is handed a clone of the catalogue and works the routes out anew, which only
 * several hundred files repay. Chosen, not measured: it grows with the catalogue.
 */
export const WORTH_WORKERS = 600;

interface PrerenderWorker {
  make: Maker;
  stop: () => Promise<unknown>;
}

function startWorker(input: MakerInput): PrerenderWorker {
  const workerData: WorkerInput = { input, keptSince: keptSince() };
  const worker = new Worker(workerFile, { workerData });
  const { promise: died, reject } = Promise.withResolvers<never>();
  worker.on('error', problem => reject(new Error(`a prerender worker has died: ${problem.message}`)));
  worker.on('exit', code => reject(new Error(`a prerender worker has died (code ${code})`)));
  // Told by whoever waits for the next batch; after the last nobody does.
  died.catch(() => undefined);
  const answer = () =>
    new Promise<FromWorker>(resolve => worker.once('message', (message: FromWorker) => resolve(message)));
  return {
    async make(files) {
      worker.postMessage(files);
      const message = await Promise.race([answer(), died]);
      if ('problem' in message) throw new Error(message.problem);
      return message.finished;
    },
    stop: () => worker.terminate(),
  };
}

/** Takes batches until there are none left, or another thread has met a problem. */
async function work(make: Maker, batches: string[][], finished: FinishedFile[]): Promise<void> {
  try {
    for (let batch = batches.shift(); batch !== undefined; batch = batches.shift()) {
      finished.push(...(await make(batch)));
      // Lets this thread hand the next batch to a worker that has finished its own.
      await turnOfEvents();
    }
  } catch (problem) {
    batches.length = 0;
    throw problem;
  }
}

/** Batches of files, in order. */
function batchesOf(files: readonly string[]): string[][] {
  return Array.from({ length: Math.ceil(files.length / batchSize) }, (_, index) =>
    files.slice(index * batchSize, (index + 1) * batchSize),
  );
}

/** Makes these files, with as many workers as they are worth where none are named. Throws the first problem, once no thread writes any more. */
export async function makeAll(
  input: MakerInput,
  routes: ReadonlyMap<string, Route>,
  files: readonly string[],
  workerCount = files.length < WORTH_WORKERS ? 0 : availableParallelism() - 1,
): Promise<FinishedFile[]> {
  const workers = Array.from({ length: workerCount }, () => startWorker(input));
  const batches = batchesOf(files);
  const finished: FinishedFile[] = [];
  const makers = [makerOf(input, routes), ...workers.map(({ make }) => make)];
  try {
    await allEnded(makers.map(make => work(make, batches, finished)));
  } finally {
    await Promise.all(workers.map(({ stop }) => stop()));
  }
  return finished;
}
