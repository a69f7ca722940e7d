/** The pages that a yard's site will have, as far as its records tell: what a link may lead to. */

import { type Ledger, ledgerOf, pageOf, partOf, resolve } from '../addresses/ledger.ts';
import { recordOf } from '../addresses/paths.ts';
import { everyPart, placesPart } from '../care/guideHeadings.ts';
import { cultivarParts, headingParts } from '../markdown/parts.ts';
import { parseMarkdown } from '../markdown/tree.ts';
import { forms, ripeningClasses } from '../records/common.ts';
import { chapterFragment } from '../videos/chapters.ts';
import { isKnown, knownAddresses } from './checks/addressRecords.ts';
import type { Draft } from './draft.ts';

/** Pages every site has. */
const always = [
  ...['/', '/stock/', '/stock/sold/', '/cultivars/', '/places/', '/climates/', '/guides/', '/videos/'],
  ...['/ordering/', '/search/', '/compare/', '/changes/', '/my-place/', '/how-we-know/', '/walk/'],
  ...forms.map(form => `/stock/form/${form}/`),
  ...ripeningClasses.map(ripening => `/cultivars/ripening/${ripening}/`),
];

/** Below these, what there is follows from computed classes and lists. The finished site is looked through for its links. */
const computed = /^\/(?:climates|compare|search)\/./;
const furtherPage = /^(\/.*)page\/\d+\/$/;
const belowRecord = /^(\/(?:cultivars|lots|guides|videos|places)\/[^/]+\/)([^/]+)\//;
const isFile = (page: string) => page.slice(page.lastIndexOf('/')).includes('.');

/** Parts that pages of guides have besides the headings of the text. */
const guidePageParts = [
  placesPart,
  'main',
  'seek',
  'species',
  'by-month',
  'day-by-day',
  'calendar',
  'others',
];

export class SitePages {
  readonly #draft: Draft;
  readonly #ledger: Ledger;
  readonly #fixed: ReadonlySet<string>;
  readonly #parts = new Map<string, ReadonlySet<string> | null>();

  constructor(draft: Draft) {
    this.#draft = draft;
    this.#ledger = ledgerOf(draft.addresses);
    const flavors = draft.yard?.value.flavorClasses ?? [];
    this.#fixed = new Set([...always, ...flavors.map(({ id }) => `/cultivars/flavor/${id}/`)]);
  }

  /** All addresses that are known by name, for a guess at the one that was meant. */
  get names(): Set<string> {
    return new Set([...this.#fixed, ...knownAddresses(this.#draft)]);
  }

  /** False for an address that is no page of the site and leads to none. */
  has(address: string): boolean {
    const end = resolve(this.#ledger, address);
    // A circle is told where it stands.
    return 'loop' in end || this.#isPage(pageOf(end.to));
  }

  #isPage(page: string): boolean {
    if (this.#fixed.has(page) || isFile(page) || computed.test(page)) return true;
    const list = furtherPage.exec(page)?.[1];
    if (list !== undefined) return this.#fixed.has(list);
    if (recordOf(page) !== null) return isKnown(this.#draft, page);
    const [, record, below = ''] = belowRecord.exec(page) ?? [];
    if (record === undefined) return this.#ledger.latest.has(page);
    const { place } = this.#draft.ids;
    const kind = isKnown(this.#draft, record) ? recordOf(record)?.kind : undefined;
    if (kind === 'place') return below === 'fruit-year';
    return kind === 'guide' && (place.has(below) || (forms as readonly string[]).includes(below));
  }

  /** Whether a page has a part; true where nobody can tell from the records. */
  hasPart(page: string, part: string): boolean {
    if (part.startsWith('caution-') || this.#ledger.latest.has(`${page}#${part}`)) return true;
    const end = resolve(this.#ledger, `${page}#${part}`);
    if ('loop' in end) return true;
    const parts = this.partsOf(pageOf(end.to));
    return parts === null || parts.has(partOf(end.to) ?? part);
  }

  /** Names of the parts of a page of a record, and of the pages below it; null where nobody can tell. */
  partsOf(page: string): ReadonlySet<string> | null {
    const record = belowRecord.exec(page)?.[1] ?? page;
    let parts = this.#parts.get(record);
    if (parts === undefined) {
      parts = this.#find(record);
      this.#parts.set(record, parts);
    }
    return parts;
  }

  #find(page: string): ReadonlySet<string> | null {
    const { kind, id } = recordOf(page) ?? { kind: null, id: '' };
    const { guides, videos, cultivars } = this.#draft;
    if (kind === 'guide') {
      const guide = guides.find(each => each.id === id);
      return guide ? new Set([...everyPart(guide.value), ...guidePageParts]) : null;
    }
    if (kind === 'video') {
      const video = videos.find(each => each.id === id);
      return video ? new Set([...video.value.chapters.map(chapterFragment), 'main']) : null;
    }
    if (kind === 'cultivar') {
      const cultivar = cultivars.find(each => each.id === id);
      if (!cultivar) return null;
      const headings = headingParts(parseMarkdown(cultivar.value.body), cultivarParts);
      return new Set([...cultivarParts, ...[...headings.values()].map(part => part.id)]);
    }
    return null;
  }
}
