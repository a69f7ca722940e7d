/** Evidence for pots in the cold, for watering and for storage. */

import { careFigures } from '../care/careFigures.ts';
import { freezeThroughHours, mixFollower } from '../care/potFreeze.ts';
import { wateringDays } from '../care/watering.ts';
import { vapourDeficitKpa } from '../climate/humidity.ts';
import { classLitres, containerClasses } from '../records/container.ts';
import { celsiusToFahrenheit } from '../units.ts';
import type { EvidenceTable } from './table.ts';
import { rowsFrom } from './table.ts';

/** Litres in the middle of a class of the trade. */
function litresOf(name: string): number {
  const found = containerClasses.find(candidate => candidate.name === name);
  if (!found) throw new RangeError(`no container class ${name}`);
  return classLitres(found);
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
  const litres = litresOf('#3');
  // Film term of Plank's equation solved for its shape factor: P = t (T) h / (rho L d).
  const diameterM = ((4 * litres) / 1000 / Math.PI) ** (1 / 3);
  const shape = (freezeThroughHours(litres, -1) * 3600 * 10) / (0.4 * 1000 * 334_000 * diameterM);
  const mix = mixFollower(litres);
  return {
    id: 'pot-freeze',
    title: 'How long a pot takes to freeze through',
    about:
      'The water in the mix gives off heat as it turns to ice, so a wet pot holds at 0 C for hours or days. Calendars take the mix for no warmer than this estimate allows.',
    weak: 'An engineering estimate, not a measurement. It leaves out the slow passage of heat through the frozen rim, so real pots last longer, large ones up to about twice as long; wind, dry mix and a bare base shorten the time.',
    rows: [
      ...freezeThrough.flatMap(([name, mild, hard]) => [
        again.number(`${name} pot in air at -5 C`, mild, freezeThroughHours(litresOf(name), -5), 2, 'h'),
        again.number(`${name} pot in air at -10 C`, hard, freezeThroughHours(litresOf(name), -10), 1, 'h'),
      ]),
      again.number(
        'the same with doubled insulation, #3 at -5 C',
        72,
        freezeThroughHours(litres, -5, 0.1),
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

function watering(): EvidenceTable {
  const fao = rowsFrom(
    'Allen et al. 1998, FAO Irrigation and Drainage Paper 56, example 5 (18 to 25 C, humidity 54 to 82 %), through our rule of 3 days over the deficit',
    'own',
  );
  const practice = rowsFrom('Common practice, no source', 'practice');
  const usual = litresOf('#3');
  const day = vapourDeficitKpa(18, 25, { rhMax: 82, rhMin: 54 });
  const hot = vapourDeficitKpa(20, 36, { rhMean: 45 });
  return {
    id: 'watering',
    title: 'Days between waterings of a pot in leaf',
    about:
      'Drying power of the air decides, and the size of the pot. The weight of the pot in your hands decides better.',
    weak: 'The rule is ours: three days divided by the deficit in kPa for a #3 pot, between one and ten. No trial was found.',
    rows: [
      fao.number('the example day, #3 pot', 3 / 0.914, wateringDays(day, usual), 0.05, 'days'),
      practice.number('a hot dry day, #3 pot', 1.5, wateringDays(hot, usual), 0.5, 'days'),
      practice.number('cool damp days, #3 pot', 8.5, wateringDays(0.35, usual), 1.5, 'days'),
    ],
    notChecked: [
      { what: 'how much faster small pots dry', why: 'cube root of the volume is ours; no trial was found' },
    ],
  };
}

function storing(): EvidenceTable {
  const garden = rowsFrom(
    'Our figure, set around the advice of the New York Botanical Garden (plant answers): stored figs, sparingly once a month',
    'own',
  );
  const nursery = rowsFrom(
    'Our figure, taken from USDA Forest Service, Reforestation Toolbox, Storage: unfrozen bare-root stock at 33 to 34 F',
    'own',
  );
  const practice = rowsFrom('Common practice, no source', 'practice');
  const { storedWaterDays, stores, regrowth, moveInNights } = careFigures;
  const middle = ({ low, high }: { low: number; high: number }) => (low + high) / 2;
  return {
    id: 'storing',
    title: 'Keeping a tree asleep',
    about: 'Figures the calendars use for stores, beside the advice they were taken from.',
    weak: 'Advice on how cold a store may be runs from 20 F to 32 F for figs; ours keeps to the warmer end.',
    rows: [
      garden.number(
        'days between waterings in the store',
        30.4,
        middle(storedWaterDays),
        storedWaterDays.high - middle(storedWaterDays),
        'days',
      ),
      nursery.number('cold end of the store', 33.5, celsiusToFahrenheit(stores.low), 0.5, 'F'),
      practice.number('an unwoken tree in the warmth grows', 10.5, middle(regrowth), 0.5, 'days'),
      practice.number(
        'nights before a tree is put away',
        22.5,
        celsiusToFahrenheit(middle(moveInNights)),
        0.2,
        'F',
      ),
    ],
    notChecked: [],
  };
}

/** Tables for pots, watering and storage. */
export function careTables(): EvidenceTable[] {
  return [pots(), watering(), storing()];
}
