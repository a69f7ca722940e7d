/** Places, species and cultivars for the tests of matching. Monthly figures are of real places, as evidence names them. */

import type { ClimateFigures } from '../../src/core/climate/figures.ts';
import { climateSummary } from '../../src/core/climate/summary.ts';
import { weatherYears } from '../../src/core/climate/weatherYears.ts';
import { day } from '../../src/core/days.ts';
import { evidenceFigures } from '../../src/core/evidence/matchRipening.ts';
import type { Match, MatchContext } from '../../src/core/match/answers.ts';
import { matcherFor } from '../../src/core/match/match.ts';
import { type PlaceOutlook, placeOutlook } from '../../src/core/match/placeOutlook.ts';
import type { MatchedCultivar } from '../../src/core/match/subject.ts';
import { heatStarts } from '../../src/core/phenology/heatStart.ts';
import type { Figure } from '../../src/core/records/common.ts';
import type { Species } from '../../src/core/records/species.ts';
import { noGrowth } from '../../src/core/records/speciesGrowth.ts';

export function figure(value: number, low: number = value, high: number = value): Figure {
  return { low, value, high, standing: 'ours', source: 'a test', note: null };
}

/** A fig, by the figures of the demonstration yard. */
export const fig: Species = {
  id: 'fig',
  botanical: 'Ficus carica',
  common: ['fig'],
  leafDamageC: figure(-10 / 9),
  dormantEstablishedC: figure(-10.3),
  dormantFirstWinterC: figure(-5),
  rootInjuryC: figure(-4),
  rootSevereC: figure(-7),
  chillHours: figure(200, 100, 300),
  chillPortions: figure(10, 5, 15),
  leafFallNightC: figure(-3.3),
  leafFallMeanC: figure(10),
  leafFallSpellDays: figure(14),
  heatBaseC: figure(8),
  heatCapC: figure(36),
  budbreakHeat: figure(164),
  ripensAboveC: figure(13),
  heatNeed: {
    main: { 'very-early': figure(1410), early: figure(1650), mid: figure(1890), late: figure(2170) },
    breba: { early: figure(980), mid: figure(1070) },
  },
  leastDays: { main: null, breba: null },
  bloom: null,
  propagation: {},
  storageC: figure(4, 1, 7),
  bareRootKeepsDays: figure(52, 45, 60),
  hazards: [],
  rainAtRipening: null,
  growth: noGrowth,
  pollination: null,
  troubles: [],
  movement: 'Ask the plant health authority.',
};

/** A species that only differs in what it needs of winter. */
export const chilly: Species = { ...fig, id: 'chilly', chillHours: figure(800), chillPortions: null };

export function cultivar(over: Partial<MatchedCultivar> = {}): MatchedCultivar {
  return {
    id: 'test-fig',
    name: 'Test Fig',
    species: 'fig',
    flavor: 'red-jam',
    ripening: 'mid',
    crops: ['main'],
    pollination: 'unaided',
    chromosomes: null,
    fruit: {
      skin: 'brown',
      blush: null,
      flesh: 'red',
      shape: 'pear',
      lengthMm: 50,
      widthMm: 40,
      eye: 'half-open',
      splits: 'some',
      rain: 'fair',
    },
    hardinessOffsetC: 0,
    trials: [],
    ...over,
  };
}

export const context: MatchContext = {
  asOf: day('2026-11-25'),
  potLiters: 11,
  shelterC: 0,
  waspsNear: false,
  trialClimates: {},
};

/** One cultivar in one place. */
export function matchPlace(
  place: PlaceOutlook,
  one: MatchedCultivar,
  species: Species,
  asked: MatchContext,
): Match {
  return matcherFor(place, species, asked)(one);
}

const kept = new Map<string, PlaceOutlook>();

/** The outlook of figures, made once per name. */
export function outlookOf(name: string, figures: ClimateFigures): PlaceOutlook {
  const known = kept.get(name);
  if (known) return known;
  const years = weatherYears(figures);
  const climate = climateSummary(figures, years);
  const grown = [fig, chilly];
  const starts = heatStarts(years, grown, climate.chill.answer);
  const made = placeOutlook({ id: name, name, figures, years, climate, heatStarts: starts }, grown);
  kept.set(name, made);
  return made;
}

export type TestPlace = Parameters<typeof evidenceFigures>[0];

export function placeNamed(name: TestPlace): PlaceOutlook {
  return outlookOf(name, evidenceFigures(name));
}

/** The same year as far south as it is north, months turned by half a year. */
export function southOf(figures: ClimateFigures): ClimateFigures {
  const turned = (monthly: readonly number[]) => [...monthly.slice(6), ...monthly.slice(0, 6)];
  return {
    ...figures,
    lat: -figures.lat,
    tminC: turned(figures.tminC),
    tmaxC: turned(figures.tmaxC),
    sdTminC: figures.sdTminC && turned(figures.sdTminC),
  };
}

/** All months moved by so many C. */
export function movedBy(figures: ClimateFigures, byC: number): ClimateFigures {
  const moved = (monthly: readonly number[]) => monthly.map(value => value + byC);
  return { ...figures, tminC: moved(figures.tminC), tmaxC: moved(figures.tmaxC) };
}
