/** Questions at the keyboard. They go to the error stream; a question that is broken off ends the command and writes nothing. */

import type { Readable, Writable } from 'node:stream';
import { autocomplete, confirm, isCancel, multiselect, select, text } from '@clack/prompts';
import { UsageError } from './command.ts';

export interface Offered {
  value: string;
  label: string;
}

export interface LineSettings {
  initial?: string | undefined;
  /** What is wrong with what was typed. */
  problem?: ((typed: string) => string | undefined) | undefined;
}

/** More than fit on a screen are searched by typing. */
const mostListed = 12;

function answered<T>(answer: T): Exclude<T, symbol> {
  if (isCancel(answer)) throw new UsageError('stopped; nothing was changed.');
  return answer as Exclude<T, symbol>;
}

export interface Ask {
  choice(message: string, options: readonly Offered[]): Promise<string>;
  choices(message: string, options: readonly Offered[], chosen?: readonly string[]): Promise<string[]>;
  /** A line of text; undefined for none. */
  line(message: string, settings?: LineSettings): Promise<string | undefined>;
  wholeNumber(message: string, least: number, initial?: number): Promise<number>;
  yes(message: string, initial: boolean): Promise<boolean>;
}

/** Questions put on a stream and answered from another; the keyboard where none is given. */
export function askOn(streams: { output: Writable; input?: Readable }): Ask {
  async function line(message: string, { initial, problem }: LineSettings = {}) {
    const typed = answered(
      await text({
        message,
        ...streams,
        ...(initial === undefined ? {} : { initialValue: initial }),
        validate: each => problem?.(each ?? ''),
      }),
    );
    return typed?.trim() ? typed.trim() : undefined;
  }
  return {
    line,
    async choice(message, options) {
      if (options.length === 0) throw new UsageError('there is nothing to choose from.');
      const settings = { message, options: [...options], ...streams };
      return answered(
        options.length > mostListed ? await autocomplete(settings) : await select(settings),
      ) as string;
    },
    async choices(message, options, chosen = []) {
      return answered(
        await multiselect({
          message,
          options: [...options],
          initialValues: [...chosen],
          required: true,
          ...streams,
        }),
      );
    },
    async yes(message, initial) {
      return answered(await confirm({ message, initialValue: initial, ...streams }));
    },
    async wholeNumber(message, least, initial) {
      const typed = await line(message, {
        ...(initial === undefined ? {} : { initial: String(initial) }),
        problem: each =>
          /^\d{1,6}$/.test(each.trim()) && Number(each) >= least
            ? undefined
            : `A whole number from ${least} up.`,
      });
      return Number(typed);
    },
  };
}

/** Does something as often as somebody at the keyboard wants it done again; the exit code of the last time. */
export async function again(message: string, once: () => Promise<number>): Promise<number> {
  let code = await once();
  while (code === 0 && (await keyboard.yes(message, false))) code = await once();
  return code;
}

export const keyboard: Ask = askOn({ output: process.stderr });
export const { choice, choices, line, wholeNumber } = keyboard;
