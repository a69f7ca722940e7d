/**
 * What is said of a fig in five climates, and how trees travel between two of them, in full. Read through line by line; no published verdicts
 * exist, so each file starts from what is known of such a climate (common practice, no source, but where a source is named). A change of
 * the model moves days and shares here: read the file again before it is taken over (`vitest -u`), for words that no longer fit the figures.
 *
 * - Davis, dry and hot: mid-season figs ripen from August (Davis is in the fig country of California); the tree stands the winter.
 * - Johnson County, Kansas: killed to the ground outdoors in hard winters, so a pot in a store or burying; ripens in August and early September.
 * - Bonn: brebas before main crops, which ripen in good years only; wrapped or against a wall. With rain and a fruit that splits, losses.
 * - Sfax: no winter to speak of; what the record has no figure for is not promised.
 * - Beijing: cold, dry winters; early figs are laid down or wrapped. A trial there counts for there.
 * - Trees in leaf travel between the freezes, leafless ones from leaf fall to budbreak when a mild spell comes; `weekTurns.test.ts` has each turn of
 *   the weeks to Beijing and Davis with its reason.
 */
import { describe, expect, it } from 'vitest';
import { findWinters, freezeOdds } from '../../src/core/climate/freezes.ts';
import { weatherYears } from '../../src/core/climate/weatherYears.ts';
import { day } from '../../src/core/days.ts';
import { evidenceFigures } from '../../src/core/evidence/matchRipening.ts';
import { destinationOf, homeDays } from '../../src/core/match/destination.ts';
import { sendingWeeks } from '../../src/core/match/sending.ts';
import type { MatchedCultivar } from '../../src/core/match/subject.ts';
import { canTravelNow } from '../../src/core/match/travel.ts';
import { forms } from '../../src/core/records/common.ts';
import type { Trial } from '../../src/core/records/cultivar.ts';
import { normaliseSending } from '../../src/core/records/sending.ts';
import { matchInLines } from './goldenWords.ts';
import { context, cultivar, fig, matchPlace, outlookOf, placeNamed, type TestPlace } from './places.ts';

const fruit = cultivar().fruit;
const frail = { ...fruit, eye: 'open', splits: 'high', rain: 'poor' } as const;

function trial(over: Partial<Trial>): Trial {
  return {
    where: 'a garden near by',
    place: 'near',
    class: { winter: 'cold', season: 'middle', summer: null, air: 'fair' },
    crop: 'main',
    from: 2015,
    to: 2024,
    winter: 'unhurt',
    ripened: 'most',
    note: null,
    ...over,
  };
}

const says = (place: TestPlace, over: Partial<MatchedCultivar>, asked = context) =>
  matchInLines(matchPlace(placeNamed(place), cultivar(over), fig, asked)).join('\n');

describe('a match in full', () => {
  it.each<[string, TestPlace, Partial<MatchedCultivar>, string]>([
    ['davis-mid', 'davis', {}, '2026-11-25'],
    ['davis-late-in-june', 'davis', { ripening: 'late', hardinessOffsetC: 2 }, '2027-06-10'],
    ['johnson-mid', 'johnson', {}, '2026-11-25'],
    ['johnson-late-in-april', 'johnson', { ripening: 'late', pollination: 'wasp-main' }, '2027-04-05'],
    [
      'bonn-early',
      'bonn',
      { ripening: 'early', crops: ['breba', 'main'], hardinessOffsetC: -1 },
      '2026-11-25',
    ],
    ['bonn-mid-in-september', 'bonn', { crops: ['breba', 'main'] }, '2026-09-10'],
    ['sfax-late', 'sfax', { ripening: 'late', crops: ['breba', 'main'] }, '2026-11-25'],
    [
      'beijing-very-early',
      'beijing',
      { ripening: 'very-early', pollination: 'partner', chromosomes: 60 },
      '2027-02-20',
    ],
  ])('%s', async (name, place, over, asOf) => {
    await expect(says(place, over, { ...context, asOf: day(asOf) })).toMatchFileSnapshot(
      `golden/${name}.txt`,
    );
  });

  it('counts the trials of a climate like it', async () => {
    const place = placeNamed('beijing');
    const near = { ...context, trialClimates: { near: place.traits } };
    const trials = [trial({}), trial({ winter: 'died-back', ripened: 'some', from: 2022, to: 2022 })];
    await expect(says('beijing', { trials }, near)).toMatchFileSnapshot('golden/beijing-with-trials.txt');
  });

  it('speaks of rain where the rain is known', async () => {
    // The means of Bonn, 1991 to 2020, to about 5 mm, from memory.
    const rainMm = [55, 50, 50, 45, 65, 75, 80, 75, 60, 55, 55, 60];
    const wet = outlookOf('wet Bonn', { ...evidenceFigures('bonn'), rainMm });
    const found = matchPlace(wet, cultivar({ ripening: 'very-early', fruit: frail }), fig, context);
    await expect(matchInLines(found).join('\n')).toMatchFileSnapshot('golden/bonn-rain.txt');
  });
});

describe('the way in full', () => {
  const rules = normaliseSending({ weekdays: ['mon', 'tue'], transit_days: 3, not_to: [] });
  const yearsOf = (site: TestPlace) => weatherYears(evidenceFigures(site), 400);
  const home = homeDays(yearsOf('johnson'), rules);
  const endOf = (site: TestPlace) => {
    const years = yearsOf(site);
    return destinationOf(site, years, freezeOdds(findWinters(years), 32), rules, home);
  };
  const johnson = endOf('johnson');

  it.each<TestPlace>(['bonn', 'beijing', 'davis'])('from Kansas to a climate like that of %s', async site => {
    const there = endOf(site);
    const weeks = forms.flatMap(form => [
      form,
      ...sendingWeeks(johnson, there, form, rules, day('2026-11-30')).map(
        ({ monday, state, share, lining, closedBy, receiving }) =>
          `  ${monday} ${state} ${share.toFixed(2)} ${lining} ${closedBy ?? '-'} ${receiving}`,
      ),
    ]);
    await expect(weeks.join('\n')).toMatchFileSnapshot(`golden/weeks-to-${site}.txt`);
  });

  it.each(['2026-12-07', '2027-03-15', '2027-06-07', '2027-10-04'])('on %s', async asOf => {
    const route = {
      home: { ...johnson, country: 'US' },
      there: { ...endOf('beijing'), region: 'Kansas', country: 'US' },
    };
    const answer = canTravelNow(route, rules, day(asOf));
    if (!answer.route) throw new Error('no route');
    const lines = answer.forms.flatMap(({ form, state, leaving, wait, from, withoutStore, because }) => [
      `${form}: ${state}, ${leaving}, wait ${wait.middle} ${wait.late}, from ${from?.state ?? '-'} ${from?.monday ?? '-'}, without a store ${withoutStore ?? '-'}`,
      ...because.map(({ text, standing }) => `  ${standing}: ${text}`),
    ]);
    await expect(lines.join('\n')).toMatchFileSnapshot(`golden/now-${asOf}.txt`);
  });
});
