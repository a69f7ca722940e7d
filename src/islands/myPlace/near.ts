/** From a ZIP code or a town to the nearest reference place, with what is not known about it. */

import { kmBetween } from '../../core/climate/distance.ts';
import type { ListedPlace, WhereFile } from '../../site/data/where.ts';
import { type Choice, referenceChoice } from './choice.ts';

/** Beyond this a reference place may have another climate. Standing: ours. */
const FAR_KM = 150;
/** An area reaching further than this has more than one climate in it. Standing: ours. */
const WIDE_KM = 60;

/** International mile (1959). */
const KM_IN_A_MILE = 1.609344;
const M_IN_A_FOOT = 0.3048;

/** Prefixes outside the states. Source: USPS Domestic Mail Manual, labeling list L002. */
const territories: Readonly<Record<string, string>> = {
  '006': 'Puerto Rico',
  '007': 'Puerto Rico',
  '008': 'the U.S. Virgin Islands',
  '009': 'Puerto Rico',
  '969': 'Guam and the islands around it',
};
/** Post of the armed forces: the Americas, Europe, the Pacific. Source: the same. */
const armedForces = /^(?:340|09[0-8]|96[2-6])$/;

export interface Near {
  place: ListedPlace;
  km: number;
}

export type ZipAnswer =
  | { ok: true; prefix: string; nearest: Near; reachKm: number }
  | { ok: false; text: string };

export function distanceInWords(km: number): string {
  const miles = km / KM_IN_A_MILE;
  const near = (value: number) => (value < 20 ? Math.max(1, Math.round(value)) : Math.round(value / 5) * 5);
  const rounded = near(miles);
  return `about ${rounded} ${rounded === 1 ? 'mile' : 'miles'} (${near(km)} km)`;
}

const fromList = 'Choose from the list the place most like yours.';

/** Why ZIP codes that begin so tell no place, where they do not. */
export function tellsNoPlace(prefix: string): string | null {
  return armedForces.test(prefix)
    ? `ZIP ${prefix} is an address of the armed forces, which tells no place. ${fromList}`
    : null;
}

/** The nearest places to the middle of a ZIP code area. Takes three digits or five. */
export function nearZip({ areas, places }: WhereFile, written: string): ZipAnswer {
  const digits = written.trim();
  if (!/^\d{3}(?:\d{2})?$/.test(digits)) {
    return { ok: false, text: `“${digits}” is no ZIP code: give its first three digits, or all five.` };
  }
  const prefix = digits.slice(0, 3);
  const noPlace = tellsNoPlace(prefix);
  if (noPlace !== null) return { ok: false, text: noPlace };
  const area = areas[prefix];
  const territory = territories[prefix];
  if (area === undefined) {
    return {
      ok: false,
      text: territory
        ? noneIn(prefix, territory)
        : `We know of no ZIP codes that begin with ${prefix}. ${fromList}`,
    };
  }
  const [lat, lon, reachKm] = area;
  const sorted = places
    .map(place => ({ place, km: kmBetween({ lat, lon }, place) }))
    .sort((a, b) => a.km - b.km);
  const [nearest] = sorted;
  if (nearest === undefined) return { ok: false, text: 'This site has no reference places.' };
  if (territory && nearest.km > FAR_KM) return { ok: false, text: noneIn(prefix, territory) };
  return { ok: true, prefix, nearest, reachKm };
}

function noneIn(prefix: string, territory: string): string {
  return `ZIP ${prefix} is in ${territory}, for which we have no reference place. ${fromList}`;
}

const inBoth = (meters: number) => {
  const feet = Math.round(meters / M_IN_A_FOOT / 10) * 10;
  return `${feet.toLocaleString('en-US')} ft (${Math.round(meters)} m)`;
};

/** The choice of a place near a ZIP code area, with all that should be said about it. */
export function choiceNear(
  { prefix, reachKm }: Pick<Extract<ZipAnswer, { ok: true }>, 'prefix' | 'reachKm'>,
  { place, km }: Near,
): Choice {
  const warnings: string[] = [];
  if (km > FAR_KM)
    warnings.push(
      `That is far: your winters and your season may be quite different from those of ${place.name}.`,
    );
  if (reachKm > WIDE_KM) {
    warnings.push(
      `The area of ZIP ${prefix} reaches ${distanceInWords(reachKm)} from its middle: another place may be nearer to you.`,
    );
  }
  return {
    place: place.id,
    name: `${place.name}, ${place.where}`,
    found: `${distanceInWords(km)} from the middle of ZIP ${prefix}`,
    warnings,
    notes: [`A ZIP code does not tell your elevation; ${place.name} lies at ${inBoth(place.heightM)}.`],
    own: null,
    town: null,
    units: place.units,
  };
}

/** Without accents and capitals, so that `koln` finds Köln. */
const plain = (text: string) =>
  text
    .normalize('NFD')
    .replace(/[^\p{Letter}\p{Number} ]/gu, '')
    .toLowerCase()
    .trim();

/** The reference place of a name: as it is called, else the only one whose name or region begins so. */
function named(places: readonly ListedPlace[], written: string): ListedPlace[] {
  const [town = '', ...region] = written.split(',').map(plain);
  const inRegion = ({ where }: ListedPlace) => plain(where).startsWith(region.join(' ').trim());
  const exactly = places.filter(({ name }) => plain(name) === town);
  const beginning = places.filter(place => plain(place.name).startsWith(town));
  const found = exactly.length > 0 ? exactly : beginning;
  const narrowed = found.filter(inRegion);
  return narrowed.length > 0 ? narrowed : found;
}

/** The only reference place of exactly this name, in the region that is named with it; null where there is none or several. */
export function placeCalled({ places }: WhereFile, written: string): ListedPlace | null {
  const [town = '', ...region] = written.split(',').map(plain);
  const asked = region.join(' ').trim();
  const called = places.filter(({ name, where }) => plain(name) === town && plain(where).startsWith(asked));
  return called.length === 1 ? (called[0] ?? null) : null;
}

/** The choice for a place of the list. */
export function choiceOf({ id, name, where, units }: ListedPlace): Choice {
  return referenceChoice(id, where === '' ? name : `${name}, ${where}`, units);
}

/** Where a visitor says to live, as a ZIP code or the name of a reference place; else why it leads nowhere. */
export function choiceFor(
  where: WhereFile,
  written: string,
): { ok: true; choice: Choice } | { ok: false; text: string } {
  const asked = written.trim();
  if (!/\p{Letter}/u.test(asked)) {
    const found = nearZip(where, asked);
    return found.ok ? { ok: true, choice: choiceNear(found, found.nearest) } : found;
  }
  const places = named(where.places, asked);
  const [place, ...more] = places;
  if (place === undefined) {
    return {
      ok: false,
      text: `We have no reference place called “${asked}”. A ZIP code finds the nearest in the United States; else choose from the list the place most like yours.`,
    };
  }
  if (more.length > 0) {
    const names = places.slice(0, 4).map(({ name, where: region }) => `${name}, ${region}`);
    return { ok: false, text: `Which one: ${names.join('; ')}?` };
  }
  return { ok: true, choice: choiceOf(place) };
}
