/** Questions at the keyboard. They go to the error stream; a question that is broken off ends the command and writes nothing. */

import { autocomplete, isCancel, multiselect, select, text } from '@clack/prompts';
import { UsageError } from './command.ts';

const output = process.stderr;

function answered<T>(answer: T): Exclude<T, symbol> {
  if (isCancel(answer)) throw new UsageError('stopped; nothing was changed.');
  return answer as Exclude<T, symbol>;
}

export interface Offered {
  value: string;
  label: string;
}

/** More than fit on a screen are searched by typing. */
const mostListed = 12;

export async function choice(message: string, options: readonly Offered[]): Promise<string> {
  if (options.length === 0) throw new UsageError('there is nothing to choose from.');
  const settings = { message, options: [...options], output };
  return answered(
    options.length > mostListed ? await autocomplete(settings) : await select(settings),
  ) as string;
}

export async function choices(message: string, options: readonly Offered[]): Promise<string[]> {
  return answered(await multiselect({ message, options: [...options], output, required: true }));
}

/** A line of text; undefined for none. `problem` says what is wrong with one. */
export async function line(
  message: string,
  { initial, problem }: { initial?: string; problem?: (typed: string) => string | undefined } = {},
): Promise<string | undefined> {
  const typed = answered(
    await text({
      message,
      output,
      ...(initial === undefined ? {} : { initialValue: initial }),
      validate: each => problem?.(each ?? ''),
    }),
  );
  return typed?.trim() ? typed.trim() : undefined;
}

export async function wholeNumber(message: string, least: number): Promise<number> {
  const typed = await line(message, {
    problem: each =>
      /^\d{1,6}$/.test(each.trim()) && Number(each) >= least ? undefined : `A whole number from ${least} up.`,
  });
  return Number(typed);
}
