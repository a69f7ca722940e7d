/**
 * Where the site generator's log goes. It exits 0 after some errors that leave pages empty, so every logged error fails the process it runs in.
 * JavaScript, since the generator loads it by path.
 */

const colors = new RegExp(`${String.fromCharCode(27)}\\[[0-9;]*m`, 'g');

const traceLines = /\n\s+at .*/g;

/** Label of what the bundler says. */
const bundler = 'vite';

/** Made by the site generator from its configuration. */
export default function logDestination() {
  return {
    /** @param {{ label: string | null, level: string, message: string }} event */
    write({ label, level, message }) {
      const plain = message.replace(colors, '').trimEnd();
      const text = process.env.LEAFDROP_TRACE ? plain : plain.replace(traceLines, '');
      if (level === 'error') process.exitCode = 1;
      // The bundler's remarks, such as how long its plug-ins took on a busy machine, are for whoever changes the program.
      const isRemark = level === 'warn' && label === bundler && !process.env.LEAFDROP_TRACE;
      const isTold = level === 'error' || (level === 'warn' && !isRemark);
      if (isTold) process.stderr.write(`${label ?? 'site'}: ${text}\n`);
    },
  };
}
