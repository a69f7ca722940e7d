import type { ByHand } from '../../records/sending.ts';
import { atValue, type Problem } from '../problem.ts';
import type { Check } from './check.ts';

const meet = (a: ByHand, b: ByHand) =>
  a.from <= b.to && b.from <= a.to && a.forms.some(form => b.forms.includes(form));

/** Spans opened or closed by hand run forward, and no day is both. */
export const sendingByHand: Check = ({ yard }) => {
  if (!yard) return [];
  const { file, value } = yard;
  const { byHand } = value.sending;
  return byHand.flatMap((span, index): Problem[] => {
    if (span.to < span.from) {
      return [
        {
          rule: 'sending-by-hand',
          file,
          spot: atValue('sending', 'by_hand', index, 'to'),
          got: span.to,
          expected: `${span.from} or later`,
          message: `the span ends on ${span.to}, before it begins on ${span.from}`,
          remedy: 'swap the two days, or put the year right.',
        },
      ];
    }
    const other = byHand.slice(0, index).find(before => before.state !== span.state && meet(before, span));
    if (!other) return [];
    return [
      {
        rule: 'sending-by-hand',
        file,
        spot: atValue('sending', 'by_hand', index, 'state'),
        got: span.state,
        expected: other.state,
        message: `days from ${span.from} to ${span.to} are ${span.state} here and ${other.state} in the span of ${other.from} to ${other.to}`,
        remedy: 'let the spans not meet, or name different forms in them.',
      },
    ];
  });
};
