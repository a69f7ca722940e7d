/**
 * Which pages need not be rendered again. Every page that can be reused has a key: the hash of all it shows. A build that finds the key
 * of the page it published before leaves the page out of the generator's work and takes the file that is there.
 *
 * The plan is kept on the process: the build command makes it and the pages, in the generator's own module graph, ask it.
 */

import { createHash } from 'node:crypto';
import type { Catalogue } from './core/catalogue.ts';

/** Key of a page by its file below the output folder, such as `lots/26-layer-01/index.html`. */
export type PageKeys = ReadonlyMap<string, string>;

interface Plan {
  /** Hash of what every page rests on: the program, the day, the address, and the catalogue but for stock. */
  ground: string;
  /** What was published before and may be taken again. */
  before: PageKeys;
  /** What the pages of this build show. */
  now: Map<string, string>;
  /** Pages that come from elsewhere and are not rendered: printed by the press, or carried over from the site before. */
  leftOut: ReadonlySet<string>;
  /** Whether the press is at work, and needs its moulds rendered. */
  moulds: boolean;
}

const holder = globalThis as typeof globalThis & { leafdropPagePlan?: Plan };

/** Maps and sets by what is in them, which JSON would leave out. */
function withContents(_key: string, value: unknown): unknown {
  return value instanceof Map || value instanceof Set ? [value.constructor.name, ...value] : value;
}

/** Hash of texts and plain data, maps and sets included: the same for equal data, however it came about. */
export function hashOf(...data: unknown[]): string {
  const hash = createHash('sha256');
  for (const datum of data) {
    const text = typeof datum === 'string' ? datum : JSON.stringify(datum, withContents);
    hash.update(`${typeof datum} ${text?.length} `).update(text ?? '');
  }
  return hash.digest('base64url').slice(0, 32);
}

/**
 * The catalogue without what changes with stock, and without the climates, which follow from the places. Whatever is added to the catalogue counts as ground until somebody says otherwise here,
 * so that forgetting costs time and never shows an old page.
 */
export function groundOf(all: Catalogue): unknown {
  const { lots: _lots, cultivars: _cultivars, codes: _codes, climates: _climates, ...ground } = all;
  return ground;
}

/** Starts a build: what all its pages rest on, and the pages that were published before. */
export function planPages(
  ground: string,
  before: PageKeys,
  { leftOut = new Set(), moulds = false }: Partial<Pick<Plan, 'leftOut' | 'moulds'>> = {},
): void {
  holder.leafdropPagePlan = { ground, before, now: new Map(), leftOut, moulds };
}

/** Whether the press is at work in this build, and needs its moulds rendered. */
export function needsMoulds(): boolean {
  return holder.leafdropPagePlan?.moulds ?? false;
}

/** Whether a file of this build comes from elsewhere and is not rendered. */
export function isLeftOut(file: string): boolean {
  return holder.leafdropPagePlan?.leftOut.has(file) ?? false;
}

/** Key of a page that shows this. */
export function pageKey(ground: string, file: string, shows: string): string {
  return hashOf(ground, file, shows);
}

/** Keys of the reusable pages of this build, those that were left out included. */
export function plannedKeys(): PageKeys {
  return holder.leafdropPagePlan?.now ?? new Map();
}

/** Whether a page of this build is the one that was published before. */
export function isReused(file: string): boolean {
  const { leafdropPagePlan: plan } = holder;
  const before = plan?.before.get(file);
  return before !== undefined && before === plan?.now.get(file);
}

/**
 * Those of a route's pages that have to be rendered: not those that come from elsewhere, nor those that were published before and show the same.
 * `shownBy` tells the file of a page below the output folder and how to have a text that differs whenever the page shows something else,
 * beyond the ground that all pages share. Without a plan, all of them.
 */
export function changedOnly<P>(pages: P[], shownBy: (page: P) => { file: string; shows: () => string }): P[] {
  const plan = holder.leafdropPagePlan;
  if (plan === undefined) return pages;
  return pages.filter(page => {
    const { file, shows } = shownBy(page);
    if (plan.leftOut.has(file)) return false;
    plan.now.set(file, pageKey(plan.ground, file, shows()));
    return !isReused(file);
  });
}
