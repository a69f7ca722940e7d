/** What a climate is like, in plain sentences, and how each figure is known. */

import { DAYS_PER_YEAR } from '../../core/climate/calendar.ts';
import { HOT_DAY_C } from '../../core/climate/heat.ts';
import type { AirClass, WinterClass } from '../../core/climate/placeClass.ts';
import type { ClimateAnswer, ClimateSummary } from '../../core/climate/summary.ts';
import { roundTo, temperatureInWords } from '../../core/units.ts';
import { countInWords, lowerFirst } from './words.ts';
import { partOfMonth } from './yearDays.ts';

const winterLeads: Record<WinterClass, string> = {
  frozen: 'Winters freeze hard',
  cold: 'Winters are cold',
  cool: 'Winters are cool',
  mild: 'Winters are mild',
  'frost-free': 'Winters are nearly free of frost',
};

const airTails: Record<AirClass, string> = {
  dry: 'the air is dry while most fruit ripens',
  fair: 'the air is neither dry nor humid while most fruit ripens',
  humid: 'the air is humid while most fruit ripens',
};

/** Below this a yearly share of winters without a freeze is not worth a word. */
const WORTH_SAYING = 0.05;

/** A share of winters, none of them rounded away: `37 winters in 100`. */
function wintersOfHundred(share: number): string {
  const winters = roundTo(share * 100, 1);
  if (winters === 0) return 'fewer than 1 winter in 100';
  if (winters === 100 && share < 1) return 'more than 99 winters in 100';
  return `${countInWords(winters, 'winter')} in 100`;
}

function winterSentence({ annualMinC, class: kind }: ClimateSummary): string {
  const { mean, p10 } = annualMinC.answer;
  return `${winterLeads[kind.answer.winter]}: the coldest night is about ${temperatureInWords(mean)} in a usual winter, and ${temperatureInWords(p10)} or colder in one winter in ten.`;
}

/** The growing season; where most years or many years have no freeze, how often and when it freezes. */
function seasonSentence({ freeze, seasonDays }: ClimateSummary): string {
  const { first, last, none } = freeze['32F'].answer;
  const { p50 } = seasonDays.answer;
  if (first.p10 === null && last.p90 === null) {
    return none === 1
      ? 'It does not freeze: the growing season is the whole year.'
      : `It freezes in ${wintersOfHundred(1 - none)}: the growing season is the whole year.`;
  }
  if (p50 >= DAYS_PER_YEAR || first.p50 === null || last.p50 === null) {
    const [from, to] = [first.p10 ?? first.p50, last.p90 ?? last.p50];
    const when =
      from === null || to === null
        ? ''
        : `, hardly ever before ${partOfMonth(from)} or after ${partOfMonth(to)}`;
    return `It freezes in about ${wintersOfHundred(1 - none)}${when}.`;
  }
  if (roundTo(p50, 5) < 5)
    return 'It can freeze in any month: in most years there is no season between freezes.';
  const length = `The season between freezes lasts about ${roundTo(p50, 5)} days, from ${partOfMonth(last.p50)} to ${partOfMonth(first.p50)}`;
  return none < WORTH_SAYING
    ? `${length}.`
    : `${length}; about ${wintersOfHundred(none)} pass without a freeze.`;
}

function summerSentence({ hotDays, class: kind }: ClimateSummary): string {
  const limit = temperatureInWords(HOT_DAY_C);
  const days = roundTo(hotDays.answer.days, 1);
  const heat =
    days < 1
      ? `Days above ${limit} are rare`
      : `About ${countInWords(days, 'day')} a year ${days === 1 ? 'is' : 'are'} hotter than ${limit}`;
  return `${heat}, and ${airTails[kind.answer.air]}.`;
}

/** Three sentences: winter, season, summer. */
export function climateSentences(climate: ClimateSummary): string[] {
  return [winterSentence(climate), seasonSentence(climate), summerSentence(climate)];
}

/** Where a median winter is free of freezes, no more than this share of modeled ones may freeze before we say so. */
const FREEZES_TOO_OFTEN = 0.5;

/** Whether a figure was observed, by its publisher or by us in a record. */
const measured = (standing: string) => standing === 'published' || standing === 'from records';

/**
 * A warning where the two kinds of figures contradict each other: the published mean of the coldest nights lies above freezing, so
 * that about half of all winters have none, and yet the modeled years freeze more often. Null where they agree.
 */
export function freezeWarning({ annualMinC, freeze }: ClimateSummary): string | null {
  const { standing, answer } = freeze['32F'];
  const freezing = 1 - answer.none;
  if (!measured(annualMinC.standing) || annualMinC.answer.mean <= 0) return null;
  if (measured(standing) || freezing <= FREEZES_TOO_OFTEN) return null;
  return `The coldest night of a usual winter is ${temperatureInWords(annualMinC.answer.mean)} by the record, yet the modeled years freeze in ${wintersOfHundred(freezing)}. Trust the record: freezes here are rarer than the modeled dates say, and the season is longer.`;
}

/** How a figure is known: its standing, and the publication where there is one. */
export interface Known {
  standing: string;
  source: string | null;
}

/** `published`, `from records`, `modeled` or `modeled from an estimate`, with the source of the first two. */
export function howKnown({ standing, source }: Pick<ClimateAnswer<unknown>, 'standing' | 'source'>): Known {
  return { standing, source: measured(standing) ? source : null };
}

/** The same in a line: `published: NOAA ...`, `computed from the record ...`, `modeled`. */
export function knownInWords(answer: Pick<ClimateAnswer<unknown>, 'standing' | 'source'>): string {
  const { standing, source } = howKnown(answer);
  if (source === null) return standing;
  const named = source.replace(/\.$/, '');
  return standing === 'published' ? `published: ${named}` : lowerFirst(named);
}
