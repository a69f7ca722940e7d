/** The list of places: what a grower compares, the United States by climate region, other countries by name. */

import type { Catalogue } from '../../../core/catalogue.ts';
import { DAYS_PER_YEAR } from '../../../core/climate/calendar.ts';
import type { ClimateSummary } from '../../../core/climate/summary.ts';
import type { Place } from '../../../core/records/place.ts';
import { roundTo } from '../../../core/units.ts';
import { placePath } from '../../addresses/paths.ts';
import { memoize } from '../../memo.ts';
import { groupBy } from '../../parts/paging.ts';
import { howKnown } from '../../words/climateWords.ts';
import { classInBrief } from '../../words/placeClasses.ts';
import { shortMonthDay } from '../../words/yearDays.ts';
import { countryName } from './place.ts';
import { usRegionOf, usRegions } from './usRegions.ts';

export interface PlaceRow {
  id: string;
  path: string;
  name: string;
  /** Null when it is called like the place. */
  region: string | null;
  kind: string;
  zone: string;
  /** How the zone is known, in a word. */
  zoneMark: string;
  /** Days between freezes in the middle year, and the range of eight years in ten. */
  season: string;
  seasonRange: string | null;
  lastFreeze: string;
  firstFreeze: string;
  /** Degree-days F above 50 F, and degree-days C from 8 to 36 C. */
  heatF: string;
  heatC: string;
  chill: string;
}

/** Places under one heading. */
export interface PlaceGroup {
  heading: string;
  rows: PlaceRow[];
}

/** One table of the page. */
export interface PlaceSection {
  id: string;
  heading: string;
  groups: PlaceGroup[];
}

const zoneMarks: Readonly<Record<string, string>> = { published: 'map', 'from records': 'records' };

/** `map` when read off an official map, `records` when computed from observed nights, else `modeled`. */
function zoneMark({ winterZone }: ClimateSummary): string {
  const { standing } = howKnown({ standing: winterZone.standing, source: winterZone.answer.basis });
  return zoneMarks[standing] ?? 'modeled';
}

function seasonCells({ seasonDays }: ClimateSummary): Pick<PlaceRow, 'season' | 'seasonRange'> {
  const { p10, p50, p90 } = seasonDays.answer;
  const long = p90 >= DAYS_PER_YEAR ? 'all year' : String(p90);
  if (p10 >= DAYS_PER_YEAR) return { season: 'all year', seasonRange: null };
  if (p50 >= DAYS_PER_YEAR) return { season: 'all year', seasonRange: `${p10} or more` };
  if (p50 < 1) return { season: 'none', seasonRange: p90 < 1 ? null : `up to ${long}` };
  return { season: `${p50} days`, seasonRange: `${p10} to ${long}` };
}

const dateCell = (date: string | null) => (date === null ? 'most years none' : shortMonthDay(date));

function placeRow({ id, name, region }: Place, climate: ClimateSummary): PlaceRow {
  const { first, last } = climate.freeze['32F'].answer;
  const { portions } = climate.chill.answer;
  const whole = (value: number) => roundTo(value, 1).toLocaleString('en-US');
  const [least, most] = [whole(portions.p10), whole(portions.p90)];
  return {
    id,
    path: placePath(id),
    name,
    region: region === name ? null : region,
    kind: classInBrief(climate.class.answer),
    zone: climate.winterZone.answer.zone,
    zoneMark: zoneMark(climate),
    ...seasonCells(climate),
    lastFreeze: dateCell(last.p50),
    firstFreeze: dateCell(first.p50),
    heatF: whole(climate.heat.base50F.answer.mean),
    heatC: whole(climate.heat.base8cap36.answer.mean),
    chill: least === most ? most : `${least} to ${most}`,
  };
}

/** Text order that no machine's language settings change. */
const collator = new Intl.Collator('en', { numeric: true });
const byText =
  <T>(textOf: (item: T) => string) =>
  (a: T, b: T) =>
    collator.compare(textOf(a), textOf(b));

/** The section of the places in the United States. */
export const US_SECTION = 'united-states';

const ELSEWHERE_IN_US = 'Elsewhere';

function groupsOf(
  places: readonly Place[],
  headingOf: (place: Place) => string,
  climates: Catalogue['climates'],
): PlaceGroup[] {
  return [...groupBy(places, headingOf)].map(([heading, members]) => ({
    heading,
    rows: members.flatMap(place => {
      const climate = climates.get(place.id);
      return climate === undefined ? [] : [placeRow(place, climate)];
    }),
  }));
}

/** The sections of the list; the one with the yard's home comes first. Empty sections are left out. */
export const placeSections = memoize(({ places, climates, home }: Catalogue): PlaceSection[] => {
  const sorted = [...places].sort(byText(({ name, region }) => `${name}\n${region}`));
  const inUs = ({ country }: Pick<Place, 'country'>) => country === 'US';
  const regionOf = ({ region }: Place) => usRegionOf(region) ?? ELSEWHERE_IN_US;
  const order = [...usRegions, ELSEWHERE_IN_US];
  const sections: PlaceSection[] = [
    {
      id: US_SECTION,
      heading: 'United States',
      groups: groupsOf(sorted.filter(inUs), regionOf, climates).sort(
        (a, b) => order.indexOf(a.heading) - order.indexOf(b.heading),
      ),
    },
    {
      id: 'other-countries',
      heading: 'Other countries',
      groups: groupsOf(
        sorted.filter(place => !inUs(place)),
        ({ country }) => countryName(country),
        climates,
      ).sort(byText(({ heading }) => heading)),
    },
  ];
  const filled = sections.filter(({ groups }) => groups.length > 0);
  return inUs(home) ? filled : filled.reverse();
});
