/** Which files of a site the press prints: those of which a yard has thousands. */

import type { Catalogue, CultivarEntry, LotEntry } from '../core/catalogue.ts';

/** A file that can be printed, with the record it is about. */
export type PrintedFile =
  | { kind: 'lots'; file: string; entry: LotEntry }
  | { kind: 'cultivars'; file: string; entry: CultivarEntry }
  | { kind: 'compare'; file: string; entry: CultivarEntry };

/** Below this many files the press is not worth its start: it costs what rendering some 300 pages costs. */
export const PRINTED_FROM = 600;

export const lotFile = (id: string) => `lots/${id}/index.html`;
export const cultivarFile = (id: string) => `cultivars/${id}/index.html`;
export const comparedFilePath = (id: string) => `compare/${id}.json`;

/** Pages with photographs are left to the generator's own process, which encodes them. */
function printable(all: Catalogue): PrintedFile[] {
  const lots = all.lots.filter(({ lot }) => !lot.photo);
  const cultivars = all.cultivars.filter(
    ({ cultivar, lots: own }) => cultivar.photos.length === 0 && own.every(({ lot }) => !lot.photo),
  );
  return [
    ...lots.map(entry => ({ kind: 'lots' as const, file: lotFile(entry.lot.id), entry })),
    ...cultivars.map(entry => ({
      kind: 'cultivars' as const,
      file: cultivarFile(entry.cultivar.id),
      entry,
    })),
    ...all.cultivars.map(entry => ({
      kind: 'compare' as const,
      file: comparedFilePath(entry.cultivar.id),
      entry,
    })),
  ];
}

/** The files the press prints; none for a yard that has fewer of them than it is worth starting for. */
export function printedFiles(all: Catalogue, from = PRINTED_FROM): PrintedFile[] {
  const files = printable(all);
  return files.length < from ? [] : files;
}
