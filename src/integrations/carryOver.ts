/** Takes the unchanged pages of large yards into a new site, in a process of its own beside the generator: thousands of folders take seconds. */

import { fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { Redirect } from '../core/addresses/publication.ts';
import { ended } from './ended.ts';

const carrier = fileURLToPath(new URL('carrier.ts', import.meta.url));

export interface CarryOrder {
  /** Folder of the site being built, and of the one before. */
  built: string;
  out: string;
  /** Address of the site, and path below which it lives. */
  address: string;
  base: string;
  files: readonly string[];
  /** The short addresses of these files. */
  redirects: readonly Redirect[];
}

export type FromCarrier = { done: true } | { problem: string };

export interface CarryOver {
  /** Waits for the end. Throws when a page could not be taken. */
  finished: () => Promise<void>;
  /** Ends it, wherever it is, and waits until it is gone. */
  stop: () => Promise<void>;
}

export function startCarryOver(order: CarryOrder): CarryOver {
  const child = fork(carrier, { stdio: ['ignore', 'ignore', 'inherit', 'ipc'] });
  const done = new Promise<void>((resolve, reject) => {
    child.on('message', (message: FromCarrier) => {
      if ('done' in message) resolve();
      else reject(new Error(message.problem));
    });
    child.on('error', reject);
    child.on('exit', code => reject(new Error(`unchanged pages could not be taken over (code ${code})`)));
  });
  // Told by whoever waits for it; a build that fails earlier does not wait.
  done.catch(() => undefined);
  child.send(order);
  return { finished: () => done, stop: () => ended(child) };
}
