import { usStates } from '../../places/usStates.ts';
import { nearest } from '../nearest.ts';
import { atValue, type Problem, quote } from '../problem.ts';
import type { Check } from './check.ts';
import { checkReference } from './references.ts';

/** Delivery prices go by a row of the parcel rules that exists. */
export const deliveryRule: Check = ({ yard }) => {
  if (!yard?.value.delivery) return [];
  return checkReference({
    rule: 'delivery-rule',
    file: yard.file,
    spot: atValue('delivery', 'billed_by'),
    kind: 'parcel rule',
    id: yard.value.delivery.billedBy,
    known: new Set(yard.value.parcelRules.map(({ name }) => name)),
    where: 'The rules are under parcel_rules: in the same file.',
  });
};

/** Every region has one area, only the last area is for everywhere else, and weights rise within each. */
export const deliveryAreas: Check = ({ yard }) => {
  if (!yard?.value.delivery) return [];
  const { file } = yard;
  const { areas } = yard.value.delivery;
  const areaOfRegion = new Map<string, string>();
  return areas.flatMap(({ name, regions, prices }, area): Problem[] => {
    const at = (...path: (string | number)[]) => ({
      rule: 'delivery-areas' as const,
      file,
      spot: atValue('delivery', 'areas', area, ...path),
    });
    const twice = (regions ?? []).flatMap((region, index): Problem[] => {
      const before = areaOfRegion.get(region);
      areaOfRegion.set(region, name);
      if (before === undefined) return [];
      return [
        {
          ...at('regions', index),
          got: quote(region),
          expected: 'each region once',
          message: `${quote(region)} stands in the area ${quote(before)} already`,
          remedy: 'take it out of one of the two.',
        },
      ];
    });
    const early: Problem[] =
      regions === null && area < areas.length - 1
        ? [
            {
              ...at('name'),
              got: quote(name),
              expected: 'regions, or the last place in the list',
              message: `the area ${quote(name)} names no regions, and areas follow it`,
              remedy: 'name its regions, or put it last: it stands for everywhere else.',
            },
          ]
        : [];
    const falling = prices.flatMap(({ upToLb }, index): Problem[] => {
      const before = prices[index - 1]?.upToLb ?? 0;
      if (upToLb > before) return [];
      return [
        {
          ...at('prices', index, 'up_to_lb'),
          got: String(upToLb),
          expected: `more than ${before}`,
          message: `this price is for parcels up to ${upToLb} lb, and the one before it for those up to ${before} lb`,
          remedy: 'write the prices from light to heavy, each weight once.',
        },
      ];
    });
    return [...early, ...twice, ...falling];
  });
};

/** A region that is nearly the name of a state is a slip: its customers would be asked the price of everywhere else. */
export const deliveryRegion: Check = ({ yard, places }) => {
  if (!yard?.value.delivery) return [];
  const known = [...Object.values(usStates), ...places.flatMap(({ value }) => [value.region, value.country])];
  const { file } = yard;
  return yard.value.delivery.areas.flatMap(({ regions }, area) =>
    (regions ?? []).flatMap((region, index): Problem[] => {
      const guess = known.includes(region) ? null : nearest(region, known);
      if (guess === null) return [];
      return [
        {
          rule: 'delivery-region',
          file,
          spot: atValue('delivery', 'areas', area, 'regions', index),
          got: quote(region),
          expected: 'the full name of a region, or a country code',
          message: `no region ${quote(region)} is known`,
          remedy: `did you mean ${quote(guess)}?`,
        },
      ];
    }),
  );
};
