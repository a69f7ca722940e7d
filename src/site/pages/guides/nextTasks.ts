/** Which of the dated tasks of a guide stand first on a day. Read by the page that is built and by the script that keeps it at today. */

/** First and last day, `YYYY-MM-DD`. */
export interface Dated {
  readonly from: string;
  readonly to: string;
}

/** How many tasks are told. */
const TOLD = 2;

/** The tasks that run on a day or come next, at most two: what began or begins first comes first. Fewer where fewer are left. */
export function nextTasks<T extends Dated>(tasks: readonly T[], today: string): T[] {
  return tasks
    .filter(({ to }) => to >= today)
    .toSorted((a, b) => (a.from < b.from ? -1 : a.from > b.from ? 1 : 0))
    .slice(0, TOLD);
}
