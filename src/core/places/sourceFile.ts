/** What a file handed to `npm run place` is. */

import { looksDaily } from '../climate/dailyRecordText.ts';
import { isOfficialHeader } from '../climate/official/table.ts';

export type SourceKind = 'normals' | 'daily' | null;

export const expectedFiles =
  'a station file of the U.S. Climate Normals (monthly, daily or annual), a daily record or the export of a weather station (CSV with date, tmin_c and tmax_c, or tmin_f and tmax_f), or a station file of GHCN-Daily (CSV or .dly)';

function headerOf(text: string): string[] {
  const line = text.replace(/^\uFEFF/, '').split(/\r?\n/, 1)[0] ?? '';
  return line.split(',').map(title => title.replaceAll('"', '').trim());
}

/** By the first lines alone. */
export function kindOfSource(text: string): SourceKind {
  const header = headerOf(text);
  if (isOfficialHeader(header)) return 'normals';
  return looksDaily(text) ? 'daily' : null;
}

/** What was seen in a file that is neither, for the refusal. */
export function seenIn(bytes: Uint8Array, text: string): string {
  if (bytes.length === 0) return 'an empty file';
  if (bytes[0] === 0x1f && bytes[1] === 0x8b) return 'a gzip archive; unpack it first';
  if (bytes[0] === 0x50 && bytes[1] === 0x4b) return 'a zip archive or spreadsheet; save it as CSV first';
  if (bytes.subarray(0, 512).includes(0)) return 'a file that is no text';
  if (/^\s*</.test(text)) return 'a web page';
  const header = headerOf(text);
  const titles = header
    .slice(0, 6)
    .map(title => `"${title.slice(0, 40)}"`)
    .join(', ');
  return `${header.length} ${header.length === 1 ? 'column' : 'columns'}: ${titles}${header.length > 6 ? ', ...' : ''}`;
}
