/** The base layout: head, running head, main and foot around every page. */

import { metricFirst } from '../core/unitOrder.ts';
import { contentPolicy } from './contentPolicy.ts';
import { deferredScript } from './deferredScript.ts';
import { attribute, type Html, html, safeHtml } from './html.ts';
import type { Page } from './page.ts';
import { atomPath, changesTitle, jsonFeedPath } from './pages/changes/changes.ts';
import { foot } from './parts/foot.ts';
import { runningHead } from './parts/runningHead.ts';
import { structuredData } from './parts/structuredData.ts';
import { placeKey } from './placeKey.ts';
import { type Assets, linksOf, type Site } from './site.ts';
import { inLanguageOf } from './words/language.ts';

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

/** The letters of the first view, asked for together with the styles that name them. */
function fontPreloads({ fonts }: Assets): Html[] {
  return fonts.map(file => html`<link rel="preload" href="${file}" as="font" type="font/woff2" crossorigin>`);
}

/** Those that a page asks for, and the one by which every page follows the visitor's place: asked for once all else is there. */
function scriptsOf({ scripts = [] }: Page, { assets, base }: Site, forVisitors: boolean): Html {
  const place = html`
    <script type="module" data-src="${assets.scripts.place}" data-key="${placeKey(base)}">${safeHtml(deferredScript)}</script>
  `;
  return html`
    ${scripts.map(name => html`<script type="module" src="${assets.scripts[name]}"></script>`)}
    ${forVisitors && place}
  `;
}

/** The whole document of a page. */
export function documentOf(page: Page, site: Site): string {
  const { title, description, path, canonical = path } = page;
  const { name, tagline } = site.all.yard;
  const { href, absolute } = linksOf(site);
  const forVisitors = page.forGrower !== true;
  const { language } = site.all.yard;
  const metric = page.units === \'metric\' || language === \'en-GB\';
  const document = html`<!DOCTYPE html><html lang="${language}"><head>
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
      ${fontPreloads(site.assets)}
      ${stylesheets(page, site.assets)}
      ${scriptsOf(page, site, forVisitors)}
    </head><body>
      <a class="skip" href="#main">Skip to the content</a>
      ${runningHead(site.all, path, href, forVisitors)}
      <main class="page" id="main" tabindex="-1">${metric ? safeHtml(metricFirst(page.main.html)) : page.main}</main>
      ${foot(site.all, href)}
      ${structuredData(page.things ?? [])}
    </body></html>
  `.html;
  return inLanguageOf(site.all, document);
}
