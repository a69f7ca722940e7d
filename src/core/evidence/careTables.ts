/** Evidence for pots in the cold, for watering and for storage. */

import { careFigures } from '../care/careFigures.ts';
import { freezeThroughHours, mixFollower } from '../care/potFreeze.ts';
import {
  plantedStages,
  plantedWateringDays,
  plantedWaterLiters,
  potUseLiters,
  potWateringDays,
} from '../care/watering.ts';
import { extraterrestrialRadiation } from '../climate/evapotranspiration.ts';
import { daysToForce, FORCING_NEED } from '../phenology/forcing.ts';
import { classLiters, containerClasses } from '../records/container.ts';
import { LITERS_PER_US_GALLON } from '../units.ts';
import type { EvidenceTable } from './table.ts';
import { rowsFrom } from './table.ts';

/** Liters in the middle of a class of the trade. */
function litersOf(name: string): number {
  const found = containerClasses.find(candidate => candidate.name === name);
  if (!found) throw new RangeError(`no container class ${name}`);
  return classLiters(found);
}

/** Hours to freeze through at -5 C and -10 C. */
const freezeThrough = [
  ['#1', 24, 12],
  ['#3', 36, 18],
  ['#5', 42, 21],
  ['#15', 62, 31],
] as const;

function pots(): EvidenceTable {
  const again = rowsFrom(
    'Heat balance of a moist pot, worked separately: 40 % water, 334 kJ/kg, film 10 W/m2 K, base insulated',
    'computed',
  );
  const plank = rowsFrom(
    'Plank 1913, freezing-time equation: shape factor of the film term, sphere 1/6, long cylinder 1/4',
    'memory',
  );
  const physics = rowsFrom('Water and ice together stay at 0 C, any physics textbook');
  const liters = litersOf('#3');
  // Film term of Plank's equation solved for its shape factor: P = t (T) h / (rho L d).
  const diameterM = ((4 * liters) / 1000 / Math.PI) ** (1 / 3);
  const shape = (freezeThroughHours(liters, -1) * 3600 * 10) / (0.4 * 1000 * 334_000 * diameterM);
  const mix = mixFollower(liters);
  return {
    id: 'pot-freeze',
    title: 'How long a pot takes to freeze through',
    about:
      'The water in the mix gives off heat as it turns to ice, so a wet pot holds at 0 C for hours or days. Calendars take the mix for no warmer than this estimate allows.',
    weak: 'An engineering estimate, not a measurement. It leaves out the slow passage of heat through the frozen rim, so real pots last longer, large ones up to about twice as long; wind, dry mix and a bare base shorten the time.',
    rows: [
      ...freezeThrough.flatMap(([name, mild, hard]) => [
        again.number(`${name} pot in air at -5 C`, mild, freezeThroughHours(litersOf(name), -5), 2, 'h'),
        again.number(`${name} pot in air at -10 C`, hard, freezeThroughHours(litersOf(name), -10), 1, 'h'),
      ]),
      again.number(
        'the same with doubled insulation, #3 at -5 C',
        72,
        freezeThroughHours(liters, -5, 0.1),
        3,
        'h',
      ),
      plank.number(
        'shape factor of a pot as deep as wide, between the two',
        (1 / 6 + 1 / 4) / 2,
        shape,
        1 / 24,
        '',
      ),
      physics.number('mix of a #3 pot after one day at -3 C, not yet frozen through', 0, mix(-3), 0, 'C'),
    ],
    notChecked: [
      {
        what: 'temperature at which roots of each species die',
        why: 'no measured limit was found for fig, pomegranate, mulberry, persimmon or jujube; green ash (Santamour 1979) stands in',
      },
      {
        what: 'worth of cages, wraps and burying',
        why: 'no trial with these trees was found; the gains are our working figures',
      },
    ],
  };
}

/** Reference evapotranspiration in the middle of summer, mm a day, and what we make of it: days between waterings. */
const summerDays = [
  // place, mm a day, #1, #3, #5 and #15 pots, ground in weeks 1 and 2, 3 to 12, and later
  ['Phoenix in July', 7.13, [1, 1.2, 1.3, 2], [1, 1.8, 4.9]],
  ['Houston in July', 5.39, [1, 1.6, 1.8, 2.6], [1, 2.3, 6.5]],
  ['Boston in July', 4.6, [1.2, 1.8, 2.1, 3], [1.1, 2.7, 7.6]],
  ['Adelaide in January', 5.73, [1, 1.5, 1.7, 2.4], [1, 2.2, 6.1]],
  ['Camborne in July', 2.97, [1.9, 2.8, 3.2, 4.7], [1.7, 4.2, 11.8]],
] as const;

