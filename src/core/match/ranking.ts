/** Orders of matches: cultivars in one place, one cultivar over places, lots that are ready and suit. */
import type { Form } from '../records/common.ts';
import { type FormAdvice, type Level, levels, type Match } from './answers.ts';

/** Best chance of a crop outdoors, then with a head start. */
function cropChance({ ripening }: Match): number {
  return ripening.reduce((most, { share, headStart }) => Math.max(most, share + headStart.share / 1000), 0);
}

/** Best level first, then the likelier crop, then by cultivar and place id. Does not change the list given. */
export function rankMatches(matches: readonly Match[]): Match[] {
  const id = ({ cultivar, place }: Match) => `${cultivar} ${place}`;
  return [...matches].sort(
    (a, b) =>
      levels.indexOf(a.level) - levels.indexOf(b.level) ||
      cropChance(b) - cropChance(a) ||
      (id(a) < id(b) ? -1 : 1),
  );
}

export interface LevelRange {
  readonly best: Level;
  /** Half of the matches are at least as good. */
  readonly middle: Level;
  readonly worst: Level;
}

/** How a cultivar does over several places, such as those of one class; null for none. */
export function levelRange(matches: readonly Match[]): LevelRange | null {
  const found = matches.map(({ level }) => levels.indexOf(level)).sort((a, b) => a - b);
  const at = (index: number) => levels[found[index] ?? -1];
  const [best, middle, worst] = [at(0), at(Math.ceil(found.length / 2) - 1), at(found.length - 1)];
  return best && middle && worst ? { best, middle, worst } : null;
}

/** Whether a cultivar is worth offering in a place at all. */
export function suitsHere({ level }: Pick<Match, 'level'>): boolean {
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
