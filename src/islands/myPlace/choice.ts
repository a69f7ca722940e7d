/** The place a visitor has chosen, and where it is remembered: on this device only. */

import type { OwnDates } from '../../core/match/ownFigures.ts';
import { href } from '../../href.ts';
import { placeKey } from '../../site/placeKey.ts';

/** A town the visitor lives in, with all that its answers are worked out from, so that no page has to fetch it again. */
export interface ChosenTown {
  /** `Boone` and `North Carolina, United States`. */
  name: string;
  where: string;
  /** State, or another division of the country; empty where none is known. */
  region: string;
  /** ISO 3166 code. */
  country: string;
  /** Degrees, south and west negative. */
  lat: number;
  lon: number;
  heightM: number;
  /** Monthly figures of its climate, as the town's file packs them. */
  figures: string;
  /** The reference place whose climate is most like it, and how the town differs, in parts of a sentence. */
  like: { name: string; differs: string[] };
}

export interface Choice {
  /** Id of the reference place; of a town, the one most like it in climate, which speaks where the town itself cannot. */
  place: string;
  /** `Asheville, North Carolina, United States`. */
  name: string;
  /** How it was found, in words that go on a sentence: `about 5 miles (8 km) from the middle of ZIP 288`. Empty when chosen by name. */
  found: string;
  /** What makes the place a poor stand-in: far away, much higher. Said on every page. */
  warnings: string[];
  /** What else to bear in mind, said where the place is chosen. */
  notes: string[];
  /** Freeze dates of the visitor's own, laid over the year of the place. */
  own: OwnDates | null;
  /** The town that is spoken for; null where it is the reference place itself. */
  town: ChosenTown | null;
  /** Which measures come first for readers there. */
  units: 'us' | 'metric';
}

/** A reference place chosen by its name, with nothing more to say about it. */
export function referenceChoice(place: string, name: string, units: Choice['units']): Choice {
  return { place, name, found: '', warnings: [], notes: [], own: null, town: null, units };
}

const key = placeKey(href('/'));

/** Said to parts of the page when the choice has changed. */
const changed = 'leafdrop-place';

let held: Choice | null = null;
let remembers = true;

function isOwn(value: unknown): value is OwnDates {
  const own = value as Partial<OwnDates> | null;
  return (
    typeof own === 'object' &&
    own !== null &&
    typeof own.last === 'string' &&
    typeof own.first === 'string' &&
    Number.isFinite(own.coldestC)
  );
}

function isTown(value: unknown): value is ChosenTown {
  const town = value as Partial<ChosenTown> | null;
  return (
    typeof town === 'object' &&
    town !== null &&
    [town.name, town.where, town.region, town.country, town.figures].every(
      text => typeof text === 'string',
    ) &&
    [town.lat, town.lon, town.heightM].every(Number.isFinite) &&
    typeof town.like?.name === 'string' &&
    Array.isArray(town.like.differs)
  );
}

/** A choice as it was kept; null for anything else, such as what an older version of the site has left. */
export function parseChoice(text: string | null): Choice | null {
  try {
    const { place, name, found, warnings, notes, own, town, units } = JSON.parse(text ?? 'null') as Record<
      string,
      unknown
    >;
    if (typeof place !== 'string' || !/^[a-z0-9-]+$/.test(place)) return null;
    if (typeof name !== 'string' || typeof found !== 'string') return null;
    if (!Array.isArray(warnings) || !Array.isArray(notes)) return null;
    const texts = (list: unknown[]) => list.map(String);
    return {
      place,
      name,
      found,
      warnings: texts(warnings),
      notes: texts(notes),
      own: isOwn(own) ? own : null,
      // Older versions of the site kept none.
      town: isTown(town) ? town : null,
      units: units === 'metric' ? 'metric' : 'us',
    };
  } catch {
    return null;
  }
}

export function currentChoice(): Choice | null {
  if (!remembers) return held;
  try {
    return parseChoice(localStorage.getItem(key));
  } catch {
    remembers = false;
    return held;
  }
}

/** Keeps or forgets the choice, and tells the page. */
export function choose(choice: Choice | null): void {
  held = choice;
  try {
    if (choice === null) localStorage.removeItem(key);
    else localStorage.setItem(key, JSON.stringify(choice));
  } catch {
    remembers = false;
  }
  document.dispatchEvent(new CustomEvent(changed, { detail: choice }));
}

/** What to say when the browser does not let the page remember; null when it does. */
export function forgetful(): string | null {
  return remembers
    ? null
    : 'This browser does not let the page remember it: it holds until you leave this page.';
}

/** Calls when the choice changes, on this page or in another window of the site. */
export function onChange(then: () => void): void {
  document.addEventListener(changed, event => {
    // Where nothing can be remembered, each script of the page holds what another of them was told.
    held = (event as CustomEvent<Choice | null>).detail;
    then();
  });
  window.addEventListener('storage', event => {
    if (event.key === key || event.key === null) then();
  });
}
