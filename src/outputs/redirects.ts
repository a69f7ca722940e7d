/** Sending readers on: as pages for hosts that only serve files, and as the tables that other hosts read. */

import { createHash } from 'node:crypto';
import type { MovedFile } from '../core/addresses/movedFiles.ts';
import type { Redirect } from '../core/addresses/publication.ts';
import { htmlText } from './htmlText.ts';
import type { SiteLinks } from './siteLinks.ts';

/**
 * Sends the reader on with the part that the link names, as a host does that answers with a redirect (RFC 9110, 10.2.2): the part stays, unless
 * the new address names one of its own. Refreshing forgets it, and no element of HTML can read it (HTML Standard, shared declarative refresh steps): on a
 * host that only serves files, a reader without scripts comes to the top of the new page. Links to the new page itself find its old parts without scripts,
 * since their names stay at the headings (`oldNames`).
 */
const sendOn =
  "const { to } = document.currentScript.dataset; location.replace(to.includes('#') ? to : to + location.hash);";
const sendOnHash = createHash('sha256').update(sendOn).digest('base64');

/**
 * A page that sends its reader on at once. Search engines take the canonical address; a reader whose browser does not follow finds a link.
 * Without scripts the page refreshes after 0 seconds, the way WCAG 2.2 allows (technique H76).
 */
export function redirectPage({ to }: Redirect, { href, absolute }: SiteLinks): string {
  const link = htmlText(href(to));
  const canonical = htmlText(absolute(to.replace(/#.*$/, '')));
  return `<!DOCTYPE html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>This page has moved</title><meta name="robots" content="noindex"><meta http-equiv="content-security-policy" content="default-src 'none'; script-src 'sha256-${sendOnHash}'"><link rel="canonical" href="${canonical}"><script data-to="${link}">${sendOn}</script><noscript><meta http-equiv="refresh" content="0; url=${link}"></noscript></head><body><main><h1>This page has moved</h1><p>It is now at <a href="${link}">${canonical}</a>.</p></main></body></html>
`;
}

/** Hosts that read the table take no more lines than this (from memory); what is beyond is served by its page. */
const MOST_LINES = 2000;

/** The table `_redirects`: what was renamed first, then short addresses, then files, which are served at their old address anyway. */
export function redirectTable(
  redirects: readonly Redirect[],
  { href }: SiteLinks,
  files: readonly MovedFile[] = [],
): string {
  const isShort = ({ from }: Redirect) => from.startsWith('/go/');
  const inOrder = [
    ...redirects.filter(redirect => !isShort(redirect)),
    ...redirects.filter(isShort),
    ...files,
  ];
  return inOrder
    .slice(0, MOST_LINES)
    .map(({ from, to }) => `${href(from)} ${href(to)} 301\n`)
    .join('');
}

/**
 * The table `_headers`. The policy for scripts and styles is in every page, with the hashes of that page; here is only what a page
 * cannot say for itself: that no other site may frame it (CSP Level 3, 6.4.2: not in a meta element). Two policies both hold.
 */
export function headerTable({ href }: SiteLinks): string {
  return `${href('/')}*
  X-Content-Type-Options: nosniff
  Referrer-Policy: strict-origin-when-cross-origin
  Permissions-Policy: camera=(), geolocation=(), microphone=(), payment=()
  Content-Security-Policy: frame-ancestors 'none'
${href('/assets/')}*
  Cache-Control: public, max-age=31536000, immutable
`;
}
