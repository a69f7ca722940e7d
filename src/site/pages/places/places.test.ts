import { describe, expect, it } from 'vitest';
import { baseYard, catalogueOf, hills, southern, tropics, worldRecords } from '../../../../tests/world.ts';
import type { Catalogue } from '../../../core/catalogue.ts';
import { figuresOfPlace } from '../../../core/climate/place.ts';
import { airClasses, seasonClasses, summerClasses, winterClasses } from '../../../core/climate/placeClass.ts';
import { type ClimateSummary, climateSummary } from '../../../core/climate/summary.ts';
import { normalisePlace, type Place, type WrittenPlace, writtenPlace } from '../../../core/records/place.ts';
import { climateSentences, freezeWarning, howKnown, knownInWords } from '../../words/climateWords.ts';
import { rainInWords, unbroken } from '../../words/measures.ts';
import { classAxes, classInBrief, classMeanings } from '../../words/placeClasses.ts';
import { monthDayInWords, partOfMonth, shortMonthDay } from '../../words/yearDays.ts';
import {
  freezeLines,
  monthLines,
  nameAndWhereabouts,
  placeFigures,
  placeSources,
  shareInWords,
  whereabouts,
} from './place.ts';
import { placeSections } from './places.ts';
import { usRegionOf } from './usRegions.ts';

function placed(id: string, written: WrittenPlace): { place: Place; climate: ClimateSummary } {
  const place = normalisePlace(id, writtenPlace.parse(written));
  return { place, climate: climateSummary(figuresOfPlace(place)) };
}

/** Adelaide. Means of monthly CLIMAT reports 2003-2021, WMO 94672: Deutscher Wetterdienst open data. */
const coast: WrittenPlace = {
  ...southern,
  name: 'Adelaide',
  region: 'South Australia',
  lat: -34.95,
  lon: 138.52,
  elevation_m: 8,
  tmax_c: [29, 28, 26, 22.9, 18.9, 16.1, 15.3, 16.3, 19, 22.2, 25.3, 27],
  tmin_c: [17.1, 16.8, 15.1, 12.5, 10.1, 7.8, 7.5, 7.7, 9.4, 11.2, 13.9, 15.5],
  winter_zone: { zone: '10a', basis: 'Computed from 17 winters; not an official zone' },
  annual_min_c: { mean: 1, source: 'Deutscher Wetterdienst: coldest night of each of 17 winters, averaged.' },
};
/** Freeze dates made up for the test. */
const dated: WrittenPlace = {
  ...hills,
  rain_mm: [89, 88, 104, 92, 98, 128, 137, 112, 101, 72, 110, 93],
  freeze: {
    '32F': {
      first: { p10: '10-01', p50: '10-14', p90: '10-28' },
      last: { p10: '04-05', p50: '04-20', p90: '05-06' },
    },
    '24F': {
      first: { p10: '11-04', p50: null, p90: null },
      last: { p10: null, p50: null, p90: '02-28' },
      none: 0.6,
    },
    source: 'A table made up for the test.',
  },
};

const asheville = placed('asheville', dated);
const canberra = placed('canberra', southern);
const singapore = placed('singapore', tropics);
const adelaide = placed('adelaide', coast);

describe('days of any year', () => {
  it('are named as exactly as the reader needs', () => {
    expect(monthDayInWords('04-09')).toBe('April 9');
    expect(shortMonthDay('12-31')).toBe('Dec 31');
    expect(['04-10', '04-11', '04-20', '04-21', '02-29'].map(partOfMonth)).toEqual([
      'early April',
      'mid April',
      'mid April',
      'late April',
      'late February',
    ]);
    expect(() => monthDayInWords('02-30')).toThrow(RangeError);
  });
});

describe('a place where it can freeze in any month', () => {
  const noSeason = {
    ...asheville.climate,
    seasonDays: { ...asheville.climate.seasonDays, answer: { p10: 0, p50: 0, p90: 12 } },
  };

  it('has no season "of 0 days"', () => {
    expect(climateSentences(noSeason)[1]).toMatch(/can freeze in any month/);
    expect(climateSentences(noSeason).join(' ')).not.toMatch(/\b0 days/);
  });
});

