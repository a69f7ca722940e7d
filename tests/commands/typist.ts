/** A grower at the keyboard, for tests: the real prompts, answered key by key, with every key and question counted. */

import { PassThrough } from 'node:stream';
import { setTimeout as sleep, setImmediate as turn } from 'node:timers/promises';
import { type Ask, askOn, type LineSettings, type Offered } from '../../scripts/ask.ts';

/** What is answered to a question: its words for a line or a number, the value of a choice, the values of several. Undefined takes what is offered, or the first. */
export type Answer = string | readonly string[] | undefined;

const down = '\x1b[B';
const enter = '\r';
const clear = '\x15';
/** Lists longer than this are searched by typing; as in scripts/ask.ts. */
const mostListed = 12;

export interface Typist {
  ask: Ask;
  /** Keys pressed so far, an arrow being one. */
  keys(): number;
  questions(): number;
}

/** `answer` is asked for each question by its words. */
export function typist(answer: (question: string) => Answer): Typist {
  const input = new PassThrough();
  const output = new PassThrough();
  output.resume();
  const real = askOn({ input, output });
  let keys = 0;
  let questions = 0;
  async function type<T>(question: string, shown: Promise<T>, pressed: readonly string[]): Promise<T> {
    questions += 1;
    keys += pressed.length;
    // Each key in a turn of its own, as from a keyboard: what comes in one piece may be taken for a paste.
    for (const key of pressed) {
      await turn();
      input.write(key);
    }
    // An answer that is refused leaves its question open.
    const open = sleep(5000, undefined, { ref: false }).then(() => {
      throw new Error(`not answered: ${question}`);
    });
    return Promise.race([shown, open]);
  }
  const moves = (count: number) => Array.from({ length: count }, () => down);
  function lineKeys(question: string, initial: string | undefined): string[] {
    const answered = answer(question);
    if (answered === undefined || answered === initial) return [enter];
    return [...(initial ? [clear] : []), ...String(answered), enter];
  }
  const ask: Ask = {
    line: (question: string, settings: LineSettings = {}) =>
      type(question, real.line(question, settings), lineKeys(question, settings.initial)),
    wholeNumber: (question, least, initial) =>
      type(
        question,
        real.wholeNumber(question, least, initial),
        lineKeys(question, initial === undefined ? undefined : String(initial)),
      ),
    choice(question, options: readonly Offered[]) {
      const wanted = answer(question) ?? options[0]!.value;
      const index = options.findIndex(({ value }) => value === wanted);
      if (index < 0) throw new Error(`${question}: ${String(wanted)} is not offered`);
      const long = options.length > mostListed;
      const pressed = long ? [...options[index]!.label.slice(0, 8), enter] : [...moves(index), enter];
      return type(question, real.choice(question, options), pressed);
    },
    yes: (question, initial) => type(question, real.yes(question, initial), [enter]),
    choices(question, options, chosen = []) {
      const wanted =
        (answer(question) as readonly string[] | undefined) ??
        (chosen.length > 0 ? chosen : [options[0]!.value]);
      const pressed: string[] = [];
      let at = 0;
      options.forEach(({ value }, index) => {
        if (wanted.includes(value) === chosen.includes(value)) return;
        pressed.push(...moves(index - at), ' ');
        at = index;
      });
      return type(question, real.choices(question, options, chosen), [...pressed, enter]);
    },
  };
  return { ask, keys: () => keys, questions: () => questions };
}
