/** What the class of a place means: the three axes with their bounds in words, taken from the bounds the core decides by. */

import {
  type AirClass,
  airClasses,
  DAMP_BELOW,
  DRY_BELOW_MM,
  HUMID_FROM_MM,
  LONG_SEASON_DAYS,
  MIDDLE_SEASON_DAYS,
  type PlaceClass,
  type SeasonClass,
  seasonClasses,
  THIRSTY_FROM,
  type WinterClass,
  winterClass,
  winterClasses,
} from '../core/climate/placeClass.ts';
import { halfZoneName, zoneLowerBoundC } from '../core/climate/winterZone.ts';
import { temperatureInWords } from '../core/units.ts';
import { rainInWords } from './measures.ts';
import { airWords, seasonWords, winterWords } from './words.ts';

/** Half zones 1a to 13b. */
const HALF_ZONES = 26;

export interface ClassMeaning {
  word: string;
  bounds: string;
}

export interface ClassAxis {
  id: 'winter' | 'season' | 'air';
  name: string;
  /** What the axis decides for a tree. */
  asks: string;
  classes: ClassMeaning[];
}

function winterBounds(winter: WinterClass): string {
  const zones = Array.from({ length: HALF_ZONES }, (_, index) => index).filter(
    index => winterClass(index) === winter,
  );
  const [first, last] = [zones[0] as number, zones.at(-1) as number];
  const [from, to] = [first, last + 1].map(index => temperatureInWords(zoneLowerBoundC(index)));
  const night = 'the coldest night of a usual winter is';
  if (first === 0) return `zone ${halfZoneName(last)} and colder: ${night} below ${to}`;
  if (last === HALF_ZONES - 1) return `zone ${halfZoneName(first)} and warmer: ${night} ${from} or warmer`;
  return `zones ${halfZoneName(first)} to ${halfZoneName(last)}: ${night} between ${from} and ${to}`;
}

const seasonBounds: Record<SeasonClass, string> = {
  short: `fewer than ${MIDDLE_SEASON_DAYS} days between freezes in the middle year`,
  middle: `${MIDDLE_SEASON_DAYS} to ${LONG_SEASON_DAYS - 1} days between freezes in the middle year`,
  long: `${LONG_SEASON_DAYS} days or more between freezes in the middle year`,
};

const airBounds: Record<AirClass, string> = {
  dry: `less than ${rainInWords(DRY_BELOW_MM)} of rain in a ripening month`,
  fair: `${rainInWords(DRY_BELOW_MM)} to ${rainInWords(HUMID_FROM_MM)} of rain in a ripening month`,
  humid: `${rainInWords(HUMID_FROM_MM)} of rain or more in a ripening month`,
};

/** Why rain alone does not decide the class of the air. */
export const airExceptions = `Ripening months are August to October, south of the equator February to April. Where the dew point is known, air that lacks ${THIRSTY_FROM * 100} % or more of the moisture it could hold counts one step drier than its rain says, and air that lacks less than ${DAMP_BELOW * 100} % one step damper.`;

/** The three axes, each from the hardest to the easiest class. */
export const classAxes: readonly ClassAxis[] = [
  {
    id: 'winter',
    name: 'Winter',
    asks: 'Whether a tree lives, and how much shelter it needs.',
    classes: winterClasses.map(winter => ({ word: winterWords[winter], bounds: winterBounds(winter) })),
  },
  {
    id: 'season',
    name: 'Season',
    asks: 'Whether the crop has time to ripen.',
    classes: seasonClasses.map(season => ({ word: seasonWords[season], bounds: seasonBounds[season] })),
  },
  {
    id: 'air',
    name: 'Air while fruit ripens',
    asks: 'Whether ripe fruit keeps or spoils on the tree.',
    classes: airClasses.map(air => ({ word: airWords[air], bounds: airBounds[air] })),
  },
];

/** The classes of one place on the three axes, with their bounds. */
export function classMeanings({ winter, season, air }: PlaceClass): (ClassMeaning & { axis: string })[] {
  const words = { winter: winterWords[winter], season: seasonWords[season], air: airWords[air] };
  return classAxes.map(({ id, name, classes }) => {
    const meaning = classes.find(({ word }) => word === words[id]) as ClassMeaning;
    return { axis: name, ...meaning };
  });
}

/** `cool winters, middling season, humid air`. */
export function classInWords({ winter, season, air }: PlaceClass): string {
  return `${winterWords[winter]} winters, ${seasonWords[season]} season, ${airWords[air]} air`;
}

/** `cool, middling, humid`, for tables. */
export function classInBrief({ winter, season, air }: PlaceClass): string {
  return [winterWords[winter], seasonWords[season], airWords[air]].join(', ');
}
