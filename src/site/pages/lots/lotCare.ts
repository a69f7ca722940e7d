/** What a lot's own pot, stem and wood mean for its first winter and its first summer with a buyer. */

import { measureText } from '../../../core/care/guideMeasures.ts';
import { plantedWaterLiters, usualCaliperMm } from '../../../core/care/watering.ts';
import type { Catalogue, LotEntry } from '../../../core/catalogue.ts';
import { puttingAwayOfLot } from '../../../core/lots/puttingAwayOfLot.ts';
import { pottingOn } from '../../../core/lots/subject.ts';
import type { Reason } from '../../../core/records/common.ts';
import { caliperInWords, roundTo } from '../../../core/units.ts';
import type { Why } from './lot.ts';

function waterWhy({ lot, size }: LotEntry, asOf: Catalogue['asOf']): Why[] {
  const potLiters = pottingOn(lot, asOf)?.container.liters;
  if (potLiters === undefined) return [];
  const { caliperMm } = size.answer;
  const liters = roundTo(plantedWaterLiters(caliperMm ?? usualCaliperMm(potLiters), potLiters), 0.5);
  const because: Reason = {
    text: 'Whichever is more: 2 to 3 gallons (8 to 11 L) for each inch of the stem, or a quarter of the volume of the pot.',
    standing: 'published',
    source: 'University of Florida IFAS, EP113; University of Minnesota Extension.',
  };
  const stem: Reason =
    caliperMm === null
      ? { text: 'Its stem is not measured yet; one usual for its pot is taken.', standing: 'ours' }
      : { text: `Its stem is ${caliperInWords(caliperMm)} thick.`, standing: 'seen' };
  return [
    {
      question: 'How much water does it take once planted?',
      answer: `${measureText({ low: liters, high: liters, unit: 'L' }, 'us')} at a time, on the root ball`,
      because: [stem, because],
    },
  ];
}

/** Nothing for a sold lot, and for trees that stand in no pot. */
export function careWhy({ asOf, home }: Catalogue, entry: LotEntry): Why[] {
  if (entry.soldOut) return [];
  const away = puttingAwayOfLot(entry, asOf, home.lat < 0);
  const winter =
    away === null
      ? []
      : [
          {
            question: 'When is it put away for the winter, in its pot?',
            answer: away.answer.when,
            because: away.because,
          },
        ];
  return [...winter, ...waterWhy(entry, asOf)];
}
