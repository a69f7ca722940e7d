/** Rules about files as such: there, readable, well formed. */

import type { Rule } from './rule.ts';

export const fileRules = {
  'content-missing': {
    level: 'error',
    title: 'There is a content folder with something in it.',
    help: 'Everything the site shows comes from the content folder. Nothing was found there: look for a misspelled folder name, or for a CONTENT_DIR that points somewhere else.',
  },
  'demonstration-left': {
    level: 'error',
    title: 'Nothing of the demonstration is left in a yard of your own.',
    help: 'Whoever begins by replacing the files of the demonstration easily leaves some behind: its list of addresses, whose pages this yard does not have; its log of temperatures, which would move the dates of your trees; texts that name it. Each is told with its file. npm run new-yard begins a yard with nothing of the demonstration in it.',
  },
  'file-missing': {
    level: 'error',
    title: 'The records a yard cannot do without are there.',
    help: 'A site needs yard.yaml and at least one species, one cultivar, one list of lots and one place. Walks, guides, videos, photos and the temperature log may be left out.',
  },
  'stray-file': {
    level: 'warning',
    title: 'Every file in the content folder has a known place and ending.',
    help: 'A file in the wrong folder or with the wrong ending is not read, so what you wrote in it would silently not appear. Move or rename it; files whose name starts with a dot are left alone.',
  },
  'file-name': {
    level: 'error',
    title: 'A file is named after the id of what it holds; a walk after its day.',
    help: 'The name of a file without its ending is the id that other records refer to and part of a web address. Use lower-case letters, digits and single hyphens. A walk is named after its day, such as 2026-03-01.csv.',
  },
  'file-unreadable': {
    level: 'error',
    title: 'What is in the content folder are plain files that may be read.',
    help: 'Links that lead out of the content folder, links to folders, pipes, sockets and devices are not followed or read: what they lead to could be anything on this machine, or have no end. Put the files themselves in the folder.',
  },
  'file-too-large': {
    level: 'error',
    title: 'A record file is at most 2 MiB.',
    help: 'A list of 20,000 lots fits in 2 MiB. A larger file is nearly always something else put in by mistake, such as a picture or a video.',
  },
  'file-not-text': {
    level: 'error',
    title: 'A record file is plain text in UTF-8.',
    help: 'The file holds bytes that no text in UTF-8 has. It may be a picture, a spreadsheet or a document renamed, or text saved in an older encoding. Save it again as plain text, UTF-8.',
  },
  'file-empty': {
    level: 'error',
    title: 'A record file has something in it.',
    help: 'An empty file says nothing about what it is named after. Write the record, or delete the file.',
  },
  'yaml-syntax': {
    level: 'error',
    title: 'Keys and values are written so that they can be told apart.',
    help: 'Write one "key: value" on a line, with a space after the colon, and set what belongs together in the same column. Put a text in double quotes when it starts with a sign such as @ * & ! % # or has a colon and a space in it.',
  },
  'yaml-tab': {
    level: 'error',
    title: 'Lines are indented with spaces.',
    help: 'A tab looks as wide as the editor makes it, so it cannot say what belongs to what. Set your editor to write two spaces when you press the tab key.',
  },
  'yaml-alias': {
    level: 'error',
    title: 'Every value is written out.',
    help: 'The signs & and * in front of a word name a value and repeat it elsewhere. Records do without: a few such lines can swell to more than a computer holds, and a repeated value is changed in places nobody thought of. Text that starts with one of these signs goes in quotes.',
  },
  'duplicate-key': {
    level: 'error',
    title: 'A key is written once in its group.',
    help: 'When a key is there twice, nobody can say which of the two values is meant. Keep one.',
  },
  'front-matter': {
    level: 'error',
    title: 'A cultivar or guide starts with keys between two lines of three hyphens.',
    help: 'The first line of the file is ---, then come the keys, then another line ---, then the text.',
  },
  'csv-syntax': {
    level: 'error',
    title: 'A table has a header row and closed quotes.',
    help: 'The first line names the columns, every further line is one row, cells are separated by commas (or semicolons, or tabs). A cell that holds the separator or a quote stands in double quotes.',
  },
} as const satisfies Record<string, Rule>;
