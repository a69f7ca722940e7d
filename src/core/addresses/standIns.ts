/**
 * Pages that stand in for others which the program made by rule: they come and go with a list or a record, so nobody is asked where each of them
 * leads. What the grower has said of the record holds for all that was made of it.
 */

import { forms } from '../records/common.ts';
import { type Ledger, pageOf, partOf, resolve } from './ledger.ts';
import { recordAddress, recordOf } from './paths.ts';

/** The further pages of a list: `/stock/page/2/`. They come and go with the length of the list, whose first page stands in for them. */
const furtherPage = /^(\/.*)page\/\d+\/$/;
/** A guide for a place, `/guides/first-winter/boston-ma/`, or for a form and a species, `/guides/first-48-hours/leafed-pot/fig/`. */
const ofGuide = /^(\/guides\/[^/#]+\/)((?:[^/#]+\/){1,2})$/;

/** Where the page of a record leads on to; null where it does not. */
function ledOnTo(ledger: Ledger, page: string): string | null {
  const end = resolve(ledger, page);
  return 'to' in end && end.to !== page ? pageOf(end.to) : null;
}

/**
 * Whether a guide's page should be there, since all that it was made of is: the place, or another form's page for the same species. That it is missing
 * is a fault then, which is told.
 */
function isMissed(guide: string, below: string, isPage: (page: string) => boolean): boolean {
  const [first = '', species] = below.split('/');
  if (species === undefined || species === '') return isPage(guide) && isPage(recordAddress('place', first));
  return forms.some(form => isPage(`${guide}${form}/${species}/`));
}

/** Pages that could stand in for a page of a guide which is not there, the best first. */
function guideStandIns(ledger: Ledger, guide: string, below: string): string[] {
  const guideNow = ledOnTo(ledger, guide) ?? guide;
  if (recordOf(guideNow)?.kind !== 'guide') return [guideNow];
  const placeNow = recordOf(ledOnTo(ledger, recordAddress('place', below.slice(0, -1))) ?? '');
  const there = placeNow?.kind === 'place' ? [`${guideNow}${placeNow.id}/`] : [];
  return [`${guideNow}${below}`, ...there, guideNow];
}

/**
 * The page that readers of a missing page are sent to without a line of its own in the list; null where there is none. `isPage` tells which
 * pages there are.
 */
export function standIn(ledger: Ledger, page: string, isPage: (page: string) => boolean): string | null {
  const first = furtherPage.exec(page)?.[1];
  const [, guide, below] = ofGuide.exec(page) ?? [];
  if (first !== undefined) return isPage(first) ? first : null;
  if (guide === undefined || below === undefined || isMissed(guide, below, isPage)) return null;
  return guideStandIns(ledger, guide, below).find(isPage) ?? null;
}

/** Whether a page was led on to one that had been published before. A page that was renamed is published after its old address was led on. */
function isGivenUp({ rows }: Ledger, page: string, leadsTo: string): boolean {
  const ledOn = rows.findIndex(row => row.address === page && row.leadsTo === leadsTo);
  const published = rows.findIndex(row => row.address === pageOf(leadsTo) && row.leadsTo === null);
  return published >= 0 && published < ledOn;
}

/**
 * Whether a part of a page was given up with its page, for another page that has parts of its own: readers then come to the top of that one. The parts
 * of a page that was renamed go with it.
 */
export function isPartOfGivenUpPage(ledger: Ledger, address: string): boolean {
  if (partOf(address) === null) return false;
  const { latest } = ledger;
  const seen = new Set<string>();
  for (let page = pageOf(address); !seen.has(page); ) {
    seen.add(page);
    const leadsTo = latest.get(page)?.leadsTo ?? null;
    if (leadsTo === null) return false;
    if (isGivenUp(ledger, page, leadsTo)) return true;
    page = pageOf(leadsTo);
  }
  return false;
}
