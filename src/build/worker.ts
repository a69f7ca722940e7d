/** A prerender worker: a thread that makes the files it is told to, a few at a time. */

import { parentPort, workerData } from 'node:worker_threads';
import { takeKeptSince } from '../resultStore.ts';
import { makerOf } from './make.ts';
import type { FromWorker, WorkerInput } from './pool.ts';

const { input, keptSince }: WorkerInput = workerData;
takeKeptSince(keptSince);
const make = makerOf(input);

parentPort!.on('message', async (files: readonly string[]) => {
  let answer: FromWorker;
  try {
    answer = { finished: await make(files) };
  } catch (problem) {
    answer = { problem: problem instanceof Error ? problem.message : String(problem) };
  }
  parentPort!.postMessage(answer);
});
