/** The port a site is served on. */

import { UsageError } from './command.ts';

const usualPort = 4321;

/** A port that was given, or the usual one. Throws a UsageError on anything but a port. */
export function portOf(text: string | undefined): number {
  const port = Number(text ?? usualPort);
  if (!Number.isInteger(port) || port < 0 || port > 65_535) {
    throw new UsageError(`"${text}" is no port; give a number from 0 to 65535.`);
  }
  return port;
}
