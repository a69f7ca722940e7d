import { wholeFile } from '../problem.ts';
import type { Check } from './check.ts';

/** Without costs no price is held above them. Said once, since nothing else shows it. */
export const costsMissing: Check = ({ yard, costs }) =>
  yard && !costs
    ? [
        {
          rule: 'costs-missing',
          file: yard.file,
          spot: wholeFile,
          expected: 'costs',
          message: 'no costs are known here, so no price is held above what a tree costs you',
          remedy:
            'write costs in yard.yaml or in the private folder; where that folder is not at hand, as on a host, give lots whose price rests on it a price of their own.',
        },
      ]
    : [];
