/** Which units the readers of a place see first. */

import type { UnitChoice } from '../../core/care/guideMeasures.ts';

/** Fahrenheit and inches come first for readers in the United States. */
export function unitsIn(country: string): UnitChoice {
  return country === 'US' ? 'us' : 'metric';
}
