/** A thread that works out the figures of some towns and ends. */

import { parentPort, workerData } from 'node:worker_threads';
import { figuresOfTowns } from './townFigures.ts';

parentPort?.postMessage(figuresOfTowns(workerData));
