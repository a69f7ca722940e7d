import { atValue } from '../problem.ts';
import type { Check } from './check.ts';
import { checkReference } from './references.ts';

/** The home of the yard is a place that has a file. */
export const yardHome: Check = ({ yard, ids }) =>
  yard
    ? checkReference({
        rule: 'yard-home',
        file: yard.file,
        spot: atValue('home'),
        kind: 'place',
        id: yard.value.home,
        known: ids.place,
        where: 'Places are in content/places/.',
      })
    : [];
