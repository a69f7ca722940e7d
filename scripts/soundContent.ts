/** Content without errors, for commands that can do nothing with any other. */

import { type LoadedContent, loadContent } from '../src/content.ts';
import type { Records } from '../src/core/records/records.ts';
import { UsageError } from './command.ts';

/** Reads the content. Throws a UsageError when it has errors. */
export async function soundContent(
  options: { asOf?: string | undefined } = {},
): Promise<LoadedContent & { records: Records }> {
  const loaded = await loadContent(options);
  const { records } = loaded.reading;
  if (records === null) throw new UsageError('the content has errors; npm run check names them.');
  return { ...loaded, records };
}
