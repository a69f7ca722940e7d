/** The text of a guide as its pages show it that are for no place: in general, and the arrival guide for one form and species. */

import { type OldNames, oldNames } from '../../../core/addresses/earlierParts.ts';
import { everyPart } from '../../../core/care/guideHeadings.ts';
import type { Catalogue } from '../../../core/catalogue.ts';
import type { Form } from '../../../core/records/common.ts';
import type { Guide } from '../../../core/records/guide.ts';
import type { Species } from '../../../core/records/species.ts';
import { type RenderedGuide, renderGuide } from '../../../markdown/guideParts.ts';
import { guidePath } from '../../addresses/guidePaths.ts';
import { unitsIn } from '../../words/units.ts';
import { leadingFirst, leadingSpecies } from './guideSubject.ts';

type Link = (path: string) => string;

/** Names its parts had before. */
export function oldNamesOf({ earlierParts }: Pick<Catalogue, 'earlierParts'>, guide: Guide): OldNames {
  const path = guidePath(guide.id);
  const earlier = earlierParts.get(path);
  return oldNames(earlier, path, earlier === undefined ? new Set() : everyPart(guide));
}

/** Parts that links of before name and that are no heading of the general guide: on another page, or in what stands below the text. */
export function movedParts(
  all: Pick<Catalogue, 'earlierParts'>,
  guide: Guide,
  { headings }: Pick<RenderedGuide, 'headings'>,
): OldNames['elsewhere'] {
  const { here, elsewhere } = oldNamesOf(all, guide);
  const below = [...here].filter(([part]) => !headings.some(({ id }) => id === part));
  return [
    ...elsewhere,
    ...below.flatMap(([part, names]) => names.map(name => ({ name, to: `${guidePath(guide.id)}#${part}` }))),
  ];
}

const anyone = { year: null, species: null, form: null, stage: null, kept: null, tasks: [] };

/** A guide for any reader, in the units of the yard's own country. */
export function generalGuide(all: Catalogue, guide: Guide, link: Link): RenderedGuide {
  const leading = leadingSpecies(all, guide);
  return renderGuide(guide, {
    ...anyone,
    oldNames: oldNamesOf(all, guide).here,
    units: unitsIn(all.home.country),
    yardSpecies: leading === null ? all.species : leadingFirst(all.species, leading),
    link,
  });
}

/** The same for a reader who has bought one form of one species. */
export function formGuide(
  all: Catalogue,
  guide: Guide,
  form: Form,
  species: Species,
  link: Link,
): RenderedGuide {
  return renderGuide(guide, {
    ...anyone,
    oldNames: oldNamesOf(all, guide).here,
    units: unitsIn(all.home.country),
    species,
    form,
    yardSpecies: all.species,
    link,
  });
}
