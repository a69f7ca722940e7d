/** Verdicts for a visitor's own freeze dates, in the words of the built pages. The one part that is loaded only when they are used. */

import { nothingPublished } from '../../core/climate/figures.ts';
import { usualDays } from '../../core/climate/ribbon.ts';
import type { OwnDates, OwnProblem } from '../../core/match/ownFigures.ts';
import { ownWeather } from '../../core/match/ownOutlook.ts';
import { type BestTree, bestTrees } from '../../site/data/best.ts';
import type { PlaceFile } from '../../site/data/file.ts';
import type { TreesFile } from '../../site/data/trees.ts';
import { type Verdict, verdictOf } from '../../site/words/verdict.ts';
import type { SheetWeather } from '../guides/townSheet.ts';
import { answerOwnPlace } from './answer.ts';

export type OwnVerdicts =
  | { ok: true; verdicts: Map<string, Verdict>; best: BestTree[]; notes: string[] }
  | { ok: false; problems: OwnProblem[] };

export function ownVerdicts(
  own: OwnDates,
  basis: PlaceFile['basis'],
  trees: TreesFile,
  seasons?: number,
): OwnVerdicts {
  const nearest = { ...basis, figures: { ...basis.figures, published: nothingPublished } };
  const answer = answerOwnPlace({ own, nearest, ...trees }, seasons);
  if (!answer.ok) return answer;
  return {
    ok: true,
    verdicts: new Map(answer.matches.map(match => [match.cultivar, verdictOf(match)])),
    best: bestTrees(answer.matches, trees),
    notes: answer.notes,
  };
}

/** The weather that own dates make of a climate, as the guides ask for it; null for dates that do not fit. */
export function ownSheetWeather(
  own: OwnDates,
  basis: Omit<PlaceFile['basis'], 'heatStarts'>,
): SheetWeather | null {
  const found = ownWeather(own, { ...basis, figures: { ...basis.figures, published: nothingPublished } });
  if (!found.ok) return null;
  const { figures, years, climate } = found;
  return { years, summary: { ...climate, ribbon: usualDays(figures) } };
}

/** A turn draws this many seasons, and takes a few milliseconds on a slow phone once the first is over. */
const SEASONS_A_TURN = 6;
/** After so many turns an engine has made fast code of what is run over and over. */
const TURNS = 30;

/**
 * Works out the usual dates of a place on few seasons, again and again, so that the browser has compiled the code by the time a
 * visitor asks. One turn for each call of the function returned, which says whether there are more.
 */
export function rehearsal(basis: PlaceFile['basis'], trees: TreesFile): () => boolean {
  const { first, last } = basis.climate.freeze['32F'].answer;
  const own = {
    last: last.p50 ?? '',
    first: first.p50 ?? '',
    coldestC: basis.climate.annualMinC.answer.mean,
  };
  let turn = 0;
  return () => {
    turn += 1;
    return ownVerdicts(own, basis, trees, SEASONS_A_TURN).ok && turn < TURNS;
  };
}
