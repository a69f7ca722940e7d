/** Asks a server for every page of a built site and every address they name, and tells what is not right. */

import { pathOfFile } from '../src/build/finishedSite.ts';

export interface CrawlRequest {
  /** Origin of the server, such as http://127.0.0.1:4321. */
  origin: string;
  /** Path the site is served below, with slashes at both ends. */
  base: string;
  /** The site's own address, such as https://trees.example. */
  address: string;
  /** Files of the site, from its root. */
  files: readonly string[];
}

interface Named {
  /** Path of the page that names it, with the base. */
  page: string;
  /** What it names, as an address below the origin; fragments included. */
  target: URL;
}

interface Answer {
  ok: boolean;
  ids: ReadonlySet<string>;
}

const atOnce = 8;
const pageLinks = /\s(?:href|src|action)="([^"]*)"/g;
const sourceSets = /\ssrcset="([^"]*)"/g;
const refresh = /<meta http-equiv="refresh" content="0; url=([^"]*)"/g;
const styleUrls = /url\(\s*["']?([^"')]+)["']?\s*\)/g;
const partNames = /\sid="([^"]*)"/g;
const canonical = /<link rel="canonical" href="([^"]*)"/;
const sitemapAddress = /<loc>([^<]*)<\/loc>/g;

const matches = (text: string, pattern: RegExp) => [...text.matchAll(pattern)].map(([, found]) => found!);
const plain = (text: string) => text.replaceAll('&amp;', '&').replaceAll('&#38;', '&');

function namedIn(path: string, kind: string, text: string): string[] {
  if (kind.includes('html')) {
    const sets = matches(text, sourceSets).flatMap(set =>
      set.split(',').map(one => one.trim().split(/\s/)[0]!),
    );
    const canonicals = canonical.exec(text)?.[1];
    return [...matches(text, pageLinks), ...sets, ...matches(text, refresh)]
      .map(plain)
      .filter(target => target !== canonicals);
  }
  if (kind.includes('css')) return matches(text, styleUrls);
  return path.endsWith('.xml') ? matches(text, sitemapAddress).map(plain) : [];
}

/** Runs a step for each item, a few at once, also for those that the steps add. */
async function forEach<T>(queue: T[], step: (item: T) => Promise<void>): Promise<void> {
  let at = 0;
  let busy = 0;
  await new Promise<void>((done, fail) => {
    const next = () => {
      if (at >= queue.length && busy === 0) done();
      while (busy < atOnce && at < queue.length) {
        busy += 1;
        step(queue[at++]!).then(() => {
          busy -= 1;
          next();
        }, fail);
      }
    };
    next();
  });
}

/** Every fault of the served site, as sentences in the order of the pages; none when all is well. */
export async function crawlFaults({ origin, base, address, files }: CrawlRequest): Promise<string[]> {
  const faults = new Set<string>();
  const answers = new Map<string, Answer>();
  const named: Named[] = [];
  const queue = files.map(file => base + (pathOfFile(file)?.slice(1) ?? file));
  const asked = new Set(queue);
  const own = new URL(address).origin;
  const belowBase = address.replace(/\/$/, '') + base;

  const lookAt = (path: string, kind: string, text: string) => {
    const says = canonical.exec(text)?.[1];
    if (kind.includes('html') && says !== undefined && !plain(says).startsWith(belowBase)) {
      faults.add(
        `${path} says that its address is ${says}, not one below ${belowBase}: see address in yard.yaml`,
      );
    }
    for (const text_ of namedIn(path, kind, text)) {
      if (/^(?:mailto|tel|data|webcal|sms|geo):/.test(text_)) continue;
      if (!URL.canParse(text_, origin + path)) {
        faults.add(`${path} has a link that is no address: ${text_}`);
        continue;
      }
      const target = new URL(text_, origin + path);
      if (target.origin !== origin && target.origin !== own) continue;
      const below = new URL(target.pathname + target.hash, origin);
      if (!below.pathname.startsWith(base)) {
        faults.add(`${path} links to ${target.pathname}, outside ${base}`);
        continue;
      }
      named.push({ page: path, target: below });
      if (!asked.has(below.pathname)) {
        asked.add(below.pathname);
        queue.push(below.pathname);
      }
    }
  };

  await forEach(queue, async path => {
    const answer = await fetch(origin + path);
    const kind = answer.headers.get('content-type') ?? '';
    const text = await answer.text();
    const readable = answer.ok && /html|css|xml/.test(kind);
    answers.set(path, { ok: answer.ok, ids: new Set(readable ? matches(text, partNames).map(plain) : []) });
    if (readable) lookAt(path, kind, text);
  });

  for (const file of files) {
    const path = base + (pathOfFile(file)?.slice(1) ?? file);
    if (!answers.get(path)?.ok) faults.add(`${path} was built but is not served`);
  }
  for (const { page, target } of named) {
    const { ok, ids } = answers.get(target.pathname)!;
    const part = decodeURIComponent(target.hash.slice(1));
    if (!ok) faults.add(`${page} links to ${target.pathname}, which is not there`);
    else if (part !== '' && !part.startsWith(':~:') && !ids.has(part)) {
      faults.add(`${page} links to ${target.pathname}#${part}, and that page has no such part`);
    }
  }
  const missing = await fetch(`${origin}${base}no-such-page-${files.length}/`);
  const stands = await missing.text();
  if (missing.status !== 404)
    faults.add(`an address that does not exist is answered with ${missing.status}, not with 404`);
  else if (!stands.includes(`href="${base}"`))
    faults.add('the page for missing addresses does not lead to the first page');
  return [...faults].sort();
}
