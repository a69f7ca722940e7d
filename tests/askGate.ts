/** Puts a question about one gate of the first lot of a test yard. */

import { addDays, type Day, day } from '../src/core/days.ts';
import type { FormAnswer, Gate, GateName } from '../src/core/lots/answers.ts';
import type { Form } from '../src/core/records/common.ts';
import type { DailyReading } from '../src/core/records/records.ts';
import { catalogueOf, type World, worldRecords } from './world.ts';

export function answerOf(world: World, asOf: string, form: Form): FormAnswer {
  return catalogueOf(worldRecords(world), asOf).lots[0]!.forms.find(answer => answer.form === form)!;
}

export function gateOf(world: World, asOf: string, name: GateName, form: Form = 'dormant-pot'): Gate {
  return answerOf(world, asOf, form).gates.find(gate => gate.name === name)!;
}

/** The reasons as one text. */
export function wordsOf({ because }: Pick<Gate, 'because'>): string {
  return because.map(({ text }) => text).join(' ');
}

/** A temperature log in which every day is alike. */
export function logOf(from: string, to: string, tminC: number, tmaxC: number): DailyReading[] {
  const readings: DailyReading[] = [];
  for (let at: Day = day(from); at <= to; at = addDays(at, 1)) readings.push({ day: at, tminC, tmaxC });
  return readings;
}
