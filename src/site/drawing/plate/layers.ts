/** What a drawing is made of, and with. Views have the axis at x = 0 and the stalk end at y = 0; millimeters. */

import type { Random } from '../../../core/random.ts';
import type { Pen } from './pen.ts';

/** One path; its ink is a class of `plates.css`. */
export interface Layer {
  ink: string;
  data: string;
  /** `transform` of the path. */
  move?: string;
  /** Width of the stroke where it stands for something with a size, mm. */
  strokeMm?: number;
}

/** What one view is drawn with. */
export interface Desk {
  /** A new pen for the grid of the plate. */
  pen(): Pen;
  /** Steps of the grid to the millimeter. */
  perMm: number;
  /** Chance of this fruit alone: the same fruit is drawn the same again. */
  random: Random;
  /** Distance between the lines of the shading where they are widest, mm. */
  spacingMm: number;
}
