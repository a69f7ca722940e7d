/** Decodes one HEIC picture in a thread of its own: it takes a second or two, and the memory of the decoder goes with the thread. */

import { parentPort, workerData } from 'node:worker_threads';
import decode from 'heic-decode';

const { width, height, data } = await decode({ buffer: workerData as Uint8Array });
parentPort?.postMessage({ width, height, data }, [data.buffer as ArrayBuffer]);
