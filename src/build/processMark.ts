/**
 * Tells a process from a later one that was given its number: numbers are used again after a restart, and in a container almost at once.
 * Linux says when a process was started, counted from the start of the machine; elsewhere only the number is known.
 */

import { readFileSync, readlinkSync } from 'node:fs';
import { hostname } from 'node:os';

export interface ProcessMark {
  pid: number;
  /** Names this run of this machine, and among its containers the one whose numbers these are. */
  machine: string;
  /** When the process was started, in ticks since the machine was; null where the system does not say. */
  started: string | null;
}

/** `unknown`: the process belongs to another machine, another container or another run of this machine, or its number is all there is. */
export type Presence = 'running' | 'gone' | 'unknown';

function readText(path: string): string | null {
  try {
    return readFileSync(path, 'utf8').trim();
  } catch {
    return null;
  }
}

function numberSpace(): string {
  try {
    return readlinkSync('/proc/self/ns/pid');
  } catch {
    return '';
  }
}

function thisMachine(): string {
  return `${hostname()} ${readText('/proc/sys/kernel/random/boot_id') ?? ''} ${numberSpace()}`;
}

/**
 * When a process was started, field 22 of its line in /proc, behind a name that stands in brackets and may hold anything (proc_pid_stat(5)).
 * Null when the system does not say; '' for a process that has ended and that its parent has not asked about (field 3): it does nothing any more.
 */
function startOf(pid: number): string | null {
  const stat = readText(`/proc/${pid}/stat`);
  if (stat === null) return null;
  const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ');
  return fields[0] === 'Z' || fields[0] === 'X' ? '' : (fields[19] ?? null);
}

/** Whether some process of this machine has a number now. */
export function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (problem) {
    return (problem as NodeJS.ErrnoException).code === 'EPERM';
  }
}

export function markOf(pid: number): ProcessMark {
  return { pid, machine: thisMachine(), started: startOf(pid) };
}

/** Whether a marked process is still there. */
export function presenceOf({ pid, machine, started }: ProcessMark): Presence {
  if (machine !== thisMachine()) return 'unknown';
  if (!isRunning(pid)) return 'gone';
  const startedNow = startOf(pid);
  if (startedNow === '') return 'gone';
  if (started === null || startedNow === null) return 'unknown';
  return started === startedNow ? 'running' : 'gone';
}
