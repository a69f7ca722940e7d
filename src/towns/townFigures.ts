/** Figures of many towns, worked out in several threads. */

import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import { type StationNetwork, stationNetwork } from '../core/climate/anywhere/network.ts';
import { figuresAt } from '../core/climate/anywhere/pointFigures.ts';
import type { Town } from '../core/towns/town.ts';
import { packedFigures } from '../core/towns/townFigures.ts';
import { readStations } from '../stations/read.ts';

export type TownPoint = Pick<Town, 'lat' | 'lon' | 'heightM'>;

const workerFile = fileURLToPath(new URL('townWorker.ts', import.meta.url));
/** Below so many towns a worker is not worth its start, which costs about a second. */
const WORTH_WORKERS = 3000;
/** Towns worked out before other work of this thread has its turn. */
const TURN = 200;

let network: StationNetwork | null = null;

/** Packed figures of each town; empty where the stations cannot speak for it. About 0.7 ms each. */
export function figuresOfTowns(towns: readonly TownPoint[]): string[] {
  network ??= stationNetwork(readStations());
  const stations = network;
  return towns.map(({ lat, lon, heightM }) => {
    const figures = figuresAt(stations, { lat, lon, elevationM: heightM });
    return figures.refused === undefined ? packedFigures(figures) : '';
  });
}

function inWorker(towns: readonly TownPoint[]): Promise<string[]> {
  return new Promise((resolve, reject) => {
    const points = towns.map(({ lat, lon, heightM }) => ({ lat, lon, heightM }));
    const worker = new Worker(workerFile, { workerData: points });
    worker.once('message', resolve);
    worker.once('error', reject);
    worker.once('exit', code => reject(new Error(`a thread that works out towns has ended (code ${code})`)));
  });
}

async function inTurns(towns: readonly TownPoint[]): Promise<string[]> {
  const packed: string[] = [];
  for (let from = 0; from < towns.length; from += TURN) {
    packed.push(...figuresOfTowns(towns.slice(from, from + TURN)));
    await new Promise(resolve => setImmediate(resolve));
  }
  return packed;
}

/** The same on all processors. */
export async function figuresOnAllCores(towns: readonly TownPoint[]): Promise<string[]> {
  const threads = towns.length < WORTH_WORKERS ? 1 : availableParallelism();
  const share = Math.ceil(towns.length / threads) || 1;
  const parts = Array.from({ length: threads }, (_, i) => towns.slice(i * share, (i + 1) * share));
  const [own = [], ...others] = parts;
  const working = others.map(inWorker);
  const packed = await Promise.all([inTurns(own), ...working]);
  return packed.flat();
}
