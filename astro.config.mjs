// @ts-check
import { defineConfig } from 'astro/config';
import { directives } from './src/site/contentPolicy.ts';

export default defineConfig({
  // Both are set by the build command: the address from yard.yaml, the base path from BASE_PATH.
  site: 'https://leafdrop.example',
  base: '/',
  output: 'static',
  trailingSlash: 'always',
  prerenderConflictBehavior: 'error',
  devToolbar: { enabled: false },
  scopedStyleStrategy: 'where',
  // The default drops line breaks between inline elements, which glues prices to units.
  compressHTML: true,
  build: {
    format: 'directory',
    inlineStylesheets: 'never',
    assets: 'assets',
    // Writing one page's file while the next is rendered.
    concurrency: 4,
  },
  // Nothing is rendered by the generator's own Markdown (src/markdown does it), and highlighting clashes with the content policy.
  markdown: { syntaxHighlight: false },
  security: {
    csp: {
      directives: [...directives],
      scriptDirective: { resources: ["'self'"] },
    },
  },
  vite: {
    // Inlined scripts would need hashes for each page and break dynamic imports of built files.
    build: {
      assetsInlineLimit: 0,
      // A remark about time, made when the machine is busy.
      rolldownOptions: { checks: { pluginTimings: false } },
    },
    // Scripts in one file may still load further ones on use.
    worker: { format: 'es' },
  },
  logger: { entrypoint: './src/build/generatorLog.mjs' },
});
