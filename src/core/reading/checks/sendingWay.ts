import { type Form, forms } from '../../records/common.ts';
import { longestWay } from '../../records/longestWay.ts';
import { atValue, type Problem, plural } from '../problem.ts';
import type { Check } from './check.ts';

/** Parcels are not longer on their way than a form that the yard sells may be. */
export const sendingWay: Check = ({ yard, lots }) => {
  if (!yard) return [];
  const { transitDays, limits } = yard.value.sending;
  const longest = (form: Form) =>
    limits[form].lined ? Math.max(longestWay[form].plain, longestWay[form].lined) : longestWay[form].plain;
  const sold = forms.filter(form => lots.some(({ written }) => written.forms.includes(form)));
  const tooLong = sold.filter(form => transitDays > longest(form));
  const [first] = tooLong;
  if (first === undefined) return [];
  const problem: Problem = {
    rule: 'sending-way',
    file: yard.file,
    spot: atValue('sending', 'transit_days'),
    got: plural(transitDays, 'day'),
    expected: `at most ${plural(longest(first), 'day')} for ${first}`,
    message: `parcels are on their way for ${plural(transitDays, 'day')}, so ${tooLong.join(' and ')} cannot be sent anywhere`,
    remedy: `use a quicker service and write its days; ${first} is sent for ${plural(longest(first), 'day')} at most.`,
  };
  return [problem];
};
