/**
 * The private folder when two states of the content are compared. It is in no version of the repository, so it stands beside both: else every
 * price that hangs on it would look as if it had changed.
 */

import { privateFolder } from '../reading/layout.ts';
import type { ContentState } from './fileChanges.ts';

const isPrivate = (path: string) => path.startsWith(`${privateFolder}/`);
/** Keys that may stand in the public files and in the private ones. */
const privateKey = /^(?:costs|requests|private_note):/m;

/** The public file that a private one adds to; null for lots and walks, whose notes change nothing that is compared. */
function publicFile(path: string): string | null {
  const below = path.slice(privateFolder.length + 1);
  if (below === 'yard.yaml') return below;
  return below.startsWith('cultivars/') ? below.replace(/\.yaml$/, '.md') : null;
}

/**
 * An earlier state with the private files of today, as far as they fit: for records that were there and held no private keys themselves.
 * A state that holds private files of its own is left as it is.
 */
export function withPrivateFiles<State extends ContentState>(past: State, today: ContentState): State {
  if (past.files.some(({ path }) => isPrivate(path))) return past;
  const decoder = new TextDecoder();
  const fitting = today.files.filter(({ path }) => {
    const name = isPrivate(path) ? publicFile(path) : null;
    const then = name === null ? undefined : past.files.find(file => file.path === name);
    return then !== undefined && !privateKey.test(decoder.decode(then.bytes));
  });
  return { ...past, files: [...past.files, ...fitting] };
}

/** The files that the repository keeps. */
export function publicFiles(state: ContentState): ContentState {
  return { ...state, files: state.files.filter(({ path }) => !isPrivate(path)) };
}
