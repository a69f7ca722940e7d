/** When a layer that still hangs on its mother plant can be cut from it. */

import type { Span } from './answers.ts';
import { rootsHold, stillToCome } from './milestones.ts';
import { propagationOf, type Subject, type YardDay } from './subject.ts';

/** The span of days in which roots fill the layer, so that it can be cut; null when there is no figure or it will not come. */
export function expectedSevering(subject: Subject, { outlook, asOf }: YardDay): Span | null {
  const figures = propagationOf(subject);
  if (!figures) return null;
  const { started } = subject.lot;
  const { range } = rootsHold(outlook, figures.rootingWarmDays, { from: started, to: started });
  return range && stillToCome(range, asOf);
}
