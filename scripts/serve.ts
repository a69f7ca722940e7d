/** Serves a built site on this machine. */

import { existsSync } from 'node:fs';
import type { IncomingMessage, Server, ServerResponse } from 'node:http';
import { dirname, join } from 'node:path';
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

/** The address with its last slash of a page that was asked for without it; null for anything else. The question behind it stays. */
export function closedAddress(asked: string, base: string, isPage: (path: string) => boolean): string | null {
  const [path = '', ...question] = asked.split(/(?=\?)/);
  if (path.endsWith('/') || !`${path}/`.startsWith(base) || !URL.canParse(path, 'http://localhost'))
    return null;
  let below: string;
  try {
    below = decodeURIComponent(`${path}/`.slice(base.length));
  } catch {
    return null;
  }
  if (below.split('/').includes('..') || !isPage(below)) return null;
  return `${path}/${question.join('')}`;
}

/** Answers what lacks its last slash as hosts of plain files do, and leaves the rest to the server. */
function closeAddresses(server: Server, folder: string, base: string): void {
  const answers = server.listeners('request') as ((asked: IncomingMessage, answer: ServerResponse) => void)[];
  server.removeAllListeners('request');
  server.on('request', (asked: IncomingMessage, answer: ServerResponse) => {
    const to = closedAddress(asked.url ?? '', base, path => existsSync(join(folder, path, 'index.html')));
    if (to === null) {
      for (const each of answers) each.call(server, asked, answer);
    } else answer.writeHead(301, { location: to }).end();
  });
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
  // The preview server's own type leaves it out.
  closeAddresses((server as unknown as { server: Server }).server, folder, base);
  return {
    address: `http://127.0.0.1:${server.port}${base}`,
    stop: () => server.stop(),
    closed: () => server.closed(),
  };
}
