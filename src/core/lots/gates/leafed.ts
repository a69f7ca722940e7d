/** Is the plant in leaf, and hardened outdoors? Leaves last a season; after that the gate opens again with the next. */

import { addDays, type Day, dayInWords, daysBetween, later, rangeInWords } from '../../days.ts';
import type { Reason } from '../../records/common.ts';
import type { Gate, Seen, Span } from '../answers.ts';
import { budsBreak, freezesOver, leavesDown, shifted, stillToCome } from '../milestones.ts';
import { leafFallFrom, midsummerAfter, midsummerBefore } from '../seasons.ts';
import { isFresh, type SeasonSubject, type YardDay } from '../subject.ts';
import {
  blocked,
  byWeather,
  look,
  modeled,
  opens,
  ours,
  passed,
  type SeasonGateRule,
  seen,
  shareInWords,
} from './gate.ts';

/** Days outdoors or in shade until leaves are hard enough to travel. Standing: ours. */
export const HARDENING_DAYS = 10;
/** Days under cover after which leaves have lost what they gained outdoors. Standing: ours. */
export const HARDNESS_KEEPS_DAYS = 60;
/** Days from budbreak until leaves are full and hardened. Standing: ours. */
const LEAFING_OUT_DAYS = 28;

/** Each day of a span no earlier than that of another. */
function noEarlier(span: Span, than: Span | null): Span {
  if (than === null) return span;
  return {
    from: later(span.from, than.from),
    likely: later(span.likely, than.likely),
    to: later(span.to, than.to),
  };
}

/** Leaves are down, going or not yet out: when they are full and hard, in the spring that ends the rest season of a day. */
function nextLeaves(
  { species }: SeasonSubject,
  { outlook, asOf }: YardDay,
  inSeasonOf: Day,
  facts: Reason[],
): Gate {
  const buds = budsBreak(outlook, species, inSeasonOf);
  const { range, share } = buds;
  if (!range) {
    return blocked('leafed', [...facts, modeled(`Buds break outdoors only ${shareInWords(share)} here.`)]);
  }
  const freezes = freezesOver(outlook, inSeasonOf);
  const hard = shifted(range, LEAFING_OUT_DAYS);
  const out = noEarlier(hard, freezes);
  if (asOf >= out.to) {
    return look('leafed', [
      ...facts,
      byWeather(outlook, buds, 'New leaves should be out since', out.to),
      seen('Nobody has noted new leaves: look whether it has leafed out.'),
    ]);
  }
  const ahead = stillToCome(out, asOf);
  const closes = leavesDown(outlook, species, midsummerAfter(inSeasonOf, outlook.south)).range?.from ?? null;
  const because = [
    ...facts,
    byWeather(outlook, buds, 'In full leaf, and freezes over', ahead),
    ...(freezes === null
      ? []
      : [
          modeled(
            `Freezes end here ${rangeInWords(freezes)} in 8 of 10 years: new leaves are not sent before. Where it goes they must be nearly over too; the page of the place says when.`,
          ),
        ]),
    ours(`Leaves are taken to be full and hard ${LEAFING_OUT_DAYS} days after budbreak.`),
  ];
  return opens('leafed', ahead, because, closes);
}

/** The first leafed season that is not over on a day. */
function leavesNotOver(subject: SeasonSubject, today: YardDay, on: Day): Gate {
  const { outlook } = today;
  const midsummer = midsummerBefore(on, outlook.south);
  const closes = leavesDown(outlook, subject.species, midsummer).range?.from ?? null;
  const before = midsummer <= on && (closes === null || on < closes);
  return nextLeaves(subject, today, before ? addDays(midsummer, -1) : on, []);
}

const hardening = ours(`Leaves want ${HARDENING_DAYS} days outdoors before they travel.`);

function oldNews(leaves: Seen<string>, full: Reason, asOf: Day): Gate {
  return look('leafed', [
    full,
    seen(`That is ${daysBetween(leaves.on, asOf)} days ago: look at the leaves again.`),
  ]);
}

/** In leaf under a roof: outdoor nights do not take the leaves there, and hardness gained outdoors is kept for a while. */
function underCover(
  { signs }: SeasonSubject,
  today: YardDay,
  leaves: Seen<string>,
  where: Seen<string>,
): Gate {
  const { asOf } = today;
  const full = seen(`In full leaf on the walk of ${dayInWords(leaves.on)}.`);
  if (!isFresh(leaves.on, today)) return oldNews(leaves, full, asOf);
  const { lastOutside } = signs;
  const stands = `Stands in the ${where.value}, as seen on the walk of ${dayInWords(where.on)}`;
  if (!lastOutside || daysBetween(lastOutside.from, lastOutside.to) < HARDENING_DAYS) {
    return blocked('leafed', [full, seen(`${stands}, not hardened outdoors.`), hardening]);
  }
  const outdoors = `outdoors before that from ${rangeInWords(lastOutside)}`;
  if (daysBetween(lastOutside.to, asOf) > HARDNESS_KEEPS_DAYS) {
    const lost = ours(`After ${HARDNESS_KEEPS_DAYS} days under cover leaves are soft again.`);
    return blocked('leafed', [full, seen(`${stands}; ${outdoors}.`), lost]);
  }
  return passed('leafed', [full, seen(`${stands}; ${outdoors}.`)]);
}

function inLeaf(subject: SeasonSubject, today: YardDay, leaves: Seen<string>): Gate {
  const { species, signs } = subject;
  const { outlook, asOf } = today;
  const { where, outsideSince } = signs;
  if (where && !outsideSince) return underCover(subject, today, leaves, where);
  const full = seen(`In full leaf on the walk of ${dayInWords(leaves.on)}.`);
  const from = leafFallFrom(leaves.on, outlook.south);
  const fall = leavesDown(outlook, species, from);
  const closes = fall.range?.from ?? null;
  if (fall.range && asOf >= fall.range.to) {
    const gone = byWeather(outlook, fall, 'Leaves should have been down since', fall.range.to);
    return nextLeaves(subject, today, fall.range.from, [full, gone]);
  }
  if (closes && asOf >= closes) {
    return look('leafed', [
      full,
      byWeather(outlook, fall, 'Leaves come down', fall.range!),
      seen('They may be down by now: look at the leaves.'),
    ]);
  }
  if (!isFresh(leaves.on, today)) return oldNews(leaves, full, asOf);
  if (!outsideSince) {
    return look('leafed', [full, seen('Where it stands has not been noted: is it hardened outdoors?')]);
  }
  const outside = seen(`Outdoors since ${dayInWords(outsideSince)}.`);
  const hard = addDays(outsideSince, HARDENING_DAYS);
  if (asOf >= hard) return passed('leafed', [full, outside], closes);
  return opens('leafed', { from: hard, likely: hard, to: hard }, [full, outside, hardening], closes);
}

export const leafed: SeasonGateRule = (subject, today, notBefore) => {
  if (notBefore) return leavesNotOver(subject, today, notBefore);
  const { leaves } = subject.signs;
  if (!leaves) return look('leafed', [seen('Nobody has noted yet whether it is in leaf.')]);
  if (leaves.value === 'full') return inLeaf(subject, today, leaves);
  const words = { turning: 'turning', falling: 'falling', bare: 'down' }[leaves.value];
  return nextLeaves(subject, today, leaves.on, [
    seen(`Leaves ${words} on the walk of ${dayInWords(leaves.on)}.`),
  ]);
};
