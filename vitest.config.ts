import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

/**
 * Tests that build yards of their own, or take the lock of a build. One file at a time and with no other project beside them: builds wait for
 * each other and say so, and what they say is looked at.
 */
const building = [
  'tests/publish/**/*.test.ts',
  'tests/commands/rename.test.ts',
  'tests/site/extremeContent.test.ts',
];
// By itself vitest leaves one processor free, which on two halves the speed.
const maxWorkers = availableParallelism();

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'core',
          include: ['src/**/*.test.ts', 'tests/**/*.test.ts'],
          exclude: ['tests/site/**', 'node_modules/**', ...building],
          maxWorkers,
          sequence: { groupOrder: 0 },
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
      {
        test: {
          name: 'builds',
          include: building,
          maxWorkers: 1,
          sequence: { groupOrder: 1 },
          testTimeout: 300_000,
          hookTimeout: 300_000,
        },
      },
      {
        test: {
          name: 'site',
          include: ['tests/site/**/*.test.ts'],
          exclude: building,
          globalSetup: ['tests/site/buildOnce.ts'],
          maxWorkers,
          sequence: { groupOrder: 2 },
          testTimeout: 300_000,
          hookTimeout: 300_000,
        },
      },
    ],
  },
});
