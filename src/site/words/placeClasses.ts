/** What the class of a place means: the four axes with their bounds in words, taken from the bounds the core decides by. */

import {
  type AirClass,
  airClasses,
  type ClimateKind,
  DAMP_BELOW,
  DRY_BELOW_MM,
  HUMID_FROM_MM,
  LONG_SEASON_DAYS,
  MIDDLE_SEASON_DAYS,
  type PlaceClass,
  type SeasonClass,
  type SummerClass,
  seasonClasses,
  summerBounds,
  summerByHuglin,
  summerClasses,
  THIRSTY_FROM,
  type WinterClass,
  winterClass,
  winterClasses,
} from '../../core/climate/placeClass.ts';
import type { ClimateSummary } from '../../core/climate/summary.ts';
import { halfZoneName, zoneLowerBoundC } from '../../core/climate/winterZone.ts';
import { degreesCToF, temperatureInWords } from '../../core/units.ts';
import { rainInWords } from './measures.ts';
import { airWords, seasonWords, summerWords, winterWords } from './words.ts';

/** Half zones 1a to 13b. */
const HALF_ZONES = 26;

export interface ClassMeaning {
  word: string;
  bounds: string;
}

export interface ClassAxis {
  id: 'winter' | 'season' | 'summer' | 'air';
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
  short: `fewer than ${MIDDLE_SEASON_DAYS} days between freezes in the median year`,
  middle: `${MIDDLE_SEASON_DAYS} to ${LONG_SEASON_DAYS - 1} days between freezes in the median year`,
  long: `${LONG_SEASON_DAYS} days or more between freezes in the median year`,
};

/** `2,000 to 3,000 F (1,111 to 1,667 C)`. */
function degreeDaysInWords(summer: SummerClass): string {
  const { from, to } = summerBounds(summer);
  const whole = (value: number) => Math.round(value).toLocaleString('en-US');
  const span = (toUnit: (value: number) => number) =>
    from === null
      ? `fewer than ${whole(toUnit(to as number))}`
      : to === null
        ? `${whole(toUnit(from))} or more`
        : `${whole(toUnit(from))} to ${whole(toUnit(to))}`;
  return `${span(degreesCToF)} degree days F above 50 F (${span(value => value)} degree days C above 10 C)`;
}

const airBounds: Record<AirClass, string> = {
  dry: `less than ${rainInWords(DRY_BELOW_MM)} of rain in a ripening month`,
  fair: `${rainInWords(DRY_BELOW_MM)} to ${rainInWords(HUMID_FROM_MM)} of rain in a ripening month`,
  humid: `${rainInWords(HUMID_FROM_MM)} of rain or more in a ripening month`,
};

/** Why rain alone does not decide the class of the air. */
export const airExceptions = `Ripening months are August to October, south of the equator February to April. Where the dew point is known, air that lacks ${THIRSTY_FROM * 100} % or more of the moisture it could hold counts one step drier than its rain says, and air that lacks less than ${DAMP_BELOW * 100} % one step damper.`;

/** How the class of the summer is found, and what may speak against it. */
export const summerExceptions =
  'The heat of a summer is added up from April to October, south of the equator from October to April, as Winkler did for vineyards; the bounds are those of Jones and others 2010 (American Journal of Enology and Viticulture 61:313). Along cool coasts nights stay warm and days do not: where the Huglin index, which counts the highs as much as the means, would give another class, the page of the place says so.';

/** The four axes, each from the hardest to the easiest class. */
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
    asks: 'How long leaves are safe from freezes.',
    classes: seasonClasses.map(season => ({ word: seasonWords[season], bounds: seasonBounds[season] })),
  },
  {
    id: 'summer',
    name: 'Summer heat',
    asks: 'Whether the crop has the heat to ripen.',
    classes: summerClasses.map(summer => ({ word: summerWords[summer], bounds: degreeDaysInWords(summer) })),
  },
  {
    id: 'air',
    name: 'Air while fruit ripens',
    asks: 'Whether ripe fruit keeps or spoils on the tree.',
    classes: airClasses.map(air => ({ word: airWords[air], bounds: airBounds[air] })),
  },
];

/** The classes of a place on the four axes, or of a kind of climate on three, with their bounds. */
export function classMeanings({
  winter,
  season,
  summer,
  air,
}: ClimateKind & Partial<PlaceClass>): (ClassMeaning & { axis: string })[] {
  const words = {
    winter: winterWords[winter],
    season: season === undefined ? null : seasonWords[season],
    summer: summerWords[summer],
    air: airWords[air],
  };
  const told = classAxes.filter(({ id }) => words[id] !== null);
  return told.map(({ id, name, classes }) => {
    const meaning = classes.find(({ word }) => word === words[id]) as ClassMeaning;
    return { axis: name, ...meaning };
  });
}

/** `cool winters, medium season, warm summers, humid air`. */
export function classInWords({ winter, season, summer, air }: PlaceClass): string {
  return `${winterWords[winter]} winters, ${seasonWords[season]} season, ${summerWords[summer]} summers, ${airWords[air]} air`;
}

/** `cool winters, warm summers, humid air`: a kind of climate. */
export function kindInWords({ winter, summer, air }: ClimateKind): string {
  return `${winterWords[winter]} winters, ${summerWords[summer]} summers, ${airWords[air]} air`;
}

/** `cool, medium, warm, humid`, for tables. */
export function classInBrief({ winter, season, summer, air }: PlaceClass): string {
  return [winterWords[winter], seasonWords[season], summerWords[summer], airWords[air]].join(', ');
}

/** Where the Huglin index would call the summer something else, that in a sentence; null where both agree. */
export function otherSummer({ heat, class: kind }: Pick<ClimateSummary, 'heat' | 'class'>): string | null {
  const { huglinC } = heat.summer.answer;
  const byHuglin = summerByHuglin(huglinC);
  if (byHuglin === kind.answer.summer) return null;
  return `By the Huglin index (${Math.round(huglinC).toLocaleString('en-US')}), which counts the highs of the days as much as their means, the summers are ${summerWords[byHuglin]}.`;
}
