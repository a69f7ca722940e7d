/** Ending what was started beside a build. */

import type { ChildProcess } from 'node:child_process';
import { once } from 'node:events';

/** Ends a process, and waits until it is gone. */
export async function ended(child: ChildProcess): Promise<void> {
  if (child.pid === undefined || child.exitCode !== null || child.signalCode !== null) return;
  const gone = once(child, 'exit');
  child.kill('SIGKILL');
  await gone;
}
