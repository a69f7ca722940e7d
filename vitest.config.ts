import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
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
          fileParallelism: false,
          testTimeout: 300_000,
          hookTimeout: 300_000,
        },
      },
    ],
  },
});