describe('the climate in plain words', () => {
  it('says winter, season and summer', () => {
    const [winter, season, summer] = climateSentences(asheville.climate);
    expect(winter).toMatch(
      /^Winters are \w+: the coldest night is about -?\d+ F \(-[\d.]+ C\) in a usual winter, and -?\d+ F \(-[\d.]+ C\) or colder in one winter in ten\.$/,
    );
    expect(season).toMatch(
      /^The season between freezes lasts about 1[678][05] days, from mid April to mid October\.$/,
    );
    expect(summer).toMatch(
      /^About \d+ days a year are hotter than 86 F \(30 C\), and the air is humid while most fruit ripens\.$/,
    );
  });

  it('runs through the turn of the year in the south', () => {
    expect(climateSentences(canberra.climate)[1]).toMatch(
      /from (?:early|mid|late) (?:September|October|November) to (?:early|mid|late) (?:April|May)\.$/,
    );
  });

  it('says so where it does not freeze', () => {
    expect(climateSentences(singapore.climate)[1]).toBe(
      'It does not freeze: the growing season is the whole year.',
    );
    const { freeze, seasonDays } = singapore.climate;
    const never = { p10: null, p50: null, p90: null };
    const seldom = (none: number, first = never as (typeof freeze)['32F']['answer']['first'], last = first) =>
      climateSentences({
        ...singapore.climate,
        seasonDays,
        freeze: { ...freeze, '32F': { ...freeze['32F'], answer: { first, last, none } } },
      })[1];
    expect(seldom(0.992)).toBe('It freezes in 1 winter in 100: the growing season is the whole year.');
    expect(seldom(0.999)).toMatch(/^It freezes in fewer than 1 winter in 100:/);
    expect(
      seldom(0.37, { p10: '12-11', p50: '01-10', p90: null }, { p10: null, p50: '12-25', p90: '02-06' }),
    ).toBe('It freezes in about 63 winters in 100, hardly ever before mid December or after early February.');
  });

  it('warns where the record of coldest nights contradicts the modeled freezes, and only there', () => {
    const modeled = adelaide.climate.freeze['32F'];
    const often = { ...modeled, answer: { ...modeled.answer, none: 0.1 } };
    const contradicted = { ...adelaide.climate, freeze: { ...adelaide.climate.freeze, '32F': often } };
    expect(freezeWarning(contradicted)).toMatch(/34 F \(1 C\) by the record.*Trust the record/);
    expect(freezeWarning(adelaide.climate)).toBeNull();
    expect(freezeWarning(asheville.climate)).toBeNull();
    expect(freezeWarning(singapore.climate)).toBeNull();
    const published = { ...adelaide.climate.freeze['32F'], standing: 'published' as const };
    expect(
      freezeWarning({ ...adelaide.climate, freeze: { ...adelaide.climate.freeze, '32F': published } }),
    ).toBeNull();
  });

  it('tells how a figure is known', () => {
    expect(knownInWords({ standing: 'published', source: 'The map.' })).toBe('published: The map');
    expect(howKnown({ standing: 'from records', source: 'Computed from a record' }).standing).toBe(
      'from records',
    );
    expect(knownInWords({ standing: 'from records', source: 'Computed from a record' })).toBe(
      'computed from a record',
    );
    expect(knownInWords({ standing: 'modeled from an estimate', source: 'anything' })).toBe(
      'modeled from an estimate',
    );
  });
});

describe('a place in full', () => {
  it('gives every threshold a line with its standing', () => {
    const lines = freezeLines(asheville.climate);
    expect(lines.map(({ threshold }) => threshold)).toEqual([
      '36 F (2 C)',
      '32 F (0 C)',
      '28 F (-2 C)',
      '24 F (-4.5 C)',
      '20 F (-6.5 C)',
    ]);
    expect(lines[1]).toMatchObject({
      last: ['Apr 5', 'Apr 20', 'May 6'],
      first: ['Oct 1', 'Oct 14', 'Oct 28'],
      known: 'published',
      without: null,
    });
    expect(lines[2]?.known).toBe('modeled');
    expect(lines[3]).toMatchObject({
      last: [null, null, 'Feb 28'],
      first: ['Nov 4', null, null],
      none: '60 %',
    });
  });

  it('has words for what does not happen', () => {
    for (const line of freezeLines(singapore.climate)) {
      expect(line).toMatchObject({ none: '100 %', without: 'none in nine years in ten' });
    }
    const figures = placeFigures(singapore.climate, singapore.place.lat);
    const value = (label: string) => figures.find(figure => figure.label === label)?.value;
    expect(value('Season between freezes')).toBe('The whole year');
    expect(value('Winter chill')).toBe('Hardly any');
    for (const figure of figures) expect(`${figure.label} ${figure.value}`).not.toMatch(/NaN|null|undefined/);
  });

  it('never rounds a rare thing to nothing', () => {
    expect([0, 0.001, 0.5, 0.999, 1].map(shareInWords)).toEqual([
      '0 %',
      'under 1 %',
      '50 %',
      'over 99 %',
      '100 %',
    ]);
  });

  it('starts the table in the month in which the ribbon starts', () => {
    expect(
      monthLines(asheville.place, asheville.climate)
        .map(({ name }) => name)
        .at(0),
    ).toBe('January');
    const lines = monthLines(canberra.place, canberra.climate);
    expect(lines.map(({ name }) => name)).toMatchObject({ 0: 'July', 6: 'January', 11: 'June' });
    expect(lines[0]).toMatchObject({ low: { fahrenheit: '33 F', celsius: '0.5 C' }, rain: null });
    expect(monthLines(asheville.place, asheville.climate)[0]?.rain).toBe('3.5 in (89 mm)');
  });

  it('names sources, period and terms, and says what is not known', () => {
    const sources = Object.fromEntries(
      placeSources(canberra.place).map(({ label, value }) => [label, value]),
    );
    expect(sources).toMatchObject({
      Position: '35.31 S, 149.20 E, 1,900 ft (578 m) above the sea',
      Years: '2003-2021',
      Terms: 'CC BY 4.0',
    });
    expect(sources['Spread of single days']).toMatch(/estimated/);
    expect(sources['Dew point']).toMatch(/^Not known/);
    expect(placeSources(asheville.place).find(({ label }) => label === 'Freeze dates')?.value).toMatch(
      /made up/,
    );
  });

  it('says where it is without saying anything twice', () => {
    expect(whereabouts(asheville.place)).toBe('North Carolina, United States');
    expect(whereabouts(singapore.place)).toBe('');
    expect(nameAndWhereabouts(singapore.place)).toBe('Singapore');
    expect(nameAndWhereabouts(asheville.place)).toBe('Asheville, North Carolina, United States');
    expect(whereabouts({ name: 'Seoul', region: 'Seoul', country: 'KR' })).toBe('South Korea');
  });

  it('keeps figures with their units', () => {
    expect(unbroken('5 F (-15 C) and 3 feet')).toBe('5\u00a0F (-15\u00a0C) and 3 feet');
    expect(rainInWords(30)).toBe('1.2 in (30 mm)');
  });
});

