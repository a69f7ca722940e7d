/** Which files of a site the press prints: those of which a yard has thousands. */

import type { Catalogue, CultivarEntry, LotEntry } from '../core/catalogue.ts';
import type { Form } from '../core/records/common.ts';
import { arrivalCalendarPath, placeCalendarPath, placeGuidePath } from '../site/addresses/guidePaths.ts';
import { arrivalForms } from '../site/pages/guides/arrivalViews.ts';
import { type GuideAtPlace, guidesAtPlaces } from '../site/pages/guides/guideSubject.ts';

/** A file that can be printed, with the record it is about. */
export type PrintedFile =
  | { kind: 'lots'; file: string; entry: LotEntry }
  | { kind: 'cultivars'; file: string; entry: CultivarEntry }
  | { kind: 'compare'; file: string; entry: CultivarEntry }
  | { kind: 'guides'; file: string; at: GuideAtPlace }
  /** The calendar of a guide, which is not made where it has no task, or of a tree of one form from the day it arrives. */
  | { kind: 'calendar'; file: string; at: GuideAtPlace; form: Form | null };

/** Below this many files the press is not worth its start: it costs what rendering some 300 pages costs. */
export const PRINTED_FROM = 450;

export const lotFile = (id: string) => `lots/${id}/index.html`;
export const cultivarFile = (id: string) => `cultivars/${id}/index.html`;
export const guideFile = (guide: string, place: string) =>
  `${placeGuidePath(guide, place).slice(1)}index.html`;
/** `form` is null for the calendar of the guide itself. */
export const guideCalendarFile = (guide: string, place: string, form: Form | null) =>
  (form === null ? placeCalendarPath(guide, place) : arrivalCalendarPath(guide, place, form)).slice(1);
export const comparedFilePath = (id: string) => `compare/${id}.json`;

function ofGuides(all: Catalogue): PrintedFile[] {
  return guidesAtPlaces(all).flatMap(at => {
    const [guide, place] = [at.guide.id, at.place.id];
    const calendars = [null, ...arrivalForms(at.guide)].map(form => ({
      kind: 'calendar' as const,
      file: guideCalendarFile(guide, place, form),
      at,
      form,
    }));
    return [{ kind: 'guides' as const, file: guideFile(guide, place), at }, ...calendars];
  });
}

/** Pages with photographs are left to the generator's own process, which encodes them. */
function printable(all: Catalogue): PrintedFile[] {
  const lots = all.lots.filter(({ lot }) => !lot.photo);
  const cultivars = all.cultivars.filter(
    ({ cultivar, lots: own }) => cultivar.photos.length === 0 && own.every(({ lot }) => !lot.photo),
  );
  return [
    ...lots.map(entry => ({ kind: 'lots' as const, file: lotFile(entry.lot.id), entry })),
    ...cultivars.map(entry => ({
      kind: 'cultivars' as const,
      file: cultivarFile(entry.cultivar.id),
      entry,
    })),
    ...all.cultivars.map(entry => ({
      kind: 'compare' as const,
      file: comparedFilePath(entry.cultivar.id),
      entry,
    })),
    ...ofGuides(all),
  ];
}

/** The files the press prints; none for a yard that has fewer of them than it is worth starting for. */
export function printedFiles(all: Catalogue, from = PRINTED_FROM): PrintedFile[] {
  const files = printable(all);
  return files.length < from ? [] : files;
}
