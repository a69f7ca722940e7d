/** Serves a folder as a static host does: compressed text, long life for files with a hash in their names, 404.html for what is missing. */

import { createReadStream, readFileSync, statSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize } from 'node:path';
import { brotliCompressSync, constants, gzipSync } from 'node:zlib';

const types: Readonly<Record<string, string>> = {
  '.avif': 'image/avif',
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.ics': 'text/calendar; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
  '.webp': 'image/webp',
  '.woff2': 'font/woff2',
  '.xml': 'application/xml; charset=utf-8',
};
const compressible = /^(?:text|application\/(?:json|xml)|image\/svg)/;

/** What hosts choose for files they compress once: 5 is the usual level for Brotli on the fly. */
const brotliLevel = { params: { [constants.BROTLI_PARAM_QUALITY]: 5 } };

export interface Host {
  /** Address of the home page. */
  address: string;
  stop: () => void;
}

function fileAt(folder: string, path: string): string | null {
  const asked = join(folder, normalize(decodeURIComponent(path)));
  for (const file of [asked, join(asked, 'index.html')]) {
    if (statSync(file, { throwIfNoEntry: false })?.isFile()) return file;
  }
  return null;
}

/** Serves the folder at the root of a free port of this machine. */
export async function host(folder: string): Promise<Host> {
  const server = createServer((request, response) => {
    const found = fileAt(folder, new URL(request.url ?? '/', 'http://host').pathname);
    const file = found ?? join(folder, '404.html');
    const type = types[extname(file)] ?? 'application/octet-stream';
    response.statusCode = found === null ? 404 : 200;
    response.setHeader('content-type', type);
    const lasting = /\/(?:assets|photos)\//.test(file);
    response.setHeader(
      'cache-control',
      lasting ? 'public, max-age=31536000, immutable' : 'public, max-age=600',
    );
    const accepted = String(request.headers['accept-encoding'] ?? '');
    if (!compressible.test(type)) {
      createReadStream(file).pipe(response);
    } else if (accepted.includes('br')) {
      response.setHeader('content-encoding', 'br');
      response.end(brotliCompressSync(readFileSync(file), brotliLevel));
    } else if (accepted.includes('gzip')) {
      response.setHeader('content-encoding', 'gzip');
      response.end(gzipSync(readFileSync(file)));
    } else {
      createReadStream(file).pipe(response);
    }
  });
  await new Promise<void>(listening => server.listen(0, '127.0.0.1', listening));
  const { port } = server.address() as AddressInfo;
  return {
    address: `http://127.0.0.1:${port}/`,
    stop: () => {
      server.close();
      server.closeAllConnections();
    },
  };
}
