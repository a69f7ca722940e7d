import { ledgerOf, pageOf, partOf, resolve } from '../../addresses/ledger.ts';
import { recordOf } from '../../addresses/paths.ts';
import { isPartOfGivenUpPage } from '../../addresses/standIns.ts';
import { guideParts, placesPart } from '../../care/guideHeadings.ts';
import type { AddressRow } from '../../records/address.ts';
import { chapterFragment } from '../../videos/chapters.ts';
import { addressesFile } from '../addressFile.ts';
import type { Draft } from '../draft.ts';
import { nearest } from '../nearest.ts';
import { atCell, type Problem, quote } from '../problem.ts';
import type { Check } from './check.ts';

/** Names of the parts of a page that the grower gives, by headings and chapters; null for a page whose parts nobody can tell from the content. */
function partsKnown(draft: Draft) {
  const known = new Map<string, string[] | null>();
  const find = (page: string): string[] | null => {
    const record = recordOf(page);
    if (record?.kind === 'guide') {
      const guide = draft.guides.find(({ id }) => id === record.id);
      return guide === undefined ? null : [...guideParts(guide.value).map(({ id }) => id), placesPart];
    }
    if (record?.kind === 'video') {
      const video = draft.videos.find(({ id }) => id === record.id);
      return video === undefined ? null : video.value.chapters.map(chapterFragment);
    }
    return null;
  };
  return (page: string) => {
    const parts = known.get(page) ?? find(page);
    known.set(page, parts);
    return parts;
  };
}

/** A named part that was published is there, or leads to one that is. */
export const addressParts: Check = draft => {
  const ledger = ledgerOf(draft.addresses.filter(({ since }) => since <= draft.asOf));
  const partsOf = partsKnown(draft);
  return [...ledger.latest.values()].flatMap(row => {
    const end = resolve(ledger, row.address);
    const part = 'to' in end ? partOf(end.to) : null;
    if (!('to' in end) || part === null) return [];
    const page = pageOf(end.to);
    const parts = partsOf(page);
    if (parts === null || parts.includes(part) || isPartOfGivenUpPage(ledger, row.address)) return [];
    const near = nearest(part, parts);
    return [gone(row, end.to, near === null ? page : `${page}#${near}`)];
  });
};

function gone({ address, since, line }: AddressRow, to: string, instead: string): Problem {
  const led = to === address ? '' : ` and leads to ${to}`;
  return {
    rule: 'address-part',
    file: addressesFile,
    spot: atCell(line, 'address'),
    got: quote(to),
    expected: 'the name of a heading or the time of a chapter of that page',
    message: `${address} was published on ${since}${led}, and that page has no such part`,
    remedy: `put the heading or the time of the chapter back as it was, or tell which part it is now: npm run rename -- address ${address} ${instead}.`,
  };
}
