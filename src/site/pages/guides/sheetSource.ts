/** What the sheet of a guide for a place is made from beside the place: plain data, so that a browser can make one for a town (`/guides/GUIDE/sheet.json`). */

import type { SpeciesFigureName } from '../../../core/care/guideVocabulary.ts';
import { guideSpecies } from '../../../core/care/leadingSpecies.ts';
import type { Day } from '../../../core/days.ts';
import type { Guide } from '../../../core/records/guide.ts';
import type { Species } from '../../../core/records/species.ts';
import type { GuideText } from '../../../markdown/guideText.ts';

/** A guide without its body. */
type SheetGuide = Pick<Guide, 'id' | 'title' | 'kind' | 'species' | 'forms'>;

export interface SheetSource {
  readonly guide: SheetGuide;
  readonly text: GuideText;
  /** Names that parts had before, by their name of today. */
  readonly oldNames: readonly (readonly [string, readonly string[]])[];
  /** Figures of species that the text quotes. */
  readonly figures: readonly SpeciesFigureName[];
  /** Species of the yard, the one whose dates are given first. */
  readonly yardSpecies: readonly Species[];
  /** Day of the content. */
  readonly asOf: Day;
  /** For the ids of events of a calendar: what the guide was first published as, and the domain of the yard. */
  readonly firstId: string;
  readonly namingHost: string;
}

/** Whom a sheet is for. */
export interface SheetPlace {
  /** Of the reference place under which the guide is published. */
  readonly id: string;
  readonly name: string;
  /** `North Carolina, United States`; may be empty. */
  readonly where: string;
  /** ISO 3166 code. */
  readonly country: string;
  /** A reference place has a page of its own with the days of all species; a town has none. */
  readonly hasPage: boolean;
}

/** Whose dates a guide gives. */
export function datedSpecies({ yardSpecies }: SheetSource): Species {
  return yardSpecies[0]!;
}

/** The species the guide is for, among those of the yard. */
export function sheetSpecies({ guide, yardSpecies }: SheetSource): Species[] {
  return guideSpecies(guide, yardSpecies);
}
