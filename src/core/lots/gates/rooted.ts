/**
 * Do the roots hold the ball? Seen beats modeled. The model only says when it is worth looking: when it expects roots by now
 * and nobody has looked, the answer is to look, never to sell.
 */

import { addDays, type Day, dayInWords } from '../../days.ts';
import type { Form } from '../../records/common.ts';
import { rootSigns } from '../../records/walk.ts';
import { temperatureInWords } from '../../units.ts';
import type { Gate, Seen } from '../answers.ts';
import { rootsHold, stillToCome } from '../milestones.ts';
import { clockStart, rootsByWeather, rootsSeen } from '../rooting.ts';
import { expectedSevering } from '../severing.ts';
import { onMother, ownRootsSince, pottingOn, propagationOf, type Subject, type YardDay } from '../subject.ts';
import { ROOTING_BASE_C, ROOTING_FULL_C } from '../weatherRules.ts';
import { blocked, byFigure, byWeather, daysInWords, look, opens, passed, seen } from './gate.ts';

const rank = (sign: (typeof rootSigns)[number]) => rootSigns.indexOf(sign);
const HOLDING = rank('holding');
const FULL = rank('full');

function stillOnMother(subject: Subject, today: YardDay): Gate {
  const { lot } = subject;
  const waiting = seen(`The layers put on on ${dayInWords(lot.started)} still hang on the mother plant.`);
  const figures = propagationOf(subject);
  const severing = expectedSevering(subject, today);
  const range = figures && severing && rootsHold(today.outlook, figures.rootingWarmDays, severing).range;
  if (!severing || !range) return blocked('rooted', [waiting]);
  return opens('rooted', range, [
    waiting,
    byWeather(today.outlook, { since: lot.started }, 'Roots fill the layer', severing),
    byWeather(today.outlook, { since: lot.started }, 'Cut and potted then, its roots hold the pot', range),
  ]);
}

/** Nobody has seen roots that hold: by the warm days since the clock started. */
function holdingByWeather(subject: Subject, today: YardDay, start: Day, roots: Seen<string> | null): Gate {
  const { outlook, asOf } = today;
  const since = seen(
    pottingOn(subject.lot, asOf)?.date === start
      ? `Potted on ${dayInWords(start)}.`
      : `On its own roots since ${dayInWords(start)}.`,
  );
  const figures = propagationOf(subject);
  if (!figures)
    return look('rooted', [since, seen('How long rooting takes is not on record; look at the roots.')]);
  const { rootingWarmDays } = figures;
  const practice = byFigure(
    `Roots hold the ball after about ${daysInWords(rootingWarmDays)} of warmth; a day at ${temperatureInWords(ROOTING_FULL_C)} counts one, at ${temperatureInWords(ROOTING_BASE_C)} none.`,
    rootingWarmDays,
  );
  const { hold, slow } = rootsByWeather(outlook, rootingWarmDays, start, roots);
  const { range } = hold;
  const evidence = [since];
  if (roots)
    evidence.push(
      seen(`Roots ${roots.value === 'none' ? 'not yet' : 'just'} showing on ${dayInWords(roots.on)}.`),
    );
  if (slow)
    evidence.push(
      seen('That is later than the weather let expect, so the warm days are counted anew from there.'),
    );
  if (!range)
    return blocked('rooted', [...evidence, practice, seen('It does not get warm enough for that at home.')]);
  if (asOf < range.to) {
    const ahead = stillToCome(range, asOf);
    return opens('rooted', ahead, [...evidence, practice, byWeather(outlook, hold, 'Roots hold', ahead)]);
  }
  const overdue = byWeather(outlook, hold, 'Roots should hold since', range.to);
  const verdict =
    roots && roots.on >= range.to
      ? 'What was seen is behind the model, and counts more: look again.'
      : 'Nobody has looked since: tip one out before any is sold.';
  return look('rooted', [...evidence, practice, overdue, seen(verdict)]);
}

/** Whether roots hold the pot, or for bare-root fill it. */
export function rooted(subject: Subject, today: YardDay, form: Form): Gate {
  const { lot, signs } = subject;
  const { asOf } = today;
  if (onMother(lot, asOf)) return stillOnMother(subject, today);
  const start = clockStart(subject, asOf);
  const roots = rootsSeen(signs, start);
  const reached = roots ? rank(roots.value) : -1;
  if (reached < HOLDING) return holdingByWeather(subject, today, start, roots);

  const held = seen(
    `Roots ${reached === FULL ? 'full' : 'holding'} on the walk of ${dayInWords(roots!.on)}.`,
  );
  if (reached === FULL || form !== 'bare-root') return passed('rooted', [held]);

  const figures = propagationOf(subject);
  if (!figures) return look('rooted', [held, seen('For bare-root they have to be full.')]);
  const { stronglyRootedDays } = figures;
  const after = (days: number) => addDays(ownRootsSince(lot), days);
  const { low, value, high } = stronglyRootedDays;
  const range = { from: after(low), likely: after(value), to: after(high) };
  const practice = byFigure(
    `A plant is strongly rooted about ${daysInWords(stronglyRootedDays)} after it came on its own roots, on ${dayInWords(ownRootsSince(lot))}.`,
    stronglyRootedDays,
  );
  if (asOf < range.to) return opens('rooted', stillToCome(range, asOf), [held, practice]);
  if (roots!.on < range.to) return passed('rooted', [held, practice]);
  return look('rooted', [
    held,
    practice,
    seen('They were not full by then: look again before roots are bared.'),
  ]);
}
