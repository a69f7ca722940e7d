/** Where the tests' built sites are, and ways to look into them. */

import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';

const root = resolve(import.meta.dirname, '../..');

export const builtSites = {
  atRoot: { folder: join(root, '.build/test-root'), base: '/' },
  belowBase: { folder: join(root, '.build/test-base'), base: '/orchard/' },
} as const;

/** Paths of all files of a built site, sorted. */
export function filesOf(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter(entry => entry.isFile())
    .map(entry => relative(folder, join(entry.parentPath, entry.name)))
    .sort();
}

/** The HTML pages of a built site. */
export function pagesOf(folder: string): string[] {
  return filesOf(folder).filter(path => path.endsWith('.html') && !path.startsWith('pagefind/'));
}

export function readText(folder: string, path: string): string {
  return readFileSync(join(folder, path), 'utf8');
}

/** Whether a page only leads its reader on to another. */
export function leadsOn(html: string): boolean {
  return html.includes('<meta http-equiv="refresh"');
}
