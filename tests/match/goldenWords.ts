/** A match as lines of text: everything it says, in the order in which it says it. */
import type { Match, RipeningVerdict } from '../../src/core/match/answers.ts';
import { doyInWords } from '../../src/core/match/words.ts';
import type { Reason } from '../../src/core/records/common.ts';

const hundredths = (value: number) => value.toFixed(2);
const tenths = (value: number) => value.toFixed(1);

function cropLine({ crop, word, share, dates, blocked, headStart }: RipeningVerdict): string {
  const days = dates === null ? 'never' : [dates.p10, dates.p50, dates.p90].map(doyInWords).join(', ');
  const helped = `${headStart.word} ${hundredths(headStart.share)}`;
  return `${crop}: ${word} ${hundredths(share)}, ${days}; with a head start ${helped}${blocked ? `; ${blocked}` : ''}`;
}

const reason = ({ text, standing }: Reason) => `  ${standing}: ${text}`;

/** Level, winter, pot, crops and wet with their figures; then every reason and every change. */
export function matchInLines(match: Match): string[] {
  const { established } = match.winter;
  const young = match.winter['first-winter'];
  return [
    `${match.level}; winter ${young.care} ${tenths(young.marginC)}, ${match.winter['second-winter'].care}, ${established.care} ${tenths(established.marginC)}; pot ${match.pot.care} ${match.pot.container} ${tenths(match.pot.mixLowC)}`,
    ...match.ripening.map(cropLine),
    `wet: ${match.wet.level}, ${match.wet.rainMm?.toFixed(0)} mm, ${hundredths(match.wet.deficitKpa)} kPa`,
    'because',
    ...match.because.map(reason),
    'pot',
    ...match.pot.because.map(reason),
    'better',
    ...match.whatWouldChangeIt.map(reason),
    'forms',
    ...match.forms.map(
      ({ form, fit, because }) => `  ${form}: ${fit}; ${because.map(({ text }) => text).join(' ')}`,
    ),
  ];
}
