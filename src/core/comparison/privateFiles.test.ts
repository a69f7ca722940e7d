import { expect, test } from 'vitest';
import type { ContentState } from './fileChanges.ts';
import { publicFiles, withPrivateFiles } from './privateFiles.ts';

const state = (texts: Record<string, string>): ContentState => ({
  files: Object.entries(texts).map(([path, text]) => ({ path, bytes: new TextEncoder().encode(text) })),
  photos: [],
});
const paths = ({ files }: ContentState) => files.map(({ path }) => path);
const today = state({
  'yard.yaml': 'name: A\n',
  'private/yard.yaml': 'costs: {}\n',
  'private/cultivars/old.yaml': 'requests: 1\n',
  'private/cultivars/new.yaml': 'requests: 1\n',
  'private/lots/notes.yaml': '- lot: x\n',
});

test('private files stand beside an earlier state as far as its records were there', () => {
  const past = state({ 'yard.yaml': 'name: A\n', 'cultivars/old.md': '---\nname: B\n---\n' });
  expect(paths(withPrivateFiles(past, today))).toEqual([
    'yard.yaml',
    'cultivars/old.md',
    'private/yard.yaml',
    'private/cultivars/old.yaml',
  ]);
});

test('not where the earlier files held the keys themselves, or a private folder of their own', () => {
  const held = state({
    'yard.yaml': 'name: A\ncosts:\n  x: 1\n',
    'cultivars/old.md': '---\nrequests: 2\n---\n',
  });
  expect(withPrivateFiles(held, today)).toEqual(held);
  const own = state({ 'yard.yaml': 'name: A\n', 'private/yard.yaml': 'costs: {}\n' });
  expect(withPrivateFiles(own, today)).toBe(own);
});

test('the repository keeps the others', () => {
  expect(paths(publicFiles(today))).toEqual(['yard.yaml']);
});
