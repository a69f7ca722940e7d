import { figuresOfPlace } from '../../climate/place.ts';
import { weatherYears } from '../../climate/weatherYears.ts';
import { ripeningNeed } from '../../phenology/fruit.ts';
import { daysAfterClass, LARGEST_DAYS_OFF_CLASS, meanYear } from '../../phenology/seenDate.ts';
import type { RipeSeen } from '../../records/cultivar.ts';
import type { Place } from '../../records/place.ts';
import { atValue, type Problem } from '../problem.ts';
import type { Check } from './check.ts';
import { checkReference } from './references.ts';

/** Weather years the mean year is taken of: enough for a date to a day or two. */
const YEARS = 60;

/** The climate of a place; null for one whose figures stand in a daily record, which is not at hand here. */
function yearsOf(place: Place) {
  return place.tminC.length === 0 ? null : weatherYears(figuresOfPlace(place), YEARS);
}

const crossed = (crop: string, { from, to, place }: RipeSeen, days: number) =>
  `the ${crop} crop seen ripe at ${place} from ${from} to ${to} lies about ${Math.round(Math.abs(days) / 7)} weeks ${days < 0 ? 'before' : 'after'} what its ripening class gives there`;

/** Dates of ripe fruit are at a known place, of a crop it bears, and within two months of the cultivar's ripening class. */
export const cultivarRipeSeen: Check = ({ cultivars, species, places, ids }) => {
  const speciesOf = new Map(species.map(({ id, value }) => [id, value]));
  const placeOf = new Map(places.map(({ id, value }) => [id, value]));
  return cultivars.flatMap(({ file, value: cultivar }) =>
    cultivar.ripeSeen.flatMap((seen, index): Problem[] => {
      const unknown = checkReference({
        rule: 'cultivar-ripe-seen-place',
        file,
        spot: atValue('ripe_seen', index, 'place'),
        kind: 'place',
        id: seen.place,
        known: ids.place,
        where: 'Places are in content/places/.',
      });
      if (unknown.length > 0) return unknown;
      const place = placeOf.get(seen.place);
      const own = speciesOf.get(cultivar.species);
      const need = own && ripeningNeed(own, seen.crop, cultivar.ripening);
      const years = place && yearsOf(place);
      if (!own || !need || !years) return [];
      const days = daysAfterClass(meanYear(years, own), seen, need);
      if (Math.abs(days) <= LARGEST_DAYS_OFF_CLASS) return [];
      return [
        {
          rule: 'cultivar-ripe-seen-class',
          file,
          spot: atValue('ripe_seen', index, 'from'),
          got: `${seen.from} to ${seen.to}`,
          expected: `within two months of the class "${cultivar.ripening}"`,
          message: crossed(seen.crop, seen, days),
          remedy: `mend the dates, the place or "ripening: ${cultivar.ripening}"; a range that is right says the class is wrong.`,
        },
      ];
    }),
  );
};
