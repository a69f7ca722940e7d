/** Keeps test files that build, or take the lock of a build, one after the other: builds wait for each other and say so, and what they say is tested. */

import { join, resolve } from 'node:path';
import { afterAll, beforeAll } from 'vitest';
import { oneAtATime } from '../src/build/oneAtATime.ts';

const lock = join(resolve(import.meta.dirname, '..'), '.build/tests.lock');
/** The others may take minutes on a busy machine. */
const longestWaitMs = 900_000;

/** To be called once at the top of a test file. Other files go on beside it. */
export function buildsAlone(): void {
  let release: () => void;
  let held: Promise<void>;
  beforeAll(
    () =>
      new Promise<void>((taken, failed) => {
        held = oneAtATime(
          lock,
          () => undefined,
          () =>
            new Promise<void>(done => {
              release = done;
              taken();
            }),
        );
        held.catch(failed);
      }),
    longestWaitMs,
  );
  afterAll(async () => {
    release();
    await held;
  });
}
