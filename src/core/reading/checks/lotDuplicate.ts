import type { LotPlace } from '../draft.ts';
import { atValue, quote } from '../problem.ts';
import type { Check } from './check.ts';

/** A lot id is used once in all files; the later place is reported, the earlier one named. */
export const lotDuplicate: Check = ({ lotPlaces }) => {
  const first = new Map<string, LotPlace>();
  return lotPlaces.flatMap(place => {
    const { id, file, index } = place;
    const earlier = first.get(id);
    if (!earlier) {
      first.set(id, place);
      return [];
    }
    return [
      {
        rule: 'lot-duplicate' as const,
        file,
        spot: atValue(index, 'lot'),
        got: quote(id),
        expected: 'an id that no other lot has',
        message: `the lot id ${quote(id)} is already used in {see}`,
        see: { file: earlier.file, path: [earlier.index, 'lot'] },
        remedy: 'give the newer lot an id of its own.',
      },
    ];
  });
};
