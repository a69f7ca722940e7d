/** The walk on the phone, as it is used on the bench: gloves, no network, a tab that is killed. */

import { readFileSync } from 'node:fs';
import type { BrowserContext, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { readWalk } from '../../src/core/reading/walkFile.ts';
import { atSite } from './atSite.ts';
import { builtSites } from './builtSites.ts';
import { layoutFaults } from './layoutFaults.ts';
import { axeFindings } from './visiting.ts';

const { folder, base } = builtSites.atRoot;
const lots: { id: string; left: number }[] = JSON.parse(
  readFileSync(`${folder}/walk/lots.json`, 'utf8'),
).lots;
/** Least side of what gloved fingers press, px. Common practice, no source. */
const KEY_PX = 48;

const here = atSite({ folder, base });

async function opened(context: BrowserContext): Promise<Page> {
  const page = await context.newPage();
  await page.goto(`${here.site.address}walk/`);
  await page.waitForSelector('[data-lot]');
  return page;
}

async function savedFile(page: Page): Promise<{ name: string; text: string }> {
  const download = page.waitForEvent('download');
  await page.click('[data-save]');
  const file = await download;
  return { name: file.suggestedFilename(), text: readFileSync(await file.path(), 'utf8') };
}

const onPhone = { viewport: { width: 360, height: 740 }, hasTouch: true };

describe('the walk on the phone', () => {
  it('is laid out without fault at 360 px, with keys for gloved fingers', async () => {
    const context = await here.browser.newContext(onPhone);
    const page = await opened(context);
    expect(await layoutFaults(page)).toEqual([]);
    expect(await axeFindings(page)).toEqual([]);
    const small = await page.evaluate(
      least =>
        [...document.querySelectorAll<HTMLElement>('.walk :is(button, .button, input, summary)')]
          .filter(element => element.offsetParent !== null)
          .map(element => ({ of: element.textContent || element.id, at: element.getBoundingClientRect() }))
          .filter(({ at }) => at.height < least || at.width < least)
          .map(({ of, at }) => `${of}: ${at.width} by ${at.height}`),
      KEY_PX,
    );
    expect(small).toEqual([]);
    await context.close();
  });

  it('asks about a count that rises, and takes it as typed all the same', async () => {
    const context = await here.browser.newContext(onPhone);
    const page = await opened(context);
    const { id, left } = lots[0]!;
    await page.fill('#left', String(left + 5));
    expect(await page.textContent('[data-questions]')).toContain(`${left + 5} plants left, but`);
    expect(await page.textContent('[data-summary]')).toContain(`Still asked about: ${id}`);
    expect((await savedFile(page)).text).toBe(`lot,left\n${id},${left + 5}\n`);
    await page.fill('#left', String(left));
    expect(await page.textContent('[data-questions]')).toBe('');
    await context.close();
  });

  it('goes on without a network after its tab was killed, and ends in a file that is read as it was typed', async () => {
    const context = await here.browser.newContext({ ...onPhone, acceptDownloads: true });
    const page = await opened(context);
    await page.click('[data-field="left"] [data-step="-1"]');
    await page.click('[data-field="roots"] [data-word="holding"]');
    await page.fill('#note', 'one split, the other "soft"');
    await page.click('[data-lot] [type=submit]');
    await page.fill('#height_in', '31,5');
    // The worker is at work once it has everything.
    await page.evaluate(async () => void (await navigator.serviceWorker.ready));
    await page.close();
    await context.setOffline(true);

    const again = await opened(context);
    expect(await again.textContent('[data-place]')).toBe(`3 of ${lots.length}`);
    expect(await again.textContent('[data-summary]')).toContain(`2 of ${lots.length} lots looked at`);
    await again.click('[data-turn="-1"]');
    expect(await again.inputValue('#height_in')).toBe('31.5');
    await again.click('[data-turn="-1"]');
    expect(await again.getAttribute('[data-word="holding"]', 'aria-pressed')).toBe('true');
    const { name, text } = await savedFile(again);
    const { walk, notes, problems } = readWalk(`walks/${name}`, text);
    expect(problems).toEqual([]);
    expect(walk?.rows).toMatchObject([
      { lot: lots[0]!.id, left: lots[0]!.left - 1, roots: 'holding' },
      { lot: lots[1]!.id, left: null },
    ]);
    expect(walk?.rows[1]?.heightCm).toBeCloseTo(80.01, 6);
    expect(notes.map(note => note.text)).toEqual(['one split, the other "soft"']);
    await context.close();
  });

  it('says so where the browser keeps nothing', async () => {
    const context = await here.browser.newContext(onPhone);
    await context.addInitScript(() => {
      Storage.prototype.setItem = () => {
        throw new Error('no storage');
      };
    });
    const page = await opened(context);
    await page.fill('#left', '1');
    expect(await page.textContent('[data-status]')).toContain('save the file before you leave');
    await context.close();
  });

  it('is not listed, and shows nothing that other pages do not', () => {
    expect(readFileSync(`${folder}/walk/index.html`, 'utf8')).toContain(
      '<meta name="robots" content="noindex">',
    );
    const known = new Set(['id', 'name', 'raised', 'left', 'countedOn', 'pot', 'seen']);
    for (const lot of lots) expect(Object.keys(lot).filter(key => !known.has(key))).toEqual([]);
  });
});
