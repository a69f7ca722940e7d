import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';
import { LongestFirst } from './tests/longestFirst.ts';

/** Tests of the pure core: `tests/layers.test.ts` holds what it may not use. */
const pure = ['src/core/**/*.test.ts', 'tests/{care,match}/**/*.test.ts'];

const setupFiles = ['tests/seeds.ts'];

/** No measures of speed: they only end what hangs, also on a machine that does five other things. */
const patience = {
  testTimeout: 900_000,
  hookTimeout: 900_000,
  expect: { poll: { timeout: 300_000 } },
};

export default defineConfig({
  test: {
    // One more than there are processors: much of what the long files do is waiting, for a browser or for a build in a process of its own.
    maxWorkers: availableParallelism() + 1,
    sequence: { sequencer: LongestFirst },
    projects: [
      {
        test: {
          name: 'pure',
          setupFiles,
          include: pure,
          // Pure code keeps nothing that another file could meet, and loading it anew for each file takes longer than most of its tests.
          isolate: false,
          ...patience,
        },
      },
      {
        test: {
          name: 'core',
          setupFiles,
          include: ['src/**/*.test.ts', 'tests/**/*.test.ts'],
          exclude: ['tests/site/**', 'node_modules/**', ...pure],
          ...patience,
        },
      },
      {
        test: {
          name: 'site',
          include: ['tests/site/**/*.test.ts'],
          globalSetup: ['tests/site/buildOnce.ts'],
          ...patience,
        },
      },
    ],
  },
});
