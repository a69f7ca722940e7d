/** Where links in the grower's text lead. */

export type LinkTarget =
  /** Another site, or a mail address. */
  | { kind: 'outer' }
  | {
      kind: 'inner';
      /** From the root of the site: `/guides/first-winter/`. Ends with a slash unless it is a file. */
      path: string;
      /** The named part, without `#`; '' for the whole page. */
      part: string;
      /** With its `?`; '' where there is none. */
      query: string;
    }
  /** Never published: another kind of address, or another site in disguise. */
  | { kind: 'refused' };

/** Browsers drop tabs and line breaks from an address and read a backslash as a slash, so neither may hide what comes behind it. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for.
const disguised = /[\u0000-\u001f\u007f\\]/;
const web = /^https?:\/\/[^/?#]/i;
const scheme = /^[^/?#]*:/;
/** Stands for the site while an address is put together (RFC 2606: never in use). */
const standIn = 'https://site.invalid';

/** Where an address leads from a page of this site, such as `/cultivars/bellwether/`. */
export function linkTarget(address: string, page: string): LinkTarget {
  const url = address.trim();
  if (disguised.test(url) || url.startsWith('//')) return { kind: 'refused' };
  if (/^mailto:[^@\s]+@[^@\s]+$/i.test(url)) return { kind: 'outer' };
  if (web.test(url)) return URL.canParse(url) ? { kind: 'outer' } : { kind: 'refused' };
  if (scheme.test(url) || !URL.canParse(url, standIn + page)) return { kind: 'refused' };
  const found = new URL(url, standIn + page);
  if (found.origin !== standIn) return { kind: 'refused' };
  return {
    kind: 'inner',
    path: withSlash(found.pathname),
    part: found.hash.slice(1),
    query: found.search,
  };
}

/** Pages end with a slash; without it a plain host has to send the reader on, and some do not. */
function withSlash(path: string): string {
  const last = path.slice(path.lastIndexOf('/') + 1);
  return last === '' || last.includes('.') ? path : `${path}/`;
}

/**
 * The address as it is written on a page of a site below a base path, which `link` puts in front. Null for one that is never published.
 */
export function publishedAddress(
  address: string,
  page: string,
  link: (path: string) => string,
): string | null {
  const target = linkTarget(address, page);
  if (target.kind === 'refused') return null;
  if (target.kind === 'outer') return address.trim();
  const part = target.part === '' ? '' : `#${target.part}`;
  // A guide is shown on many pages, and its own parts are on each of them.
  if (address.trim().startsWith('#')) return part || '#';
  return `${link(target.path)}${target.query}${part}`;
}
