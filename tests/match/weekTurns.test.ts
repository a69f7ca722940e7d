/**
 * The golden weeks from Kansas read line by line: each week in which something changes, and why it changes there. What a reason rests on: means
 * of 1981 to 2010 and later of the three sites (`src/core/evidence/matchRipening.ts`), limits of ours by form (35 F and 95 F in leaf, 20 F and
 * 80 F dormant in a pot, 28 F and 80 F with bare roots in a plain carton), three days on the way from a Monday or Tuesday.
 *
 * By the model the trees in Kansas sleep from November 7 (bare-root from November 14) to April 27. Freezes of 32 F at Beijing run from November 4 to
 * April 4 in a late year, its usual day is below 4 C from November 21 to March 7 and below 0 C from December 9 to February 14; at Davis freezes
 * run from November 22 to March 27 in a late year, and no usual day is below 4 C.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

type Turn = readonly [monday: string, turnsTo: string, why: string];

const turns: Readonly<Record<string, Readonly<Record<string, readonly Turn[]>>>> = {
  beijing: {
    'leafed-pot': [
      ['2026-11-30', 'closed freezes-there freezing', 'winter at both ends'],
      [
        '2027-03-22',
        'closed weather settle',
        'comes on March 25, within two weeks of April 4; nights of 35 F in Kansas',
      ],
      ['2027-04-05', 'by-forecast - settle', 'three mild nights in a row come in four years of ten'],
      ['2027-09-20', 'open - settle', 'neither heat nor cold at either end in nine years of ten'],
      [
        '2027-10-11',
        'by-forecast - settle',
        'first nights of 35 F in Kansas, where the first freeze comes about October 28',
      ],
      [
        '2027-11-01',
        'closed freezes-there freezing',
        'comes on November 4, the day of the first freeze there',
      ],
    ],
    'dormant-pot': [
      [
        '2026-11-30',
        'by-forecast - hold',
        'asleep; comes on December 3, when the usual day is between 0 and 4 C',
      ],
      [
        '2026-12-07',
        'closed weather cold-store',
        'comes on December 10, below 0 C; nights of 20 F at both ends',
      ],
      ['2027-02-15', 'closed weather hold', 'comes on February 18, past the 14th'],
      ['2027-03-01', 'by-forecast - hold', 'nights of 20 F grow rare; comes on March 4, before the 7th'],
      ['2027-03-08', 'by-forecast - plant', 'comes on March 11'],
      ['2027-04-26', 'closed weather plant', 'days of 80 F at both ends'],
      ['2027-05-03', 'closed awake plant', 'past April 27'],
      ['2027-11-08', 'by-forecast - plant', 'asleep from the 7th'],
      ['2027-11-22', 'by-forecast - hold', 'comes on November 25, past the 21st'],
    ],
    'bare-root': [
      ['2026-11-30', 'closed weather hold', 'a night of 28 F comes on nearly every trip'],
      ['2026-12-07', 'closed weather cold-store', 'as with pots'],
      ['2027-02-15', 'closed weather hold', 'as with pots'],
      ['2027-03-08', 'closed weather plant', 'as with pots, and nights of 28 F until late March'],
      ['2027-03-22', 'by-forecast - plant', 'the last 28 F is past in most years'],
      ['2027-04-26', 'closed weather plant', 'days of 80 F at both ends'],
      ['2027-05-03', 'closed awake plant', 'past April 27'],
      ['2027-11-15', 'closed weather plant', 'asleep from the 14th, but nights of 28 F are back'],
      ['2027-11-22', 'closed weather hold', 'comes on November 25'],
    ],
  },
  davis: {
    'leafed-pot': [
      ['2026-11-30', 'closed freezes-there freezing', 'freezes at both ends'],
      [
        '2027-03-15',
        'closed weather settle',
        'comes on March 18, within two weeks of March 27; Kansas is too cold',
      ],
      ['2027-03-29', 'by-forecast - settle', 'three mild nights in a row come in Kansas'],
      [
        '2027-06-21',
        'closed weather settle',
        'a usual July day at Davis is 34 C, a degree below the 95 F it may not meet',
      ],
      ['2027-08-30', 'by-forecast - settle', 'the heat lets up'],
      ['2027-11-08', 'closed weather settle', 'nights of 35 F in Kansas'],
      ['2027-11-22', 'closed freezes-there freezing', 'comes on November 25, past the first freeze there'],
    ],
    'dormant-pot': [
      ['2026-11-30', 'by-forecast - plant', 'asleep; the ground at Davis stays open all winter'],
      [
        '2026-12-21',
        'closed weather plant',
        'the coldest weeks in Kansas: nights of 20 F on three trips of four',
      ],
      ['2027-02-08', 'by-forecast - plant', 'mild spells come oftener again'],
      ['2027-04-26', 'closed weather plant', 'days of 80 F'],
      ['2027-05-03', 'closed awake plant', 'past April 27'],
      ['2027-11-08', 'by-forecast - plant', 'asleep from the 7th'],
    ],
    'bare-root': [
      ['2026-11-30', 'closed weather plant', 'nights of 28 F in Kansas on most trips'],
      ['2027-03-08', 'by-forecast - plant', 'three nights above 28 F come in three years of ten'],
      ['2027-04-26', 'closed weather plant', 'days of 80 F'],
      ['2027-05-03', 'closed awake plant', 'past April 27'],
      ['2027-11-15', 'by-forecast - plant', 'asleep from the 14th, and Davis is mild'],
      ['2027-11-22', 'closed weather plant', 'just under three years of ten'],
    ],
  },
};

/** Weeks of a golden file in which state, reason or what the receiver can do differs from the week before. */
function turnsIn(site: string): Record<string, [string, string][]> {
  const text = readFileSync(new URL(`golden/weeks-to-${site}.txt`, import.meta.url), 'utf8');
  const found: Record<string, [string, string][]> = {};
  let form = '';
  for (const line of text.split('\n')) {
    if (!line.startsWith(' ')) {
      form = line;
      found[form] = [];
      continue;
    }
    const [monday, state, , , closedBy, receiving] = line.trim().split(' ') as [string, ...string[]];
    const told = `${state} ${closedBy} ${receiving}`;
    const runs = found[form] as [string, string][];
    if (runs.at(-1)?.[1] !== told) runs.push([monday, told]);
  }
  return found;
}

describe.each(Object.keys(turns))('weeks to %s', site => {
  it.each(Object.keys(turns[site]!))('%s turn where there is a reason, and nowhere else', form => {
    const said = turns[site]![form]!;
    expect(turnsIn(site)[form]).toEqual(said.map(([monday, told]) => [monday, told]));
  });
});
