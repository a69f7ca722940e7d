/** The YAML parser's complaints in a grower's words. */

import type { ErrorCode } from 'yaml';
import { quote } from './problem.ts';
import type { RuleId } from './rules.ts';

interface Words {
  rule: RuleId;
  message: string;
  remedy: string;
}

const inQuotes = 'put the text in double quotes.';

const misaligned: Words = {
  rule: 'yaml-syntax',
  message: 'this line is indented in a way that does not fit the lines above',
  remedy: 'start it in the same column as its neighbors, with spaces.',
};

const colonInText: Words = {
  rule: 'yaml-syntax',
  message: 'a colon and a space inside the text start a new key here',
  remedy: inQuotes,
};

const unreadable: Words = {
  rule: 'yaml-syntax',
  message: 'this cannot be read',
  remedy: 'look at this line and the one above for a missing colon, quote or bracket.',
};

const reserved: Words = {
  rule: 'yaml-syntax',
  message: 'a text may not start with this sign',
  remedy: inQuotes,
};

const deep: Words = {
  rule: 'yaml-syntax',
  message: 'brackets or lists are nested too deep to be read',
  remedy: 'close the brackets that are left open; a record is never more than a few levels deep.',
};

export const aliasWords: Words = {
  rule: 'yaml-alias',
  message: 'anchors (&name) and references (*name) are not used in records',
  remedy: `write the value out; if a text starts with * or &, ${inQuotes}`,
};

export const tagWords: Words = {
  rule: 'yaml-syntax',
  message: 'a text may not start with an exclamation mark',
  remedy: inQuotes,
};

export const keyWords: Words = {
  rule: 'yaml-syntax',
  message: 'a key must be one word before a colon',
  remedy: `write "key: value"; if a text starts with a question mark or a bracket, ${inQuotes}`,
};

export function duplicateWords(key: string): Words {
  return {
    rule: 'duplicate-key',
    message: `the key ${quote(key)} is written twice`,
    remedy: 'keep one of the two lines.',
  };
}

export const tabWords: Words = {
  rule: 'yaml-tab',
  message: 'the line is indented with a tab',
  remedy: 'use spaces instead, two for each level.',
};

export const indentWords = misaligned;

const byCode: Partial<Record<ErrorCode, Words>> = {
  ALIAS_PROPS: aliasWords,
  BAD_ALIAS: aliasWords,
  MULTIPLE_ANCHORS: aliasWords,
  BAD_DIRECTIVE: { ...unreadable, message: 'a line may not start with a percent sign', remedy: inQuotes },
  BAD_DQ_ESCAPE: {
    rule: 'yaml-syntax',
    message: 'inside double quotes a backslash has a meaning of its own',
    remedy: 'use single quotes around the text, or write the backslash twice.',
  },
  BAD_INDENT: misaligned,
  BAD_SCALAR_START: reserved,
  BLOCK_AS_IMPLICIT_KEY: colonInText,
  MISSING_CHAR: {
    rule: 'yaml-syntax',
    message: 'a closing quote, a bracket or a colon is missing here or just above',
    remedy: 'add it.',
  },
  MULTILINE_IMPLICIT_KEY: {
    rule: 'yaml-syntax',
    message: 'a key has no colon and space after it',
    remedy: 'write "key: value", with a space after the colon.',
  },
  MULTIPLE_DOCS: {
    rule: 'yaml-syntax',
    message: 'a line of three hyphens starts a second document',
    remedy: 'take the line out, or split the file in two.',
  },
  RESOURCE_EXHAUSTION: deep,
  TAB_AS_INDENT: tabWords,
  TAG_RESOLVE_FAILED: tagWords,
  UNEXPECTED_TOKEN: unreadable,
};

/** Words for a complaint of the parser, by its code and its own text. */
export function wordsFor(code: ErrorCode, parserText: string): Words {
  if (code === 'BAD_INDENT' && parserText.startsWith('Flow')) return openBracket;
  if (code === 'UNEXPECTED_TOKEN' && parserText.includes('scalar at node end')) return afterQuote;
  if (code === 'MISSING_CHAR' && parserText.includes('quote')) return openQuote;
  return byCode[code] ?? unreadable;
}

const openBracket: Words = {
  rule: 'yaml-syntax',
  message: 'a bracket opened just above is not closed',
  remedy:
    'add the closing bracket; if it stands after a #, put the value in quotes, such as "#1", since # begins a comment.',
};

const openQuote: Words = {
  rule: 'yaml-syntax',
  message: 'a quote is opened but not closed',
  remedy: 'add the closing quote.',
};

const afterQuote: Words = {
  rule: 'yaml-syntax',
  message: 'something follows after a closing quote',
  remedy: 'put the whole text in double quotes; look also for a quote left open above.',
};

export const deepWords = deep;
