import { atValue, quote } from '../problem.ts';
import type { Check } from './check.ts';

/** The currency is one of ISO 4217, as far as this machine's list knows. */
export const yardCurrency: Check = ({ yard }) => {
  if (!yard || Intl.supportedValuesOf('currency').includes(yard.value.currency)) return [];
  const { currency } = yard.value;
  return [
    {
      rule: 'yard-currency',
      file: yard.file,
      spot: atValue('currency'),
      got: quote(currency),
      expected: 'a currency of ISO 4217',
      message: `there is no currency ${quote(currency)}`,
      remedy: 'write the three letters of ISO 4217, such as USD, CAD, EUR or GBP.',
    },
  ];
};
