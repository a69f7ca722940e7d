/** Bounded concurrency: many jobs asked for at once, few of them under way. */

/** Runs a job when a place is free; jobs start in the order they were asked for. */
export type Turn = <T>(job: () => Promise<T>) => Promise<T>;

/** At most `places` jobs under way at once, 1 or more. A job that fails frees its place like any other. */
export function inTurns(places: number): Turn {
  let free = places;
  const waiting: (() => void)[] = [];
  return async job => {
    if (free > 0) free -= 1;
    else await new Promise<void>(start => waiting.push(start));
    try {
      return await job();
    } finally {
      const next = waiting.shift();
      if (next) next();
      else free += 1;
    }
  };
}
