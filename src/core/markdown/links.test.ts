import { describe, expect, it } from 'vitest';
import { linkTarget, publishedAddress } from './links.ts';

const from = '/cultivars/wren/';
const kind = (address: string) => linkTarget(address, from).kind;

describe('addresses in a text', () => {
  it.each([
    ...[
      'https://trees.example',
      'HTTP://trees.example/a?b#c',
      'mailto:yard@trees.example',
      ' https://trees.example ',
    ],
  ])('%j leads elsewhere', address => {
    expect(kind(address)).toBe('outer');
  });

  /** What browsers do with these is in the WHATWG URL standard, section 4.4: tabs and line ends are dropped, `\` is read as `/`. */
  it.each([
    ...[
      '//evil.example/',
      '/\\evil.example',
      '\\\\evil.example',
      '/\t/evil.example',
      'java\nscript:alert(1)',
    ],
    ...[
      'javascript:alert(1)',
      'data:text/html,x',
      'vbscript:x',
      'file:///etc/passwd',
      'ftp://a.example',
      'x:y',
    ],
    ...[
      'https:evil.example',
      'https:///evil.example',
      'https://',
      'mailto:',
      'mailto:nobody',
      '\u0001javascript:x',
    ],
  ])('%j is never published', address => {
    expect(kind(address)).toBe('refused');
    expect(publishedAddress(address, from, path => path)).toBeNull();
  });

  it.each([
    ['/stock/', '/stock/', '', ''],
    ['/lots/25-001', '/lots/25-001/', '', ''],
    ['../inkpot/#traits', '/cultivars/inkpot/', 'traits', ''],
    ['inkpot', '/cultivars/wren/inkpot/', '', ''],
    ['#lots', '/cultivars/wren/', 'lots', ''],
    ['?q=a:b', '/cultivars/wren/', '', '?q=a:b'],
    ['/search/?q=fig#top', '/search/', 'top', '?q=fig'],
    ['/changes.atom', '/changes.atom', '', ''],
    ['/../../stock/', '/stock/', '', ''],
    ['/a/see: b', '/a/see:%20b/', '', ''],
  ])('%j leads inside the site', (address, path, part, query) => {
    expect(linkTarget(address, from)).toEqual({ kind: 'inner', path, part, query });
  });
});
