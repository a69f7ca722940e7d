import { describe, expect, it } from 'vitest';
import { hashOf } from '../hash.ts';
import type { FinishedFile } from './finishedSite.ts';
import { noLastBuild } from './lastBuild.ts';
import { planOf } from './plan.ts';

const route = (file: string, inputs: unknown) =>
  [file, { file, inputs: () => inputs, make: () => '' }] as const;
const routes = new Map([route('a', 1), route('b', new Map([['x', 2]])), route('c', 'z')]);

describe('a plan', () => {
  it('makes everything where there was no build before', () => {
    const { changed, unchanged, digests } = planOf(routes, noLastBuild);
    expect(changed).toEqual(['a', 'b', 'c']);
    expect(unchanged).toEqual([]);
    expect([...digests.keys()]).toEqual(changed);
  });

  it('takes what has the inputs of before, makes what has not, and leaves out what was not to be', () => {
    const file = { file: 'a', stamp: '1 2', page: null };
    const before = new Map<string, FinishedFile | 'absent'>([
      [`a ${hashOf(1)}`, file],
      [`b ${hashOf(new Map([['x', 3]]))}`, { ...file, file: 'b' }],
      [`c ${hashOf('z')}`, 'absent'],
    ]);
    const { changed, unchanged } = planOf(routes, {
      unchanged: (name, digest) => before.get(`${name} ${digest}`) ?? null,
    });
    expect(changed).toEqual(['b']);
    expect(unchanged).toEqual([file]);
  });
});
