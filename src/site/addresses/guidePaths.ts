/** Where guides are on the site. */

import type { Form } from '../../core/records/common.ts';

export const guidesPath = '/guides/';

export function guidePath(guide: string): string {
  return `${guidesPath}${guide}/`;
}

export function placeGuidePath(guide: string, place: string): string {
  return `${guidePath(guide)}${place}/`;
}

/** The calendar of a guide at a place. */
export function placeCalendarPath(guide: string, place: string): string {
  return `${guidePath(guide)}${place}.ics`;
}

/** What a browser writes the guide from for a town. */
export function guideSheetPath(guide: string): string {
  return `${guidePath(guide)}sheet.json`;
}

/** The arrival guide for one form and species. */
export function arrivalPath(guide: string, form: Form, species: string): string {
  return `${guidePath(guide)}${form}/${species}/`;
}

/** The calendar of a tree of a form from the day it arrives at a place. */
export function arrivalCalendarPath(guide: string, place: string, form: Form): string {
  return `${placeGuidePath(guide, place)}${form}.ics`;
}
