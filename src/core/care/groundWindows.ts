/** A year of a tree in the ground. */

import { careFigures } from './careFigures.ts';
import type { CareYear } from './careYear.ts';
import { growingWindows, pruning, ripeningWindows } from './growingWindows.ts';
import { coverNewLeaves } from './potWindows.ts';
import { protectionFigures, type WinterNumber, winterProtection } from './protection.ts';
import { growthStarts, safeDay } from './turningPoints.ts';
import { existing, modeled, resting, type Window } from './window.ts';

/** Mulch against cold only where the coldest weeks are colder than this on average, C, or where a cover goes on. Standing: ours. */
const MULCH_BELOW_C = 10;
/** A cover goes on within this many days of the first day for it. Standing: ours. */
const COVER_DAYS = 28;
/** Trunks are whitewashed where air is dry and the usual high of the hottest days reaches this, C. Standing: ours. */
const SCORCHING_HIGH_C = 32;

/** Mulch goes down within so many days before the cover. Standing: ours. */
const MULCH_BEFORE_COVER_DAYS = 14;

/** Mulch over the roots, and over the crown where that is all the tree needs; before the cover where one goes on from `coverFrom`. */
function mulch(
  { firstFreeze, meanC, coldestDay }: CareYear,
  overCrown: boolean,
  coverFrom: number | null,
): Window | null {
  const freeze = firstFreeze['32F'].p50;
  if (freeze === null) return null;
  if (coverFrom === null && (meanC[coldestDay] as number) >= MULCH_BELOW_C) return null;
  const { low, high } = careFigures.mulchAfterFreeze;
  const usual = Math.min(freeze + low, coldestDay - (high - low));
  const comesFirst = coverFrom !== null && coverFrom <= usual + high - low;
  const from = comesFirst ? coverFrom - MULCH_BEFORE_COVER_DAYS : usual;
  const when = comesFirst
    ? 'Before the cover goes on, once the nights have cooled the ground'
    : '30 to 45 days after the first freeze, and before the coldest weeks';
  return {
    name: 'mulch',
    from,
    to: comesFirst ? coverFrom - 1 : from + high - low,
    trigger: `${when}: 3 to 4 in (7 to 10 cm) deep, a hand’s width off the trunk.${overCrown ? ' Heap it loosely over the crown and break the wind with a screen until spring.' : ''}`,
    because: [
      resting('Mulch laid earlier keeps the ground warm and the tree awake.', careFigures.mulchAfterFreeze),
      resting('Depth of the mulch.', careFigures.mulchDepthCm),
    ],
  };
}

/** For a tree that stands where it had better be in a pot. */
const MOST_COVER = 'bury';

function covers(year: CareYear, winter: WinterNumber): Window[] {
  const { leafFall, firstFreeze, lastFreeze, coldRiskFirst, coldRiskLast } = year;
  const { method, because } = winterProtection(year.species, winter, year.winterLowC);
  if (method === 'none' || method === 'mulch' || leafFall.p50 === null) return [];
  const age = winter === 3 ? 'established' : 'young';
  const noCoverIsEnough = method === 'pot-only';
  const worn = noCoverIsEnough ? MOST_COVER : method;
  const figure = protectionFigures.find(candidate => candidate.method === worn)!;
  const hardened = Math.max(leafFall.p50, firstFreeze['28F'].p50 ?? leafFall.p50);
  const from = Math.max(leafFall.p10 ?? 0, Math.min(hardened, year.coldestDay - COVER_DAYS));
  const to = Math.min(Math.max(from + 7, coldRiskFirst[age].p10 ?? from + COVER_DAYS), from + COVER_DAYS);
  const gain = figure.gainC
    ? ` It is worth ${figure.gainC.low} to ${figure.gainC.high} degrees C (${Math.round(figure.gainC.low * 1.8)} to ${Math.round(figure.gainC.high * 1.8)} degrees F).`
    : '';
  const off = Math.max(
    lastFreeze['24F'].p90 ?? coldRiskLast[age].p90 ?? growthStarts(year).early - 14,
    to + 14,
  );
  return existing([
    {
      name: 'protect',
      from,
      to,
      trigger: `${noCoverIsEnough ? 'No cover here is enough for every winter; this is the most that can be done. ' : ''}${figure.how}${gain} After two or three frosts, before the nights it cannot stand.`,
      because: [
        ...because,
        resting('Worth of the cover and when it is enough.', {
          standing: 'ours',
          source: 'Our working figures; no trial was found.',
        }),
      ],
    },
    {
      name: 'inspect-protection',
      from: to + 14,
      to: off - 7,
      trigger: 'Once a month on a mild dry day: no mice, no mold, no standing water, and nothing growing.',
      because: [
        {
          text: 'A warm wet wrap does more harm than frost.',
          standing: 'practice',
          source: 'Common practice, no source.',
        },
      ],
    },
    {
      name: 'uncover',
      from: off,
      to: Math.max(off + 7, lastFreeze['28F'].p90 ?? off + 14),
      trigger:
        'A little at a time on cloudy days, when the chance of a later hard freeze has dropped to 1 in 10; keep the materials at hand.',
      because: [
        modeled(
          'A night of 24 F (-4.5 C) comes later than the first of these days in one year in ten at the most.',
        ),
      ],
    },
  ]);
}

function shadeTrunk(year: CareYear): Window | null {
  if (year.placeClass.air !== 'dry' || year.hottestHighC < SCORCHING_HIGH_C) return null;
  const { middle } = growthStarts(year);
  return {
    name: 'shade-trunk',
    from: middle,
    to: middle + 30,
    trigger:
      'Before the first great heat: white latex paint, thinned one to one with water, on trunk and bare limbs.',
    because: [
      {
        text: 'Bare bark that meets dry heat splits.',
        standing: 'practice',
        source: 'Common practice, no source.',
      },
      modeled('The air of the ripening months is dry here and the hottest days pass 90 F (32 C) as a rule.'),
    ],
  };
}

/** Every season of every calendar of a place asks for the same. */
const kept = new WeakMap<CareYear, Map<WinterNumber, Window[]>>();

/** All windows of one season of a tree in the ground, for its first, second or a later winter there. */
export function groundWindows(year: CareYear, winter: WinterNumber): readonly Window[] {
  const ofYear = kept.get(year) ?? new Map<WinterNumber, Window[]>();
  const windows = ofYear.get(winter) ?? newGroundWindows(year, winter);
  kept.set(year, ofYear.set(winter, windows));
  return windows;
}

function newGroundWindows(year: CareYear, winter: WinterNumber): Window[] {
  const { early } = growthStarts(year);
  const cover = covers(year, winter);
  const off = cover.find(({ name }) => name === 'uncover')?.from ?? null;
  return existing([
    ...ripeningWindows(year),
    mulch(
      year,
      winterProtection(year.species, winter, year.winterLowC).method === 'mulch',
      cover.find(({ name }) => name === 'protect')?.from ?? null,
    ),
    ...cover,
    pruning(year, off),
    coverNewLeaves(year, Math.max(early, off ?? early), safeDay(year)),
    shadeTrunk(year),
    ...growingWindows(year, 0, false),
  ]);
}
