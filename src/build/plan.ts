/** Which files of a build are those of the site before, and which are to be made. */

import { hashOf } from '../hash.ts';
import type { Route } from '../site/route.ts';
import type { FinishedFile } from './finishedSite.ts';
import type { LastBuild } from './lastBuild.ts';

export interface Plan {
  unchanged: FinishedFile[];
  /** Files of the routes to make. */
  changed: string[];
  /** Input digest of every route by its file. */
  digests: Map<string, string>;
}

export function planOf(routes: ReadonlyMap<string, Route>, before: LastBuild): Plan {
  const plan: Plan = { unchanged: [], changed: [], digests: new Map() };
  for (const [file, { inputs }] of routes) {
    const digest = hashOf(inputs());
    plan.digests.set(file, digest);
    const found = before.unchanged(file, digest);
    if (found === null) plan.changed.push(file);
    else if (found !== 'absent') plan.unchanged.push(found);
  }
  return plan;
}
