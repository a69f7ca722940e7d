/** Long lists are cut into pages of equal length, grouped under headings that carry on from page to page. */

export interface Grouped<T> {
  /** Id of the heading, usable as a fragment. */
  id: string;
  heading: string;
  /** Botanical name of the group, where it is a species. */
  botanical: string | null;
  rows: T[];
}

export interface PageGroup<T> extends Grouped<T> {
  /** The group began on an earlier page. */
  continued: boolean;
  /** Rows of the group on all pages together. */
  count: number;
}

export interface ListPage<T> {
  /** 1 for the first. */
  number: number;
  groups: PageGroup<T>[];
}

export interface PagedList<T> {
  /** Never empty: a list without rows has one page without groups. */
  pages: ListPage<T>[];
  /** Every heading with the number of its rows and the page it begins on. */
  contents: { id: string; heading: string; count: number; page: number }[];
  total: number;
}

/** Cuts grouped rows into pages of at most `perPage` rows. Groups without rows are left out. */
export function paged<T>(groups: readonly Grouped<T>[], perPage: number): PagedList<T> {
  const pages: ListPage<T>[] = [{ number: 1, groups: [] }];
  const contents: PagedList<T>['contents'] = [];
  let total = 0;
  let room = perPage;
  for (const { id, heading, botanical, rows } of groups) {
    let done = 0;
    while (done < rows.length) {
      if (room === 0) {
        pages.push({ number: pages.length + 1, groups: [] });
        room = perPage;
      }
      const page = pages[pages.length - 1]!;
      if (done === 0) contents.push({ id, heading, count: rows.length, page: page.number });
      const part = rows.slice(done, done + room);
      page.groups.push({ id, heading, botanical, rows: part, continued: done > 0, count: rows.length });
      done += part.length;
      room -= part.length;
    }
    total += rows.length;
  }
  return { pages, contents, total };
}

/** The part of the address that tells pages apart: none on the first. Two words, so that no record's id can be the same. */
function pageParam(number: number): string | undefined {
  return number === 1 ? undefined : `page/${number}`;
}

/** Address of a page of a list: the first is the list's own address. */
export function pagePath(list: string, number: number): string {
  return number === 1 ? list : `${list}${pageParam(number)}/`;
}

/** Collects rows under the key each belongs to, in the order the keys first appear. */
export function groupBy<T>(rows: readonly T[], keyOf: (row: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const row of rows) {
    const key = keyOf(row);
    const group = groups.get(key);
    if (group) group.push(row);
    else groups.set(key, [row]);
  }
  return groups;
}

/** Title of a page of a list: `Stock list`, `Stock list, page 2`. */
export function pageTitle(list: string, number: number): string {
  return number === 1 ? list : `${list}, page ${number}`;
}
