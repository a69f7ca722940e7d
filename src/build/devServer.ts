/**
 * The development server: the site generator's own, which answers with the routes of the site, makes each page when it is asked for, and reloads
 * the browser when a source or a file of the content has changed. Pages that a yard adds itself are left to the generator.
 */

import { extname } from 'node:path';
import type { AstroIntegration } from 'astro';
import { contentDir } from '../content.ts';

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.avif': 'image/avif',
  '.webp': 'image/webp',
  '.jpg': 'image/jpeg',
  '.ics': 'text/calendar; charset=utf-8',
  '.atom': 'application/atom+xml',
  '.txt': 'text/plain; charset=utf-8',
};

/** The file that an address stands for, below the output folder; null for one outside of the base path. */
function fileOfAddress(address: string, base: string): string | null {
  const path = address.replace(/[?#].*$/, '');
  if (!path.startsWith(base)) return null;
  const below = path.slice(base.length);
  try {
    return decodeURIComponent(below === '' || below.endsWith('/') ? `${below}index.html` : below);
  } catch {
    return null;
  }
}

/** A page that the browser reloads by itself. */
function reloading(html: string, base: string): string {
  return html.replace('</head>', `<script type="module" src="${base}@vite/client"></script></head>`);
}

export function devServer({ base, asOf }: { base: string; asOf: string | undefined }): AstroIntegration {
  return {
    name: 'leafdrop-dev-server',
    hooks: {
      'astro:server:setup'({ server }) {
        const content = contentDir();
        let contentVersion = 0;
        server.watcher.add(content);
        server.watcher.on('all', (_, path) => {
          if (!path.startsWith(content)) return;
          contentVersion += 1;
          server.ws.send({ type: 'full-reload' });
        });
        server.middlewares.use(async (request, response, next) => {
          try {
            // The address as it was asked for: the server takes the base path away before it hands a request on.
            const file = fileOfAddress(request.originalUrl ?? request.url ?? '', base);
            const { devAnswer } = await server.ssrLoadModule('/src/build/devPages.ts');
            const answer = file === null ? null : await devAnswer({ file, base, asOf, contentVersion });
            if (answer === null) return next();
            const isPage = file!.endsWith('.html');
            response.writeHead(answer.status, {
              'content-type': answer.status === 200 ? types[extname(file!)] : types['.html'],
            });
            response.end(isPage ? reloading(answer.bytes.toString('utf8'), base) : answer.bytes);
          } catch (problem) {
            next(problem);
          }
        });
      },
    },
  };
}
