/** The base layout: head, running head, main and foot around every page. */

import type { PublicYard } from '../core/catalogue.ts';
import { dayInWords } from '../core/days.ts';
import { atomPath, changesTitle, jsonFeedPath } from './pages/changes/changes.ts';
import { structuredData } from './parts/structuredData.ts';
import { videosPath } from './addresses/videoPaths.ts';
import { contentPolicy } from './contentPolicy.ts';
import { deferredScript } from './deferredScript.ts';
import { attribute, type Html, html, safeHtml } from './html.ts';
import type { Page, ScriptName } from './page.ts';
import { type Assets, linksOf, type Site } from './site.ts';

type Href = (path: string) => string;

const chapters = [
  { path: '/stock/', name: 'Stock list' },
  { path: '/cultivars/', name: 'Cultivars' },
  { path: '/guides/', name: 'Guides' },
  { path: '/places/', name: 'Places' },
  { path: '/ordering/', name: 'How to order' },
  { path: '/my-place/', name: 'Your place' },
];

/** How a link of the contents stands to the page it is on (WAI-ARIA 1.2, aria-current): it leads to the page, to its chapter, or elsewhere. */
function current(chapter: string, path: string): 'page' | 'true' | null {
  if (path === chapter) return 'page';
  return path.startsWith(chapter) ? 'true' : null;
}

function searchBox(href: Href): Html {
  return html`
    <search class="seek"><form action="${href('/search/')}" method="get">
      <label class="unseen" for="seek">Search cultivars, lots and guides</label>
      <input id="seek" type="search" name="q" autocomplete="off" placeholder="Cultivar, flavour or lot">
      <button type="submit">Search</button>
    </form></search>
  `;
}

function runningHead({ all: { yard, asOf } }: Site, path: string, href: Href): Html {
  const links = chapters.map(
    chapter =>
      html`<li><a href="${href(chapter.path)}"${attribute('aria-current', current(chapter.path, path))}>${chapter.name}</a></li>`,
  );
  return html`
    <header class="head">
      <p class="yard"><a href="${href('/')}"><bdi>${yard.name}</bdi></a></p>
      ${path !== '/search/' && searchBox(href)}
      <nav class="contents" aria-label="Contents">
        <ul>
          ${links}
          <li class="day">As of <time datetime="${asOf}">${dayInWords(asOf)}</time></li>
        </ul>
      </nav>
    </header>
  `;
}

function contact({ name, contact: { email, phone, post } }: PublicYard): Html {
  return html`
    <p>
      ${post ?? name}.
      ${email ? html`<a href="mailto:${email}">${email}</a>` : null}
      ${phone ? html`<span>${phone}</span>` : null}
    </p>
  `;
}

function foot({ all: { yard, asOf, videos } }: Site, href: Href): Html {
  return html`
    <footer class="foot">
      <div class="foot-rule">
        ${contact(yard)}
        <p>What this catalogue says was worked out on ${dayInWords(asOf)} from what was seen in the yard until then.</p>
        <ul>
          <li><a href="${href('/ordering/')}">How to order</a></li>
          <li><a href="${href('/changes/')}">What changed</a></li>
          ${videos.length > 0 && html`<li><a href="${href(videosPath)}">Videos</a></li>`}
          <li><a href="${href('/climates/')}">Kinds of climate</a></li>
          <li><a href="${href('/how-we-know/')}">How we know</a></li>
          <li><a href="${href('/stock.json')}">Stock as data</a></li>
          <li><a href="${href('/cultivars.json')}">Cultivars as data</a></li>
          <li><a href="${href('/places.json')}">Places as data</a></li>
          <li><a href="${href('/notices.txt')}">Notices</a></li>
        </ul>
      </div>
    </footer>
  `;
}

function feedLinks(href: Href): Html {
  return html`
    <link rel="alternate" type="application/atom+xml" title="${changesTitle}" href="${href(atomPath)}">
    <link rel="alternate" type="application/feed+json" title="${changesTitle}" href="${href(jsonFeedPath)}">
  `;
}

function stylesheets({ styles }: Page, assets: Assets): Html[] {
  return [...(styles ?? []), 'site' as const].map(
    name =>
      html`<link rel="stylesheet"${attribute('media', name.endsWith('Print') && 'print')} href="${assets.styles[name]}">`,
  );
}

/** Scripts without which a page can be read: asked for once all else is there. At most one stands on a page. */
const deferred: readonly ScriptName[] = ['speak', 'follow', 'speakAndFollow'];

function scriptsOf({ scripts = [] }: Page, assets: Assets): Html[] {
  return scripts.map(name => {
    const src = assets.scripts[name];
    return deferred.includes(name)
      ? html`<script type="module" data-src="${src}">${safeHtml(deferredScript)}</script>`
      : html`<script type="module" src="${src}"></script>`;
  });
}

/** The whole document of a page. */
export function documentOf(page: Page, site: Site): string {
  const { title, description, path, canonical = path } = page;
  const { name, tagline } = site.all.yard;
  const { href, absolute } = linksOf(site);
  /** Where the running head says we are: a page two folders deep stands in its chapter like all its neighbors. */
  const place = (path ?? '').replace(/^(\/[^/]+\/)[^/]+\/.*$/, '$1-');
  return html`<!DOCTYPE html><html lang="en"><head>
      <meta charset="utf-8">
      <meta name="viewport" content="width=device-width, initial-scale=1">
      <meta http-equiv="content-security-policy" content="${contentPolicy}">
      <title>${title === null ? `${name}: ${tagline}` : `${title} · ${name}`}</title>
      <meta name="description" content="${description}">
      ${page.unlisted === true && html`<meta name="robots" content="noindex">`}
      ${canonical !== null && html`<link rel="canonical" href="${absolute(canonical)}">`}
      ${page.feeds === true && feedLinks(href)}
      <link rel="icon" href="${href('/favicon.svg')}" type="image/svg+xml">
      ${stylesheets(page, site.assets)}
      ${scriptsOf(page, site.assets)}
    </head><body>
      <a class="skip" href="#main">Skip to the content</a>
      ${runningHead(site, place, href)}
      <main class="page" id="main" tabindex="-1">${page.main}</main>
      ${foot(site, href)}
      ${structuredData(page.things ?? [])}
    </body></html>
  `.html;
}