describe('classes of places', () => {
  it('has every class of the core once, with the bounds it decides by', () => {
    const counts = classAxes.map(({ classes }) => classes.length);
    expect(counts).toEqual([
      winterClasses.length,
      seasonClasses.length,
      summerClasses.length,
      airClasses.length,
    ]);
    const bounds = classAxes.flatMap(({ classes }) => classes.map(({ bounds: words }) => words));
    expect(new Set(bounds).size).toBe(bounds.length);
    expect(bounds[0]).toBe(
      'zone 5b and colder: the coldest night of a usual winter is below -10 F (-23.5 C)',
    );
    expect(bounds[2]).toMatch(/^zones 7b to 8b: .* between 5 F \(-15 C\) and 20 F/);
    expect(bounds[4]).toMatch(/^zone 10a and warmer/);
  });

  it('tells the class of a place with its bounds', () => {
    const kind = { winter: 'cool', season: 'middle', summer: 'moderate', air: 'humid' } as const;
    expect(classInBrief(kind)).toBe('cool, medium, moderate, humid');
    expect(classMeanings(kind).map(({ word, bounds }) => `${word}: ${bounds}`)).toEqual([
      expect.stringMatching(/^cool: zones 7b to 8b/),
      'medium: 150 to 209 days between freezes in the median year',
      'moderate: 2,000 to 3,001 degree days F above 50 F (1,111 to 1,667 degree days C above 10 C)',
      'humid: 3.0 in (75 mm) of rain or more in a ripening month',
    ]);
  });
});

describe('the list of places', () => {
  const several = [asheville, canberra, singapore, adelaide];
  function listed(home: Place): ReturnType<typeof placeSections> {
    const bare = catalogueOf(worldRecords({ yard: { home: baseYard.home } }), '2026-11-25');
    const catalogue: Catalogue = {
      ...bare,
      home,
      places: several.map(({ place }) => place),
      climates: new Map(several.map(({ place, climate }) => [place.id, climate])),
    };
    return placeSections(catalogue);
  }

  it('groups states by climate region and other places by country', () => {
    const sections = listed(asheville.place);
    expect(
      sections.map(({ heading, groups }) => [
        heading,
        groups.map(group => [group.heading, group.rows.map(({ name }) => name)]),
      ]),
    ).toEqual([
      ['United States', [['Southeast', ['Asheville']]]],
      [
        'Other countries',
        [
          ['Australia', ['Adelaide', 'Canberra']],
          ['Singapore', ['Singapore']],
        ],
      ],
    ]);
    expect(listed(canberra.place)[0]?.heading).toBe('Other countries');
  });

  it('carries what a grower compares, and how the zone is known', () => {
    const rows = listed(asheville.place).flatMap(({ groups }) => groups.flatMap(group => group.rows));
    const row = (name: string) => rows.find(candidate => candidate.name === name)!;
    expect(row('Asheville')).toMatchObject({
      path: '/places/asheville/',
      lastFreeze: 'Apr 20',
      firstFreeze: 'Oct 14',
      zoneMark: 'modeled',
      region: 'North Carolina',
    });
    expect(row('Adelaide')).toMatchObject({ zone: '10a', zoneMark: 'records' });
    expect(row('Singapore')).toMatchObject({
      season: 'all year',
      seasonRange: null,
      lastFreeze: 'most years none',
      chill: '0',
      region: null,
    });
  });

  it('knows every state once', () => {
    // Karl and Koss 1984: nine regions of the 48 states.
    expect(
      ['Maine', 'Virginia', 'Missouri', 'Iowa', 'Texas', 'Wyoming', 'Utah', 'Idaho', 'Nevada'].map(
        usRegionOf,
      ),
    ).toEqual([
      'Northeast',
      'Southeast',
      'Ohio Valley',
      'Upper Midwest',
      'South',
      'Northern Rockies and Plains',
      'Southwest',
      'Northwest',
      'West',
    ]);
    expect(usRegionOf('Bavaria')).toBeNull();
  });
});
