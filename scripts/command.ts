/** What all commands share: flags, help, and endings without a stack trace. */

import { resolve } from 'node:path';
import { type ParseArgsConfig, parseArgs } from 'node:util';
import { settleFiles } from '../src/build/filesTogether.ts';
import { isDiskFull } from '../src/build/fullDisk.ts';
import { visibleLines } from '../src/core/reading/visible.ts';

/** A problem the person at the keyboard can mend; shown as one line. */
export class UsageError extends Error {
  override name = 'UsageError';
}

type Options = NonNullable<ParseArgsConfig['options']>;

/** Somebody has asked for the help of a command. */
class HelpAsked extends Error {
  override name = 'HelpAsked';
}

const helpFlag = { help: { type: 'boolean', short: 'h' } } as const;

function parsed<const T extends Options>(words: readonly string[], options: T) {
  try {
    return parseArgs({ args: [...words], options, allowPositionals: true, strict: true });
  } catch (problem) {
    const text = problem instanceof Error ? problem.message.split('. ')[0] : String(problem);
    throw new UsageError(`${text}. Try --help.`);
  }
}

/** Flags and words of a command. Throws a UsageError on an unknown flag, and for `--help` what ends the command with its help. */
export function readFlags<const T extends Options>(words: readonly string[], help: string, options: T) {
  const read = parsed(words, { ...options, ...helpFlag });
  if ((read.values as { help?: boolean }).help) throw new HelpAsked(help);
  return read;
}

/** Throws a UsageError for words that stand behind no flag, of a command that takes none. */
export function refuseLooseWords(words: readonly string[]): void {
  if (words.length > 0) throw new UsageError(`"${words.join(' ')}" is not understood here. Try --help.`);
}

/**
 * Runs a command when its file is the one that was started, and sets the exit code it returns. Problems of use end with code 2;
 * anything unforeseen ends with one line and code 1, and with the whole trace when LEAFDROP_TRACE is set.
 */
export async function runIfMain(file: ImportMeta, main: (words: string[]) => Promise<number>): Promise<void> {
  if (!file.main) return;
  process.exitCode = await endPlainly(async () => {
    await settleContent();
    return main(process.argv.slice(2));
  });
}

/** Brings to an end what a command that was killed had begun to change in the content. */
async function settleContent(): Promise<void> {
  const settled = await settleFiles(resolve(process.env.CONTENT_DIR ?? 'content'));
  if (settled === 'undone')
    process.stderr.write(
      'A change of your files had been cut off at its beginning; all is as it was before.\n',
    );
  if (settled === 'finished')
    process.stderr.write(
      'A change of your files had been cut off; it is finished now. git status shows it.\n',
    );
}

/** Runs a command and turns what it throws into one line and an exit code. */
export async function endPlainly(command: () => Promise<number>): Promise<number> {
  try {
    return await command();
  } catch (problem) {
    if (problem instanceof HelpAsked) {
      process.stdout.write(problem.message);
      return 0;
    }
    if (process.env.LEAFDROP_TRACE) throw problem;
    const said = problem instanceof Error ? problem.message : String(problem);
    const text = isDiskFull(problem) ? 'the disk is full. Make room, and run this again.' : said;
    process.stderr.write(`leafdrop: ${visibleLines(text)}\n`);
    if (problem instanceof Error && ['UsageError', 'AsOfError', 'OutputError'].includes(problem.name))
      return 2;
    return 1;
  }
}
