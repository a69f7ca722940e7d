import { readFileSync } from 'node:fs';
import { beforeAll, expect, it } from 'vitest';
import { siteForTests } from '../../tests/siteForTests.ts';
import { assembled, loadContent } from '../content.ts';
import type { Catalogue } from '../core/catalogue.ts';
import { html } from './html.ts';
import { documentOf } from './layout.ts';

let all: Catalogue;
beforeAll(async () => {
  all = (await assembled(await loadContent({ dir: 'content' }))).catalogue;
});
const page = { title: 'A page', description: 'About it.', path: '/a/', main: html`<h1>A</h1>` };
/** Robots meta tag, RFC 9309 beside it: search engines that meet it leave the page out. */
const robots = (written: string) =>
  [...written.matchAll(/<meta name="robots" content="([^"]*)">/g)].map(([, words]) => words);

it('asks search engines to leave every page of a preview out, and none of a site that is published but those that are unlisted', () => {
  const site = siteForTests(all);
  expect(robots(documentOf(page, site))).toEqual([]);
  expect(robots(documentOf({ ...page, unlisted: true }, site))).toEqual(['noindex']);
  expect(robots(documentOf(page, { ...site, preview: true }))).toEqual(['noindex, nofollow']);
  expect(robots(documentOf({ ...page, unlisted: true }, { ...site, preview: true }))).toEqual(['noindex']);
});

it('is how proposals are built by the workflow', () => {
  const workflow = readFileSync('.github/workflows/publish.yml', 'utf8');
  const [proposal = ''] = workflow.split(/^ {2}build:$/m);
  expect(proposal).toContain('npm run build -- --preview');
  expect(workflow.slice(proposal.length)).not.toContain('--preview');
});
