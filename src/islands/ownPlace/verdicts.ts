/** Verdicts for a visitor's own freeze dates, in the words of the built pages. The one part that is loaded only when they are used. */

import { nothingPublished } from '../../core/climate/figures.ts';
import type { OwnDates, OwnProblem } from '../../core/match/ownFigures.ts';
import type { PlaceFile } from '../../views/myPlace/file.ts';
import type { TreesFile } from '../../views/myPlace/trees.ts';
import { type Verdict, verdictOf } from '../../views/verdict.ts';
import { answerOwnPlace } from './answer.ts';

export type OwnVerdicts =
  | { ok: true; verdicts: Map<string, Verdict>; notes: string[] }
  | { ok: false; problems: OwnProblem[] };

export function ownVerdicts(own: OwnDates, basis: PlaceFile['basis'], trees: TreesFile): OwnVerdicts {
  const nearest = { ...basis, figures: { ...basis.figures, published: nothingPublished } };
  const answer = answerOwnPlace({ own, nearest, ...trees });
  if (!answer.ok) return answer;
  return {
    ok: true,
    verdicts: new Map(answer.matches.map(match => [match.cultivar, verdictOf(match)])),
    notes: answer.notes,
  };
}
