/** A match in a word and a line, for lists. */
import type { Level, Match, RipeningVerdict } from './answers.ts';
import { cropWords, ripeningOddsWords, spreadInWords } from './words.ts';

export interface Brief {
  readonly level: Level;
  /** When each crop ripens and how surely: `main crop 14 August to 7 September, in most years`. */
  readonly ripens: string;
}

function cropInWords({ crop, blocked, word, dates, headStart }: RipeningVerdict): string {
  const name = cropWords[crop];
  if (blocked === 'needs-wasp') return `${name} sets no fruit without the fig wasp`;
  if (blocked === 'no-figure') return `${name} unknown`;
  if (dates !== null && word !== 'not-outdoors')
    return `${name} ${spreadInWords(dates)}, ${ripeningOddsWords[word]}`;
  if (headStart.dates !== null && headStart.word !== 'not-outdoors')
    return `${name} with a head start under cover ${spreadInWords(headStart.dates)}, ${ripeningOddsWords[headStart.word]}`;
  return `${name} does not ripen outdoors`;
}

export function ripeningInBrief(ripening: readonly RipeningVerdict[]): string {
  return ripening.map(cropInWords).join('; ');
}

export function briefOf({ level, ripening }: Pick<Match, 'level' | 'ripening'>): Brief {
  return { level, ripens: ripeningInBrief(ripening) };
}
