import { nearestRung, roundPrice, rungValue } from '../../lots/ladder.ts';
import { atValue, both } from '../problem.ts';
import type { Check } from './check.ts';

/** A base price stands on a rung of the ladder; an amount between two rungs is said once, with the price it is sold at. */
export const priceRung: Check = ({ yard }) => {
  if (!yard) return [];
  const { series, base, rounding } = yard.value.prices;
  const byAmount = Map.groupBy(Object.entries(base), ([, amount]) => amount);
  return [...byAmount].flatMap(([amount, priced]) => {
    const names = priced.map(([species]) => species);
    const rung = nearestRung(series, amount);
    const value = rungValue(series, rung);
    if (value === amount) return [];
    const other = rungValue(series, value < amount ? rung + 1 : rung - 1);
    const sold = roundPrice(rounding, value);
    return [
      {
        rule: 'price-rung' as const,
        file: yard.file,
        spot: atValue('prices', 'base', names[0]!),
        got: String(amount),
        expected: [value, other].sort((a, b) => a - b).join(' or '),
        message: `${amount} for ${both(names)} is between two rungs of the ladder, and counts as ${value}${sold === value ? '' : ` (sold at ${sold})`}; the rung on its other side is ${other}`,
        remedy: `write ${value} or ${other}, or give single lots a price of their own.`,
      },
    ];
  });
};
