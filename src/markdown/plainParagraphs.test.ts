/** Paragraphs of words against the Markdown of the yard, which is the reference for all that is taken. */

import { describe, expect, it } from 'vitest';
import { randomFromText } from '../core/random.ts';
import { plainParagraphs } from './plainParagraphs.ts';
import { processedProse } from './prose.ts';

const page = { path: '/cultivars/wren/', parts: [], link: (path: string) => path };

const pieces = [
  ...[
    'fig',
    'Pêche',
    'a',
    'wW',
    'www',
    'http',
    'mailto',
    'x1',
    '2026',
    '1',
    '½',
    '-20 °C',
    '9.30',
    '30%',
    '–',
  ],
  ...[' ', ' ', ' ', '  ', '\n', '\n', '\n\n', '\n\n\n', '\n ', ' \n', '\t', '.', ',', ';', ':', ': ', '::'],
  ...['"', "'", '(', ')', '?', '-', '--', '---', '\n---', '\n- ', '\n1. ', '===', '\u00a0', '\u0301', '\r\n'],
];
const marks = [
  '*',
  '_',
  '`',
  '#',
  '<',
  '>',
  '&',
  '&amp;',
  '[',
  ']',
  '!',
  '|',
  '~',
  '\\',
  '@',
  '/',
  '+',
  '{',
  '}',
  '$',
];

function someText(seed: string, from: readonly string[]): string {
  const random = randomFromText(seed);
  const count = 1 + Math.floor(random.uniform() * 7);
  const more = Array.from({ length: count }, () => from[Math.floor(random.uniform() * from.length)]!);
  return `${random.uniform() < 0.7 ? 'Figs' : ''}${more.join('')}`;
}

describe('paragraphs of words', () => {
  it('are what the processor makes of them', () => {
    let taken = 0;
    for (let i = 0; i < 4000; i += 1) {
      const text = someText(`plain ${i}`, i % 4 === 0 ? [...pieces, ...marks] : pieces);
      const plain = plainParagraphs(text);
      if (plain === null) continue;
      taken += 1;
      expect(plain, JSON.stringify(text)).toBe(processedProse(text, page));
    }
    expect(taken).toBeGreaterThan(300);
  });

  it('take what growers write', () => {
    const text =
      '\nLong, dark red fruit; it hangs well.\nSplits in rain (a "dry-summer" fig): not here.\n\nTwo crops.\n';
    expect(plainParagraphs(text)).toBe(processedProse(text, page));
  });

  it.each([
    ...marks.map(mark => `Words ${mark} words`),
    ...['', ' indented', '    code', '- item', '1. item', 'Heading\n---', 'Heading\n===', 'hard  \nbreak'],
    ...['see www.example.org', 'a :name here', '::leaf', 'CR\r\nLF'],
  ])('leave %j to the processor', text => {
    expect(plainParagraphs(text)).toBeNull();
  });
});
