/** What an address of the site looks like in the list. */

import { pageOf } from './ledger.ts';

/** A page: words between slashes, with a slash at the end, or a file of an older site that ends in .html. */
const pagePattern = /^\/(?:[A-Za-z0-9._~-]+\/)*(?:[A-Za-z0-9._~-]+\.html)?$/;
/** The signs a part's name may have (RFC 3986, 3.5) that also need no quotes in a table. */
const partPattern = /^#(?:[A-Za-z0-9._~!$&'()*+=:@/?-]|%[0-9A-F]{2})+$/;
/** A folder named `.` or `..` would lead out of the site when the page is written. */
const dotFolder = /\/\.{1,2}(?:\/|$)/;

/**
 * Signs of an address at most, and of a name between two slashes. Disks take names of 255 bytes, and whole paths of as few as 1024 (NAME_MAX and
 * PATH_MAX in limits.h of Linux and macOS); an address stands below the folder of the site. Those of the program have far fewer.
 */
export const longestAddress = 500;
export const longestName = 200;

/** Whether an address has more signs than a disk takes for the page that stands there. */
export function isTooLong(text: string): boolean {
  return (
    text.length > longestAddress ||
    pageOf(text)
      .split('/')
      .some(name => name.length > longestName)
  );
}

/** Whether a text is an address of a page, or of a part of one, from the root of the site. */
export function isAddress(text: string): boolean {
  if (isTooLong(text)) return false;
  const page = pageOf(text);
  const part = text.slice(page.length);
  return pagePattern.test(page) && !dotFolder.test(page) && (part === '' || partPattern.test(part));
}

/** The address most likely meant by a text that is none; null when there is no telling. */
export function likelyAddress(text: string): string | null {
  const path = text
    .trim()
    .replace(/^[a-z]+:\/\/[^/]+/i, '')
    .replace(/\?[^#]*/, '')
    .replace(/\/{2,}/g, '/');
  const [page = '', part] = path.split('#', 2);
  const closed = /(?:\/|\.html)$/.test(page) ? page : `${page}/`;
  const whole = `${closed.startsWith('/') ? '' : '/'}${closed}${part ? `#${part}` : ''}`;
  return whole !== text && isAddress(whole) ? whole : null;
}
