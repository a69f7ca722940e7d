/** Are there any left to sell, by a count recent enough to rely on? */

import { daysBetween } from '../../days.ts';
import { isFresh, onMother } from '../subject.ts';
import { blocked, type GateRule, look, passed, seen } from './gate.ts';

export const counted: GateRule = ({ lot, stock }, today) => {
  if (stock.left === 0) {
    return blocked('counted', [
      seen(stock.sold > 0 ? 'None are left: the lot is sold out.' : 'None are left: the lot was lost.'),
      ...stock.because,
    ]);
  }
  if (stock.free === 0) {
    return blocked('counted', [seen('All that are left are set aside for buyers.'), ...stock.because]);
  }
  const lastKnown = stock.countedOn ?? lot.started;
  if (isFresh(lastKnown, today)) return passed('counted', stock.because);
  if (stock.countedOn === null && onMother(lot, today.asOf)) {
    return passed('counted', [
      ...stock.because,
      seen('Layers are counted when they are cut from the mother plant.'),
    ]);
  }
  const age = daysBetween(lastKnown, today.asOf);
  const stale = `The last count is ${age} days old; after ${today.yard.walkFreshDays} days it wants counting again.`;
  return look('counted', [...stock.because, seen(stale)]);
};
