/** A cultivar's own dates of ripe fruit at a named place: they take the place of the figure of its class. */
import type { WeatherYears } from '../climate/weatherYears.ts';
import { doyFromMonthDay } from '../days.ts';
import { daysSeen, heatSeen, meanYear } from '../phenology/seenDate.ts';
import type { Crop, Figure } from '../records/common.ts';
import type { Cultivar, RipeSeen } from '../records/cultivar.ts';
import type { Species } from '../records/species.ts';
import { doyInWords } from './words.ts';

/** A place where fruit was seen ripe, with its weather. */
export interface WeatherThere {
  /** Name of the place. */
  readonly name: string;
  readonly years: WeatherYears;
}

interface SeenAt extends WeatherThere {
  readonly seen: RipeSeen;
}

/** Id of the species record under which a cultivar with dates of its own is judged. */
export function ownSpeciesId({
  species,
  id,
  ripeSeen,
}: Pick<Cultivar, 'species' | 'id' | 'ripeSeen'>): string {
  return ripeSeen.length === 0 ? species : `${species}/${id}`;
}

/** `July 24 to August 10`. */
function daysSeenInWords({ from, to }: RipeSeen): string {
  const [first, last] = [from, to].map(each => doyInWords(doyFromMonthDay(each) as number)) as [
    string,
    string,
  ];
  return first === last ? first : `${first} to ${last}`;
}

function figureSeen(species: Species, all: readonly SeenAt[]): Figure {
  const asked = all.map(({ seen, years }) => {
    const year = meanYear(years, species);
    return species.bloom === null ? heatSeen(year, seen) : daysSeen(year, seen, species.bloom.heat.value);
  });
  const places = all.map(({ seen, name }) => `${name}, ${daysSeenInWords(seen)}`).join('; ');
  return {
    low: Math.min(...asked),
    value: asked.reduce((sum, each) => sum + each, 0) / asked.length,
    high: Math.max(...asked),
    standing: 'seen',
    source: `First ripe fruit seen at ${places}`,
    note: null,
  };
}

/**
 * The species as this cultivar shows it: the figure of its class is the one its seen dates ask for. `weatherAt` gives the name and the weather
 * years of a place by id. Null for a cultivar without dates at a place that is known.
 */
export function ownSpecies(
  species: Species,
  cultivar: Pick<Cultivar, 'species' | 'id' | 'ripening' | 'ripeSeen'>,
  weatherAt: (placeId: string) => WeatherThere | null,
): Species | null {
  const known = cultivar.ripeSeen.flatMap(seen => {
    const there = weatherAt(seen.place);
    return there === null ? [] : [{ seen, ...there }];
  });
  if (known.length === 0) return null;
  const { bloom, heatNeed } = species;
  const name = cultivar.ripening;
  const of = (crop: Crop) => known.filter(({ seen }) => seen.crop === crop);
  const withOwn = <T extends object>(figures: T, crop: Crop): T => {
    const own = of(crop);
    return own.length === 0 ? figures : { ...figures, [name]: figureSeen(species, own) };
  };
  return {
    ...species,
    id: ownSpeciesId(cultivar),
    // What was seen counts, also where it came sooner than anything on record.
    leastDays: {
      main: of('main').length === 0 ? species.leastDays.main : null,
      breba: of('breba').length === 0 ? species.leastDays.breba : null,
    },
    heatNeed:
      bloom === null
        ? { main: withOwn(heatNeed.main, 'main'), breba: withOwn(heatNeed.breba, 'breba') }
        : heatNeed,
    bloom: bloom && { ...bloom, toRipeDays: withOwn(bloom.toRipeDays, 'main') },
  };
}
