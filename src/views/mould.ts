/**
 * Moulds: a page of a kind rendered once with marks where its pages differ. Pouring a page written as text into its mould gives, byte for byte,
 * what the site generator would have rendered, for a small part of the cost.
 */

import { htmlText } from '../outputs/htmlText.ts';
import type { SiteLinks } from '../outputs/siteLinks.ts';
import { structuredData } from '../site/parts/structuredData.ts';
import type { PageText } from './pageText.ts';

/** Last part of the address of a mould, where a page has the id of its record. Ids have no underscore, so no record can take it. */
export const mouldId = 'mould_';

const titleMark = 'leafdrop_title_mark';
const descriptionMark = 'leafdrop_description_mark';
const mainMark = '<hr data-mark="leafdrop_main_mark">';
const thingsMark = { '@type': 'Thing', name: 'leafdrop_things_mark' } as const;

/** Kinds of pages that can be poured, by the folder they lie in. */
export const mouldKinds = ['lots', 'cultivars', 'guides'] as const;
export type PouredKind = (typeof mouldKinds)[number];

/** Folder of a mould below the output folder; what is in it is no page and has to be taken away. */
export function mouldFolder(kind: PouredKind): string {
  return `${kind}/${mouldId}`;
}

/** The address of a guide ends with a place, of which a mould has none either. */
const pathOfMould = (kind: PouredKind) => `/${mouldFolder(kind)}/${kind === 'guides' ? `${mouldId}/` : ''}`;

/** File of a mould below the output folder. */
export function mouldFile(kind: PouredKind): string {
  return `${pathOfMould(kind).slice(1)}index.html`;
}

/** What the generator renders to make a mould. */
export function mouldPage(kind: PouredKind): PageText {
  return {
    title: titleMark,
    description: descriptionMark,
    path: pathOfMould(kind),
    things: [thingsMark],
    main: { html: mainMark },
  };
}

/** As the generator writes text in a quoted attribute, which is another way than between tags. */
function attributeText(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('"', '&quot;');
}

/** What stands at each mark of a mould, in the order in which they stand on a page. */
function poured(
  { title, description, path, canonical, things, main }: PageText,
  { absolute }: SiteLinks,
): string[] {
  return [
    htmlText(title),
    attributeText(description),
    attributeText(absolute(canonical ?? path)),
    main.html,
    structuredData(things).html,
  ];
}

/** Pours a page into a mould. */
export type Mould = (page: PageText) => string;

/** Whether a file of the generator is written to its end. */
export function isWhole(rendered: string): boolean {
  return rendered.trimEnd().endsWith('</html>');
}

/**
 * Takes the mould of a kind from what the generator rendered for `mouldPage`. Throws when the marks do not stand in it once each and in order,
 * since then the layout says something of a page that the mould does not know of.
 */
export function mouldFrom(rendered: string, kind: PouredKind, links: SiteLinks): Mould {
  const parts: string[] = [];
  let rest = rendered;
  for (const mark of poured(mouldPage(kind), links)) {
    const [before, after, ...more] = rest.split(mark);
    if (before === undefined || after === undefined || more.length > 0) {
      throw new Error(`the mould of ${kind} does not hold ${mark} once, in its place`);
    }
    parts.push(before);
    rest = after;
  }
  return page => {
    let text = '';
    poured(page, links).forEach((piece, index) => {
      text += parts[index]! + piece;
    });
    return text + rest;
  };
}
