/** Says on stderr how far the photographs are, when making copies takes long. Nothing is said when all copies are there. */

import type { PhotosTold } from '../photos.ts';

/** Seconds between two lines where lines stay, such as in a log. */
const logEverySeconds = 10;
const ownLineEverySeconds = 0.2;
/** Work shorter than this is not spoken of. */
const quietSeconds = 2;

interface Out {
  isTTY?: boolean;
  write(text: string): unknown;
}

/** `now` in milliseconds, from any start. */
export function photoProgress(out: Out = process.stderr, now: () => number = Date.now): PhotosTold {
  const started = now();
  const own = out.isTTY === true;
  let last: number | null = null;
  return (done, all, encoded) => {
    if (encoded === 0) return;
    const at = now();
    const finished = done === all;
    const every = own ? ownLineEverySeconds : logEverySeconds;
    const due = last === null ? at - started >= quietSeconds * 1000 : at - last >= every * 1000;
    if (!due && !(finished && last !== null)) return;
    last = at;
    const line = `  ${done} of ${all} photos, ${encoded} copies made`;
    // On a terminal one line is written over and over.
    if (own) out.write(`\r${line}${finished ? '\n' : ' ...'}`);
    else out.write(`${line}${finished ? '' : ' ...'}\n`);
  };
}
