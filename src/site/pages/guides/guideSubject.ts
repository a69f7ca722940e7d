/** Which species and which guide a page speaks of. */

import { guideSpecies, mostRaised } from '../../../core/care/leadingSpecies.ts';
import type { Catalogue } from '../../../core/catalogue.ts';
import type { Form } from '../../../core/records/common.ts';
import type { Guide } from '../../../core/records/guide.ts';
import type { Place } from '../../../core/records/place.ts';
import type { Species } from '../../../core/records/species.ts';

/** The species a guide is for. */
export function speciesOf({ species }: Pick<Catalogue, 'species'>, guide: Pick<Guide, 'species'>): Species[] {
  return guideSpecies(guide, species);
}

/**
 * The species whose dates a guide gives where no reader has said which: of those it is for, the one the yard has most cultivars of.
 * Null in a yard without species.
 */
export function leadingSpecies(all: Pick<Catalogue, 'species' | 'cultivars'>, guide: Guide): Species | null {
  return leading(all, speciesOf(all, guide));
}

/** The same among all species of the yard: whose days a guide for every species gives. */
export function leadingOfYard(all: Pick<Catalogue, 'species' | 'cultivars'>): Species | null {
  return leading(all, all.species);
}

function leading({ cultivars }: Pick<Catalogue, 'cultivars'>, among: readonly Species[]): Species | null {
  return mostRaised(
    among,
    cultivars.map(({ cultivar }) => cultivar),
  );
}

/** The species whose dates are given comes first, so that its cautions do. */
export function leadingFirst(species: readonly Species[], leading: Species): Species[] {
  const isLeading = ({ id }: Species) => id === leading.id;
  return [...species.filter(isLeading), ...species.filter(one => !isLeading(one))];
}

/** A guide at a place, with the dates of one species there. */
export interface GuideAtPlace {
  guide: Guide;
  place: Place;
  /** Whose dates it gives. */
  species: Species;
}

/** Every guide at every place; none in a yard without species. */
export function guidesAtPlaces(
  all: Pick<Catalogue, 'guides' | 'places' | 'species' | 'cultivars'>,
): GuideAtPlace[] {
  return all.guides.flatMap(guide => {
    const species = leadingSpecies(all, guide);
    return species === null ? [] : all.places.map(place => ({ guide, place, species }));
  });
}

/** The guide that tells what to do on the day a tree arrives; null when the yard has none for that form and species. */
export function arrivalGuide(
  { guides }: Pick<Catalogue, 'guides'>,
  form: Form,
  species: string,
): Guide | null {
  const isFor = <T>(list: readonly T[], one: T) => list.length === 0 || list.includes(one);
  return (
    guides.find(
      guide => guide.kind === 'arrival' && isFor(guide.forms, form) && isFor(guide.species, species),
    ) ?? null
  );
}
