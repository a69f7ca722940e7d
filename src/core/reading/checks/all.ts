/** Every check, in the order of the manual. */

import type { Draft } from '../draft.ts';
import type { Problem } from '../problem.ts';
import type { Check } from './check.ts';
import { lotCultivar } from './lotCultivar.ts';

const checks: readonly Check[] = [lotCultivar];

export function allChecks(draft: Draft): Problem[] {
  return checks.flatMap(check => check(draft));
}
