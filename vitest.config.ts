import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    // By itself vitest leaves one processor free, which on two halves the speed.
    maxWorkers: availableParallelism(),
    projects: [
      {
        test: {
          name: 'core',
          include: ['src/**/*.test.ts', 'tests/**/*.test.ts'],
          exclude: ['tests/site/**', 'node_modules/**'],
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
      {
        test: {
          name: 'site',
          include: ['tests/site/**/*.test.ts'],
          globalSetup: ['tests/site/buildOnce.ts'],
          testTimeout: 300_000,
          hookTimeout: 300_000,
        },
      },
    ],
  },
});
