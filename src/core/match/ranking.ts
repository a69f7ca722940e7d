/** Orders of matches: cultivars in one place, one cultivar over places, lots that are ready and suit. */
import type { Form } from '../records/common.ts';
import { type FormAdvice, type Level, levels, type Match } from './answers.ts';

/** Best chance of a crop as a share, outdoors, then with a head start: for ranking alone, since it may exceed 1 by a thousandth. */
export function cropChance({ ripening }: Pick<Match, 'ripening'>): number {
  return ripening.reduce((most, { share, headStart }) => Math.max(most, share + headStart.share / 1000), 0);
}

/** What a ranking looks at: `chance` as `cropChance` gives it, or a sum of such chances. */
export interface RankedBy {
  readonly level: Level;
  readonly chance: number;
}

/** Best level first, then the likelier crop, then as given. Does not change the list given. */
export function ranked<T>(things: readonly T[], by: (thing: T) => RankedBy): T[] {
  return things
    .map(thing => ({ thing, ...by(thing) }))
    .sort((a, b) => levels.indexOf(a.level) - levels.indexOf(b.level) || b.chance - a.chance)
    .map(({ thing }) => thing);
}

export interface LevelRange {
  readonly best: Level;
  /** Half of the matches are at least as good. */
  readonly middle: Level;
  readonly worst: Level;
}

/** How a cultivar does over several places, such as those of one class, from its level in each; null for none. */
export function levelRange(inPlaces: readonly Level[]): LevelRange | null {
  const found = inPlaces.map(level => levels.indexOf(level)).sort((a, b) => a - b);
  const at = (index: number) => levels[found[index] ?? -1];
  const [best, middle, worst] = [at(0), at(Math.ceil(found.length / 2) - 1), at(found.length - 1)];
  return best && middle && worst ? { best, middle, worst } : null;
}

/** Whether a cultivar is worth offering in a place at all. */
function suitsHere({ level }: Pick<Match, 'level'>): boolean {
  return level === 'at-home' || level === 'with-care' || level === 'in-a-pot';
}

/** The best advice among the forms a lot is ready in; null when the cultivar does not suit or each of them suits poorly. */
export function readyAndSuits(
  match: Pick<Match, 'level' | 'forms'>,
  readyForms: readonly Form[],
): FormAdvice | null {
  if (!suitsHere(match)) return null;
  return match.forms.find(({ form, fit }) => fit !== 'poor' && readyForms.includes(form)) ?? null;
}

/** The first few matches, best first, of those that are asked for. */
export function bestOf<T extends Pick<Match, 'cultivar' | 'level' | 'ripening'>>(
  matches: readonly T[],
  isAsked: (cultivar: string) => boolean,
  count: number,
): T[] {
  const asked = matches.filter(({ cultivar }) => isAsked(cultivar));
  return ranked(asked, match => ({ level: match.level, chance: cropChance(match) })).slice(0, count);
}