function watering(): EvidenceTable {
  const fao = rowsFrom(
    'Allen et al. 1998, FAO Irrigation and Drainage Paper 56, example 8: radiation above the atmosphere at 20 degrees south on September 3',
  );
  const florida = rowsFrom(
    'University of Florida IFAS, EP113 and ENH857: 2 to 3 gallons for each inch of the stem',
  );
  const minnesota = rowsFrom(
    'University of Minnesota Extension: 25 to 30 % of the volume of the pot at a time',
  );
  const beeson = rowsFrom('Beeson 2010, HortScience 45:1260: 1.3 liters a day at market size in 11.4 liters');
  const again = rowsFrom('The same sums worked separately from our rule', 'computed');
  const classes = ['#1', '#3', '#5', '#15'].map(litersOf);
  return {
    id: 'watering',
    title: 'Days between waterings, and how much',
    about:
      'What a lawn would give off (reference evapotranspiration) says how fast a pot or the ground around a new tree dries. The weight of the pot in your hands decides better.',
    weak: 'One coefficient for pots, fitted to one trial. How the published days for newly planted trees stretch with the weather is ours. Hargreaves runs low in dry desert wind.',
    rows: [
      fao.number(
        'radiation, MJ per square meter and day',
        32.2,
        extraterrestrialRadiation(-20, 246),
        0.05,
        'MJ',
      ),
      beeson.number('a #3 pot on a day of 6.8 mm', 1.3, potUseLiters(6.8, 11.4), 0.05, 'liters'),
      florida.number(
        'a stem of 1 in in a #3 pot, gallons',
        2.5,
        plantedWaterLiters(25.4, 11.4) / LITERS_PER_US_GALLON,
        0.5,
        'gal',
      ),
      minnesota.number(
        'a thin stem in a #5 pot, share of the pot',
        0.275,
        plantedWaterLiters(5, 17) / 17,
        0.025,
        '',
      ),
      ...summerDays.flatMap(([place, mm, inPots, inGround]) => [
        ...inPots.map((days, index) =>
          again.number(
            `${place}, ${['#1', '#3', '#5', '#15'][index]} pot`,
            days,
            potWateringDays(mm, classes[index]!),
            0.12,
            'days',
          ),
        ),
        ...inGround.map((days, index) =>
          again.number(
            `${place}, in the ground, ${['weeks 1 and 2', 'weeks 3 to 12', 'later'][index]}`,
            days,
            plantedWateringDays(plantedStages[index]!, mm),
            0.06,
            'days',
          ),
        ),
      ]),
    ],
    notChecked: [
      { what: 'how much faster small pots dry', why: 'the power of the volume is ours; no trial was found' },
    ],
  };
}

function storing(): EvidenceTable {
  const practice = rowsFrom('Common practice, no source', 'practice');
  const richardson = rowsFrom(
    'HortScience 52(4):560, 2017: 4,096 to 7,928 growing degree hours over 20 pomegranates, after Richardson and others 1974',
    'computed',
  );
  const { regrowth } = careFigures;
  return {
    id: 'storing',
    title: 'Keeping a tree asleep, and waking it',
    about: 'How long a tree that has had its winter takes to its first leaves, at steady temperatures.',
    weak: 'The need was measured on pomegranates only. Steady temperatures are extrapolated; no trial of budbreak at 50 F was found.',
    rows: [
      ...(
        [
          [7, 68, 132],
          [10, 31, 60],
          [12, 23, 44],
          [15, 16, 32],
          [18, 13, 25],
          [20, 11, 21],
          [25, 8, 16],
        ] as const
      ).flatMap(([meanC, quick, slow]) => [
        richardson.number(
          `the quickest at ${meanC} C`,
          quick,
          daysToForce(meanC, FORCING_NEED.low),
          1,
          'days',
        ),
        richardson.number(
          `the slowest at ${meanC} C`,
          slow,
          daysToForce(meanC, FORCING_NEED.high),
          1,
          'days',
        ),
      ]),
      practice.number(
        'an unwoken tree in a warm room at 22 C grows within 7 to 14 days: the quickest',
        10.5,
        daysToForce(22, FORCING_NEED.low),
        3.5,
        'days',
      ),
      practice.number('days told to customers, the longest', 14, regrowth.high, 0, 'days'),
    ],
    notChecked: [
      {
        what: 'nights before a tree is put away',
        why: 'about 25 to 20 F is common practice without a source, and young figs are damaged at 25 to 27 F; the rule by age is ours',
      },
    ],
  };
}

/** Tables for pots, watering and storage. */
export function careTables(): EvidenceTable[] {
  return [pots(), watering(), storing()];
}
