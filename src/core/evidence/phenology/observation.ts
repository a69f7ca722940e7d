/** A dated observation of a fruit tree at a place, from outside the project. */
import type { Crop, RipeningClass } from '../../records/common.ts';

export const observedEvents = ['first-ripe', 'full-bloom', 'budbreak', 'leafout', 'leaf-fall'] as const;
export type ObservedEvent = (typeof observedEvents)[number];

export interface Point {
  /** Degrees north and east. */
  readonly lat: number;
  readonly lon: number;
  readonly elevationM: number;
}

export interface Observation extends Point {
  readonly id: string;
  /** Name of the species as the source or file has it. */
  readonly species: string;
  readonly place: string;
  readonly event: ObservedEvent;
  /** Null for bloom and budbreak, and where nobody says. */
  readonly crop: Crop | null;
  readonly class: RipeningClass | null;
  /** First and last day of the range, `MM-DD`. */
  readonly from: string;
  readonly to: string;
}
