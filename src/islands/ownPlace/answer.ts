/**
 * What the browser loads when a visitor gives own freeze dates and a coldest night: the same core as the build, on fewer
 * simulated years. Nothing leaves the device.
 */
import type { Match, MatchContext } from '../../core/match/answers.ts';
import { matchAll } from '../../core/match/match.ts';
import type { NearestPlace, OwnDates, OwnProblem } from '../../core/match/ownFigures.ts';
import { OWN_SEASONS, ownOutlook } from '../../core/match/ownOutlook.ts';
import type { MatchedCultivar } from '../../core/match/subject.ts';
import type { Species } from '../../core/records/species.ts';

export interface OwnQuestion {
  readonly own: OwnDates;
  readonly nearest: NearestPlace;
  readonly species: readonly Species[];
  readonly cultivars: readonly MatchedCultivar[];
  readonly context: MatchContext;
}

export type OwnAnswer =
  | { readonly ok: true; readonly matches: Match[]; readonly notes: string[] }
  | { readonly ok: false; readonly problems: OwnProblem[] };

/** Matches of all cultivars for the visitor's own place, or what is wrong with the dates given. */
export function answerOwnPlace(
  { own, nearest, species, cultivars, context }: OwnQuestion,
  seasons: number = OWN_SEASONS,
): OwnAnswer {
  const grown = species.filter(each => cultivars.some(cultivar => cultivar.species === each.id));
  const found = ownOutlook(own, nearest, grown, seasons);
  if (!found.ok) return found;
  return { ok: true, matches: matchAll(found.outlook, cultivars, grown, context), notes: found.notes };
}
