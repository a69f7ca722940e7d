/** How long a tree may be on its way. Apart from the schema of sending, so that pages can use it without that. */

import type { Form } from './formNames.ts';
import type { Lining } from './sending.ts';

/**
 * Longest time on the way, days. Standing: ours; for leaves it leans on a published warning that a delay of a day yellows
 * them (Jubenville, Michigan State University Extension, 2019).
 */
export const longestWay: Readonly<Record<Form, Readonly<Record<Lining, number>>>> = {
  'leafed-pot': { plain: 3, lined: 3 },
  'dormant-pot': { plain: 7, lined: 7 },
  'bare-root': { plain: 5, lined: 7 },
};
