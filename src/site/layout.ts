/** The base layout: head, running head, main and foot around every page. */

import { contentPolicy } from './contentPolicy.ts';
import { deferredScript } from './deferredScript.ts';
import { attribute, type Html, html, safeHtml } from './html.ts';
import type { Page, ScriptName } from './page.ts';
import { atomPath, changesTitle, jsonFeedPath } from './pages/changes/changes.ts';
import { foot } from './parts/foot.ts';
import { runningHead } from './parts/runningHead.ts';
import { structuredData } from './parts/structuredData.ts';
import { type Assets, linksOf, type Site } from './site.ts';

type Href = (path: string) => string;

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
  return html`<!DOCTYPE html><html lang="en"><head>
      <meta charset="utf-8">
      <meta name="viewport" content="width=device-width, initial-scale=1">
      <meta http-equiv="content-security-policy" content="${contentPolicy}">
      <title>${title === null ? `${name}: ${tagline}` : `${title} · ${name}`}</title>
      <meta name="description" content="${description}">
      ${page.unlisted === true && html`<meta name="robots" content="noindex">`}
      ${canonical !== null && html`<link rel="canonical" href="${absolute(canonical)}">`}
      ${page.manifest !== undefined && html`<link rel="manifest" href="${href(page.manifest)}">`}
      ${page.feeds === true && feedLinks(href)}
      <link rel="icon" href="${href('/favicon.svg')}" type="image/svg+xml">
      ${stylesheets(page, site.assets)}
      ${scriptsOf(page, site.assets)}
    </head><body>
      <a class="skip" href="#main">Skip to the content</a>
      ${runningHead(site.all, path, href)}
      <main class="page" id="main" tabindex="-1">${page.main}</main>
      ${foot(site.all, href)}
      ${structuredData(page.things ?? [])}
    </body></html>
  `.html;
}
