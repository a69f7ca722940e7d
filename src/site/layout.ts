/** The base layout: head, running head, main and foot around every page. */

import { metricFirst } from '../core/unitOrder.ts';
import { cardPath } from './addresses/paths.ts';
import { contentPolicy } from './contentPolicy.ts';
import { deferredScript } from './deferredScript.ts';
import { attribute, type Html, html, safeHtml } from './html.ts';
import { CARD_HEIGHT, CARD_WIDTH, type Page, siteManifestPath } from './page.ts';
import { atomPath, changesTitle, jsonFeedPath } from './pages/changes/changes.ts';
import { walkIconPath } from './pages/walk/paths.ts';
import { foot } from './parts/foot.ts';
import { listedCultivars } from './parts/raised.ts';
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

function stylesheets({ styles = [], sheet }: Page, assets: Assets): Html[] {
  return [...styles, sheet ?? ('site' as const)].map(
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

/** How a link to the page looks where it is shared: ogp.me. Nothing for the page that stands in for missing ones. */
function socialCard({ title, description, path, canonical, card }: Page, site: Site): Html | false {
  const { name, tagline } = site.all.yard;
  const { absolute } = linksOf(site);
  if (path === null) return false;
  const { name: picture, alt } = card ?? { name: 'site', alt: `A fruit of ${name}, drawn whole and cut` };
  const image =
    listedCultivars(site.all).length > 0 &&
    html`
    <meta property="og:image" content="${absolute(cardPath(picture))}">
    <meta property="og:image:width" content="${CARD_WIDTH}">
    <meta property="og:image:height" content="${CARD_HEIGHT}">
    <meta property="og:image:alt" content="${alt}">
    <meta name="twitter:card" content="summary_large_image">
  `;
  return html`
    <meta property="og:type" content="website">
    <meta property="og:site_name" content="${name}">
    <meta property="og:title" content="${title ?? `${name}: ${tagline}`}">
    <meta property="og:description" content="${description}">
    <meta property="og:url" content="${absolute(canonical ?? path)}">
    ${image}
  `;
}

/** The whole document of a page. */
export function documentOf(page: Page, site: Site): string {
  const { title, description, path, canonical = path } = page;
  const { name, tagline } = site.all.yard;
  const { href, absolute } = linksOf(site);
  const forVisitors = page.forGrower !== true;
  const { language } = site.all.yard;
  const metric = page.units === 'metric' || language === 'en-GB';
  const document = html`<!DOCTYPE html><html lang="${language}"><head>
      <meta charset="utf-8">
      <meta name="viewport" content="width=device-width, initial-scale=1">
      <meta http-equiv="content-security-policy" content="${contentPolicy}">
      <title>${title === null ? `${name}: ${tagline}` : `${title} · ${name}`}</title>
      <meta name="description" content="${description}">
      ${page.unlisted === true && html`<meta name="robots" content="noindex">`}
      ${site.preview && page.unlisted !== true && html`<meta name="robots" content="noindex, nofollow">`}
      ${canonical !== null && html`<link rel="canonical" href="${absolute(canonical)}">`}
      ${socialCard(page, site)}
      <link rel="manifest" href="${href(page.manifest ?? siteManifestPath)}">
      ${page.feeds === true && feedLinks(href)}
      <link rel="icon" href="${href('/favicon.svg')}" type="image/svg+xml">
      <link rel="apple-touch-icon" href="${href(walkIconPath(192))}">
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
