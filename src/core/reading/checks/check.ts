/** A check looks at records that are each right in themselves, and finds where they do not fit together. */

import type { Draft } from '../draft.ts';
import type { Problem } from '../problem.ts';

export type Check = (draft: Draft) => Problem[];
