/** The addresses of records, from the root of the site. */

export const recordFolders = {
  cultivar: 'cultivars',
  lot: 'lots',
  guide: 'guides',
  video: 'videos',
  place: 'places',
} as const;
export type RecordKind = keyof typeof recordFolders;

/** `/lots/26-layer-01/`. */
export function recordAddress(kind: RecordKind, id: string): string {
  return `/${recordFolders[kind]}/${id}/`;
}

/** The short address of a page: `/go/3kfd/`. */
export function shortAddress(code: string): string {
  return `/go/${code}/`;
}

const shortPattern = /^\/go\/([^/#]+)\/$/;

/** The code of a short address; null for any other. */
export function codeOf(address: string): string | null {
  return shortPattern.exec(address)?.[1] ?? null;
}

const recordPattern = /^\/([a-z]+)\/([^/#]+)\/$/;
const kindsByFolder = new Map<string, RecordKind>(
  Object.entries(recordFolders).map(([kind, folder]) => [folder, kind as RecordKind]),
);

/** The record whose page has an address; null for any other page. Not every such record exists. */
export function recordOf(address: string): { kind: RecordKind; id: string } | null {
  const [, folder = '', id = ''] = recordPattern.exec(address) ?? [];
  const kind = kindsByFolder.get(folder);
  return kind === undefined ? null : { kind, id };
}
