/** The words of a box card, from the calendar of the tree at its place and the cautions that are due. */

import { recordAddress } from '../core/addresses/paths.ts';
import { careCalendar } from '../core/care/calendar.ts';
import type { CareYear } from '../core/care/careYear.ts';
import { USUAL_POT_LITERS } from '../core/care/plantInCare.ts';
import type { Catalogue, LotEntry } from '../core/catalogue.ts';
import { addDays, type Day } from '../core/days.ts';
import { largeFirst } from '../core/reading/problem.ts';
import type { Form } from '../core/records/common.ts';
import type { Place } from '../core/records/place.ts';
import type { BoxCard } from './boxCard.ts';
import { wholeAddress } from './content.ts';

/** Tasks that begin within so many days of the arrival stand on the card; the guide has the rest. */
const FIRST_DAYS = 3;

const formWords: Record<Form, string> = {
  'leafed-pot': 'in leaf, in a pot',
  'dormant-pot': 'dormant, in a pot',
  'bare-root': 'bare-root',
};

export interface Parcel {
  lots: readonly LotEntry[];
  form: Form;
  place: Place;
  arrives: Day;
}

/** The guide that the card leads to: the first of kind arrival, at its page for the place. */
function guideAddress(all: Catalogue, place: Place, base: string): string {
  const guide = all.guides.find(({ kind }) => kind === 'arrival') ?? all.guides[0];
  if (!guide) return `${all.yard.address}${base}`;
  const page = `${recordAddress('guide', guide.id)}${place.id}/`;
  return wholeAddress(all, page, base);
}

/** All lots of a parcel are of one species. `year`: the care year of that species at the place. */
export function boxCardWords(
  all: Catalogue,
  { lots, form, place, arrives }: Parcel,
  year: CareYear,
  base: string,
): BoxCard {
  const { species } = lots[0]!;
  const calendar = careCalendar(year, {
    species,
    form,
    arrives,
    stage: 'first-winter',
    kept: 'pot',
    potLiters: USUAL_POT_LITERS,
  });
  const tasks = calendar.tasks.filter(({ range }) => range.from <= addDays(arrives, FIRST_DAYS));
  const cautions = new Map(tasks.flatMap(task => task.cautions).map(each => [each.id, each]));
  const { contact, name } = all.yard;
  return {
    yard: name,
    contact: [contact.email, contact.phone].filter(each => each).join(', '),
    title: largeFirst(`${species.common[0] ?? species.botanical}, ${formWords[form]}, for ${place.name}`),
    trees: lots.map(({ lot, cultivar }) => `${cultivar.name} (${lot.id})`),
    tasks,
    cautions: [...cautions.values()],
    address: guideAddress(all, place, base),
  };
}
