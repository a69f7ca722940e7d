/** Files of a content folder that could not be read, or must not be. */

import { type Problem, wholeFile } from './problem.ts';

/** Why a file was not read. */
export type Unread =
  /** A link that leads out of the content folder. */
  | 'outside'
  /** A link that leads to itself, or round in a circle. */
  | 'loop'
  /** A link that leads nowhere, or a file that went while the folder was read. */
  | 'gone'
  /** A link to a folder. */
  | 'folder-link'
  /** A folder where a file is expected. */
  | 'folder'
  /** A file where the content folder is expected. */
  | 'no-folder'
  /** A pipe, socket or device, which may have no end. */
  | 'special'
  | 'not-permitted'
  /** Larger than any record. */
  | 'too-large'
  /** Whatever else the system says. */
  | 'failed';

interface Words {
  message: string;
  remedy: string;
}

const words: Record<Unread, Words> = {
  outside: {
    message:
      'this is a link to something outside the content folder, and nothing out there is read or published',
    remedy: 'put the file itself here.',
  },
  loop: {
    message: 'this is a link that leads round in a circle',
    remedy: 'put the file itself here, or take the link out.',
  },
  gone: {
    message: 'the file is not there: a link to nothing, or a file that was taken away just now',
    remedy: 'put the file itself here, or take the link out, and try again.',
  },
  'folder-link': {
    message: 'this is a link to a folder, and links to folders are not followed',
    remedy: 'put the files themselves here.',
  },
  folder: {
    message: 'this is a folder where a file is needed',
    remedy: 'move what is in it elsewhere, and write the file.',
  },
  'no-folder': {
    message: 'this is a file where the content folder is needed',
    remedy: 'look for a slip in CONTENT_DIR.',
  },
  special: {
    message: 'this is a pipe, a socket or a device, which is never read since it may have no end',
    remedy: 'take it out of the content folder.',
  },
  'not-permitted': {
    message: 'this may not be read by you',
    remedy: 'change who may read it, on most systems with: chmod u+r (for a folder u+rx), or take it out.',
  },
  'too-large': {
    message: 'the file is far larger than any record',
    remedy: 'take it out of the content folder; photographs belong in content/photos/.',
  },
  failed: {
    message: 'the system could not read this',
    remedy: 'look whether the disk or the name is damaged, and copy the file here again.',
  },
};

/** One problem for one file or folder. `detail` is what the system said, such as EIO. */
export function unreadProblem(file: string, why: Unread, detail = ''): Problem {
  const { message } = words[why];
  const remedy = file === 'private' ? 'name the folder itself in PRIVATE_DIR.' : words[why].remedy;
  return {
    rule: 'file-unreadable',
    file,
    spot: wholeFile,
    got: detail,
    expected: 'a plain file inside the content folder',
    message: detail === '' ? message : `${message} (${detail})`,
    remedy,
  };
}
