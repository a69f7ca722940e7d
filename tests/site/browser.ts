/** The Chromium that comes inside a package, for tests that look at pages as a visitor does. */

import { mkdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { type Browser, chromium as playwright } from 'playwright-core';

const root = resolve(import.meta.dirname, '../..');

/** Path of the browser's program. Its files are unpacked once per version, in a folder of their own. */
export async function browserFile(): Promise<string> {
  const manifest = join(root, 'node_modules/@sparticuz/chromium/package.json');
  const { version } = JSON.parse(readFileSync(manifest, 'utf8')) as { version: string };
  const unpacked = join(tmpdir(), `leafdrop-chromium-${version}`);
  mkdirSync(unpacked, { recursive: true });
  const before = process.env.TMPDIR;
  process.env.TMPDIR = unpacked;
  const { default: packaged } = await import('@sparticuz/chromium');
  const executablePath = await packaged.executablePath();
  if (before === undefined) delete process.env.TMPDIR;
  else process.env.TMPDIR = before;
  return executablePath;
}

export async function startBrowser(): Promise<Browser> {
  return playwright.launch({
    executablePath: await browserFile(),
    args: [
      '--no-sandbox',
      '--disable-dev-shm-usage',
      '--disable-gpu',
      '--disable-background-networking',
      '--no-first-run',
    ],
  });
}
