import { type CareYear, careYear } from '../../care/careYear.ts';
import { guideParts, guidePartsAt } from '../../care/guideHeadings.ts';
import { guideSpecies, mostRaised } from '../../care/leadingSpecies.ts';
import { USUAL_POT_LITERS } from '../../care/plantInCare.ts';
import { figuresOfPlace } from '../../climate/place.ts';
import { climateSummary } from '../../climate/summary.ts';
import { weatherYears } from '../../climate/weatherYears.ts';
import type { Guide } from '../../records/guide.ts';
import type { Place } from '../../records/place.ts';
import type { Draft } from '../draft.ts';
import { atValue, both, type Problem, quote } from '../problem.ts';
import type { Check } from './check.ts';

/** Whether a guide says different things in different places at all: only then is the climate of one worth the time. */
const asksOfPlaces = ({ body }: Guide) => /^\s*:{3,}part\{/m.test(body);

/** The year of a guide's leading species at a place; null where there is no species, or the place has no figures that can be used. */
function yearOf({ species, cultivars, dailyRecords }: Draft, guide: Guide, place: Place): CareYear | null {
  const daily = place.daily === null ? undefined : dailyRecords.get(place.daily);
  if (place.daily !== null && daily === undefined) return null;
  const all = species.map(({ value }) => value).sort((a, b) => (a.id < b.id ? -1 : 1));
  const leading = mostRaised(
    guideSpecies(guide, all),
    cultivars.map(({ value }) => value),
  );
  if (leading === null) return null;
  const figures = figuresOfPlace(place, daily);
  const years = weatherYears(figures);
  const { id, name } = place;
  return careYear({ id, name, years, summary: climateSummary(figures, years) }, leading, USUAL_POT_LITERS);
}

/** A chapter that names a place links to parts that the guide of that place has. */
export const videoPartPlace: Check = draft =>
  draft.videos.flatMap(({ file, value }) =>
    value.chapters.flatMap(({ links }, chapter) => {
      const named = links.find(({ kind }) => kind === 'place');
      const place = named && draft.places.find(({ id }) => id === named.id)?.value;
      if (!place) return [];
      return links.flatMap(({ kind, id, part }, link): Problem[] => {
        const guide = kind === 'guide' && part !== null && draft.guides.find(one => one.id === id)?.value;
        if (!guide || part === null || !asksOfPlaces(guide)) return [];
        if (!guideParts(guide).some(known => known.id === part)) return [];
        const year = yearOf(draft, guide, place);
        if (year === null) return [];
        const there = guidePartsAt(guide, year).map(known => known.id);
        if (there.includes(part)) return [];
        return [
          {
            rule: 'video-part-place',
            file,
            spot: atValue('chapters', chapter, 'links', link),
            got: quote(part),
            expected: `a part of the guide for ${place.name}`,
            message: `the guide ${quote(id)} for ${place.name} leaves out the part ${quote(part)}`,
            remedy: `its parts are ${both(there.map(quote))}; link to one of them, or take the place out of this chapter.`,
          },
        ];
      });
    }),
  );
