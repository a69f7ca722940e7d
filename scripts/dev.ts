/** `npm run dev`: serves the site while it is worked on. */

import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { dev } from 'astro';
import { devServer } from '../src/build/devServer.ts';
import { basePath } from './basePath.ts';
import { readFlags, runIfMain } from './command.ts';
import { portOf } from './port.ts';

const help = `Serves the site while you work on its records or its program: each page is made when it is asked for, and the browser reloads it
when something has changed. Nothing is published, and nothing is searched for what is private.

  npm run dev
  npm run dev -- --as-of 2026-11-25 --port 4400 --base /orchard/
`;

const root = dirname(dirname(fileURLToPath(import.meta.url)));

async function main(words: string[]): Promise<number> {
  const { values } = readFlags(words, help, {
    'as-of': { type: 'string' },
    base: { type: 'string' },
    port: { type: 'string' },
  });
  const base = basePath(values.base);
  const server = await dev({
    root,
    base,
    server: { host: '127.0.0.1', port: portOf(values.port) },
    integrations: [devServer({ base, asOf: values['as-of'] })],
  });
  process.stdout.write(`The site is at http://127.0.0.1:${server.address.port}${base}  (Ctrl+C stops it)\n`);
  await new Promise(() => {});
  return 0;
}

await runIfMain(import.meta, main);
