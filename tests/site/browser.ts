/** The Chromium that comes inside a package, for tests that look at pages as a visitor does. */

import { existsSync, mkdtempSync, readFileSync, renameSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { type Browser, chromium as playwright } from 'playwright-core';

const root = resolve(import.meta.dirname, '../..');

/** Unpacks the browser's files into a folder. */
async function unpackInto(folder: string): Promise<void> {
  const before = process.env.TMPDIR;
  process.env.TMPDIR = folder;
  try {
    const { default: packaged } = await import('@sparticuz/chromium');
    await packaged.executablePath();
  } finally {
    if (before === undefined) delete process.env.TMPDIR;
    else process.env.TMPDIR = before;
  }
}

/**
 * Path of the browser's program. Its files are unpacked once per version, aside, and then put in place as a whole: several tests begin
 * at one time, and a program that is still being written cannot be run.
 */
export async function browserFile(): Promise<string> {
  const manifest = join(root, 'node_modules/@sparticuz/chromium/package.json');
  const { version } = JSON.parse(readFileSync(manifest, 'utf8')) as { version: string };
  const folder = join(tmpdir(), `leafdrop-browser-${version}`);
  const program = join(folder, 'chromium');
  if (existsSync(program)) return program;
  const aside = mkdtempSync(`${folder}-`);
  await unpackInto(aside);
  try {
    renameSync(aside, folder);
  } catch (problem) {
    // Another was quicker.
    if (!existsSync(program)) throw problem;
    rmSync(aside, { recursive: true, force: true });
  }
  return program;
}

/** How long a page may take for what a test waits for. No measure of speed: it only ends what hangs. */
const patienceMs = 300_000;

export async function startBrowser(): Promise<Browser> {
  const browser = await playwright.launch({
    executablePath: await browserFile(),
    timeout: patienceMs,
    args: [
      '--no-sandbox',
      '--disable-dev-shm-usage',
      '--disable-gpu',
      '--disable-background-networking',
      '--no-first-run',
    ],
  });
  // Pages made without a context of their own get one by this method too.
  const newContext = browser.newContext.bind(browser);
  browser.newContext = async options => {
    const context = await newContext(options);
    context.setDefaultTimeout(patienceMs);
    return context;
  };
  return browser;
}
