/** A cultivar's own dates of ripe fruit, in words. They take the place of its ripening class in every verdict. */

import type { Catalogue } from '../../../core/catalogue.ts';
import type { Cultivar } from '../../../core/records/cultivar.ts';
import { cropWords, sentence } from '../../words/words.ts';
import { monthDayInWords } from '../../words/yearDays.ts';
import type { Fact } from '../lots/lot.ts';

/** `Seen ripe at Asheville, North Carolina: main crop, first fruit July 24 to August 10 (2018 to 2026).` One fact for each range of days. */
export function ripeSeenFacts(
  { places }: Pick<Catalogue, 'places'>,
  { ripeSeen }: Pick<Cultivar, 'ripeSeen'>,
): Fact[] {
  return ripeSeen.map(({ place, crop, from, to, note }) => {
    const days = from === to ? monthDayInWords(from) : `${monthDayInWords(from)} to ${monthDayInWords(to)}`;
    const where = places.find(({ id }) => id === place)?.name ?? place;
    const more = note === null ? '' : ` (${note})`;
    return {
      label: `Seen ripe at ${where}`,
      value: sentence(`${cropWords[crop]}, first fruit ${days}${more}`),
    };
  });
}
