/** A cultivar's own dates of ripe fruit at a named place: they take the place of the figure of its class. */
import type { WeatherYears } from '../climate/weatherYears.ts';
import { daysSeen, heatSeen, meanYear } from '../phenology/seenDate.ts';
import type { Crop, Figure } from '../records/common.ts';
import type { Cultivar, RipeSeen } from '../records/cultivar.ts';
import type { Species } from '../records/species.ts';

/** Seen dates and the weather of the place they are of. */
interface SeenAt {
  readonly seen: RipeSeen;
  readonly years: WeatherYears;
}

/** Id of the species record under which a cultivar with dates of its own is judged. */
export function ownSpeciesId({
  species,
  id,
  ripeSeen,
}: Pick<Cultivar, 'species' | 'id' | 'ripeSeen'>): string {
  return ripeSeen.length === 0 ? species : `${species}/${id}`;
}

function figureSeen(species: Species, all: readonly SeenAt[]): Figure {
  const asked = all.map(({ seen, years }) => {
    const year = meanYear(years, species);
    return species.bloom === null ? heatSeen(year, seen) : daysSeen(year, seen, species.bloom.heat.value);
  });
  const places = all.map(({ seen }) => `${seen.place}, ${seen.from} to ${seen.to}`).join('; ');
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
 * The species as this cultivar shows it: the figure of its class is the one its seen dates ask for. `yearsOf` gives the weather years of
 * a place by id. Null for a cultivar without dates at a place that is known.
 */
export function ownSpecies(
  species: Species,
  cultivar: Pick<Cultivar, 'species' | 'id' | 'ripening' | 'ripeSeen'>,
  yearsOf: (placeId: string) => WeatherYears | null,
): Species | null {
  const known = cultivar.ripeSeen.flatMap(seen => {
    const years = yearsOf(seen.place);
    return years === null ? [] : [{ seen, years }];
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
    heatNeed:
      bloom === null
        ? { main: withOwn(heatNeed.main, 'main'), breba: withOwn(heatNeed.breba, 'breba') }
        : heatNeed,
    bloom: bloom && { ...bloom, toRipeDays: withOwn(bloom.toRipeDays, 'main') },
  };
}
