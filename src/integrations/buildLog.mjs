/**
 * Where the site generator's log goes. It exits 0 after some errors that leave pages empty, so every logged error is kept
 * on the process, and the build command treats each as a failure. JavaScript, since the generator loads it by path.
 */

/** @typedef {{ problems: string[], pages: number, onPage: ((pages: number) => void) | null }} BuildLog */

/** The log of this process. @returns {BuildLog} */
export function buildLog() {
  const holder = /** @type {typeof globalThis & { leafdropBuildLog?: BuildLog }} */ (globalThis);
  holder.leafdropBuildLog ??= { problems: [], pages: 0, onPage: null };
  return holder.leafdropBuildLog;
}

/** Counts a page of this build. */
export function countPage() {
  const log = buildLog();
  log.pages += 1;
  log.onPage?.(log.pages);
}

const colors = new RegExp(`${String.fromCharCode(27)}\\[[0-9;]*m`, 'g');

/** Label of what the bundler says. */
const bundler = 'vite';

/** Made by the site generator from its configuration. */
export function logDestination() {
  const log = buildLog();
  return {
    /** @param {{ label: string | null, level: string, message: string }} event */
    write({ label, level, message }) {
      const text = message.replace(colors, '').trimEnd();
      if (level === 'error') log.problems.push(text);
      // The bundler's remarks, such as how long its plug-ins took on a busy machine, are for whoever changes the program.
      const isRemark = level === 'warn' && label === bundler && !process.env.LEAFDROP_TRACE;
      const isTold = level === 'error' || (level === 'warn' && !isRemark);
      if (isTold) process.stderr.write(`${label ?? 'site'}: ${text}\n`);
    },
  };
}

export default logDestination;
