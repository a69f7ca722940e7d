import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { siteLinks } from '../outputs/siteLinks.ts';
import { structuredData } from '../site/parts/structuredData.ts';
import { isWhole, mouldFile, mouldFolder, mouldFrom, mouldKinds, mouldPage } from './mould.ts';
import type { PageText } from './pageText.ts';

const links = siteLinks('https://yard.example', '/orchard/');
const mould = mouldPage('lots');

/** A layout as the site has it, written out. */
function rendered({ title, description, path, canonical = path, things, main }: PageText): string {
  return `<!DOCTYPE html><html><head><title>${title} · Yard</title><meta name="description" content="${description}"><link rel="canonical" href="${links.absolute(canonical)}"></head><body><main>${main.html}</main>${structuredData(things).html}</body></html>\n`;
}

const page: PageText = {
  title: 'Plain',
  description: 'Words.',
  path: '/lots/a-1/',
  things: [{ '@type': 'Product', name: 'Plain' }],
  main: { html: '<p>All of it.</p>' },
};

describe('a mould', () => {
  const pour = mouldFrom(rendered(mould), 'lots', links);

  it('gives what the layout gives', () => {
    expect(pour(page)).toBe(rendered(page));
  });

  it('sends search engines to the page that another is a version of', () => {
    const version = { ...page, canonical: '/lots/' };
    expect(pour(version)).toBe(rendered(version));
    expect(pour(version)).toContain('href="https://yard.example/orchard/lots/"');
  });

  it('lies in a folder that is taken away whole', () => {
    for (const kind of mouldKinds) {
      expect(mouldFile(kind).startsWith(`${mouldFolder(kind)}/`)).toBe(true);
      expect(`/${mouldFile(kind)}`).toBe(`${mouldPage(kind).path}index.html`);
    }
  });

  it('puts in every text as it is, whatever it holds', () => {
    const text = fc.string().filter(given => !/[&"<>']/.test(given));
    fc.assert(
      fc.property(text, text, text, (title, description, main) => {
        const other = { ...page, title, description, main: { html: main } };
        expect(pour(other)).toBe(rendered(other));
      }),
      { seed: 11, numRuns: 300 },
    );
  });

  it('escapes what would end a title or an attribute', () => {
    const text = pour({ ...page, title: '<b>&', description: 'a "b" & c' });
    expect(text).toContain('<title>&lt;b&gt;&amp; · Yard</title>');
    expect(text).toContain('content="a &quot;b&quot; &amp; c"');
  });

  it('is refused where a mark is missing, stands twice or out of order', () => {
    const whole = rendered(mould);
    expect(() => mouldFrom(whole.replace('<title>', '<title>leafdrop_title_mark'), 'lots', links)).toThrow(
      'does not hold leafdrop_title_mark once',
    );
    expect(() => mouldFrom(whole.replace(mould.main.html, ''), 'lots', links)).toThrow('leafdrop_main_mark');
    expect(() => mouldFrom(rendered(mouldPage('cultivars')), 'lots', links)).toThrow('/lots/mould_/');
    expect(isWhole(whole)).toBe(true);
    expect(isWhole(whole.slice(0, -9))).toBe(false);
  });

  it('leaves nothing where a page has nothing to tell programs', () => {
    const silent = { ...page, things: [] };
    expect(pour(silent)).toBe(rendered(silent));
    expect(pour(silent)).not.toContain('<script');
  });
});
