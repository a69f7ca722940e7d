/** Serves a built site on this machine. */

import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { preview } from 'astro';

const root = dirname(dirname(fileURLToPath(import.meta.url)));

export interface ServedSite {
  /** Address of the home page, with the base path. */
  address: string;
  stop: () => Promise<void>;
  /** Settles when the server has stopped. */
  closed: () => Promise<void>;
}

/** Serves a folder below a base path on the first free port from `port` up (0: any). */
export async function serve(folder: string, base: string, port: number): Promise<ServedSite> {
  const server = await preview({
    root,
    base,
    outDir: folder,
    logLevel: 'error',
    server: { host: '127.0.0.1', port },
  });
  return {
    address: `http://127.0.0.1:${server.port}${base}`,
    stop: () => server.stop(),
    closed: () => server.closed(),
  };
}
