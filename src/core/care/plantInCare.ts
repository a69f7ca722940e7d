/** The plant a calendar is made for. */

import type { Day } from '../days.ts';
import type { Form } from '../records/common.ts';
import type { Species } from '../records/species.ts';
import type { Keeping, Stage } from './guideVocabulary.ts';

export interface PlantInCare {
  species: Species;
  /** The form it is bought in; of no meaning for an established tree. */
  form: Form;
  /** The day it arrives; for an established tree the day the calendar starts. */
  arrives: Day;
  stage: Stage;
  /** Where it is to live. */
  kept: Keeping;
  /** Volume of its pot, or of the pot it would be given, liters. */
  potLiters: number;
}

/** Bare-root trees go into a pot of this size when they cannot be planted, a #3 of the trade. Standing: ours. */
export const USUAL_POT_LITERS = 11;
