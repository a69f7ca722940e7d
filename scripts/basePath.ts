/** The path below which a site lives. */

import { UsageError } from './command.ts';

/** A base path, given or of BASE_PATH: one slash at both ends. Throws a UsageError on anything but a plain path. */
export function basePath(given: string | undefined): string {
  const asked = given ?? process.env.BASE_PATH ?? '/';
  const path = `/${asked.replace(/^\/+|\/+$/g, '')}/`.replace(/^\/\/$/, '/');
  if (!/^\/(?:[\w.-]+\/)*$/.test(path))
    throw new UsageError(`"${asked}" is no base path; write it as /orchard/.`);
  return path;
}
