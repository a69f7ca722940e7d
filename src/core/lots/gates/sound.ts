/** Are the plants healthy, and is nothing holding them back? */

import { dayInWords } from '../../days.ts';
import { isFresh } from '../subject.ts';
import { blocked, type GateRule, look, passed, seen } from './gate.ts';

export const sound: GateRule = ({ lot, signs }, today) => {
  if (lot.hold && lot.hold.since <= today.asOf) {
    return blocked('sound', [seen(`Held since ${dayInWords(lot.hold.since)}: ${lot.hold.why}`)]);
  }
  const { health } = signs;
  if (!health) return look('sound', [seen('Nobody has noted yet whether the plants are sound.')]);
  const when = dayInWords(health.on);
  if (health.value === 'hold')
    return blocked('sound', [seen(`Held back for their health on the walk of ${when}.`)]);
  if (health.value === 'watch') return look('sound', [seen(`To be watched since the walk of ${when}.`)]);
  if (!isFresh(health.on, today)) {
    return look('sound', [
      seen(`Sound when last looked at on ${when}, more than ${today.yard.walkFreshDays} days ago.`),
    ]);
  }
  return passed('sound', [seen(`Sound on the walk of ${when}.`)]);
};
