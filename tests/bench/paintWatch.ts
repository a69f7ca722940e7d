/** How long a visitor waits in the browser, from what was done to its results being on the screen. */

import type { Page } from 'playwright-core';

/** The page has come to rest when its results have not changed for so long. */
export const restMs = 400;

/** Nothing of ours takes so long: there was no answer. */
const givenUpMs = 20_000;

/** What was done, and after how many milliseconds its results were written into the page, and on the screen. */
export interface Waited {
  what: string;
  writtenMs: number;
  ms: number;
}

export interface Watch {
  /** Selector of what holds the results. */
  results: string;
  /** Names of the events that ask for others. */
  events: readonly string[];
}

interface Watched {
  acted: number;
  written: number;
  shown: number;
  changes: number;
}

/** Runs in the page: notes when it is asked for something, and when results that were changed after it have been painted. */
function watch({ results, events }: Watch): void {
  const watched: Watched = { acted: 0, written: 0, shown: 0, changes: 0 };
  Object.assign(window, { watched });
  for (const name of events) {
    addEventListener(
      name,
      event => {
        // Leaving a search box says "change" again; only the letters are waited for.
        if (name === 'change' && (event.target as HTMLInputElement).type === 'search') return;
        watched.acted = event.timeStamp;
        watched.shown = 0;
      },
      { capture: true },
    );
  }
  new MutationObserver(() => {
    watched.changes += 1;
    watched.written = performance.now();
    // The frame that holds the change has been handed over when a task after it runs.
    requestAnimationFrame(() => {
      const after = new MessageChannel();
      after.port1.onmessage = () => {
        watched.shown = performance.now();
      };
      after.port2.postMessage(null);
    });
  }).observe(document.querySelector(results)!, { childList: true });
}

export async function watchPaints(page: Page, what: Watch): Promise<void> {
  await page.evaluate(watch, what);
}

/** Does something and waits until the results rest; how long the last of them took. */
export async function waited(page: Page, what: string, act: () => Promise<unknown>): Promise<Waited> {
  await page.evaluate(() => {
    (window as unknown as { watched: Watched }).watched.shown = 0;
  });
  await act();
  const waits = await page.evaluate(
    async ([rest, givenUp]) => {
      const { watched } = window as unknown as { watched: Watched };
      const until = performance.now() + givenUp;
      const pause = () => new Promise(done => setTimeout(done, rest));
      let changes = -1;
      while (watched.shown === 0 || watched.changes !== changes) {
        if (performance.now() > until) return null;
        changes = watched.changes;
        await pause();
      }
      return { writtenMs: watched.written - watched.acted, ms: watched.shown - watched.acted };
    },
    [restMs, givenUpMs] as const,
  );
  if (waits === null) throw new Error(`nothing was shown within ${givenUpMs / 1000} s of: ${what}`);
  return { what, ...waits };
}
