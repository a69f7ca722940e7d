import { describe, expect, it } from 'vitest';
import type { Catalogue } from '../../core/catalogue.ts';
import { inBritish, inLanguageOf, wordPairs } from './language.ts';

describe('British words', () => {
  it('turn each American word of the list into its pair, capitals kept', () => {
    for (const [american, british] of wordPairs) {
      expect(inBritish(american)).toBe(british);
      expect(inBritish(american.charAt(0).toUpperCase() + american.slice(1))).toBe(
        british.charAt(0).toUpperCase() + british.slice(1),
      );
    }
  });

  it('say the day before the month, in dates and in spans of them', () => {
    // CLDR 46, en-GB: d MMMM y, and d to d MMMM y within a month.
    expect(inBritish('From April 9 to 24, 2026, about Apr 9, by March 28, 2026.')).toBe(
      'From 9 to 24 April 2026, about 9 Apr, by 28 March 2026.',
    );
    expect(inBritish('Between December 20, 2026 and January 4, 2027; in May 30 F')).toBe(
      'Between 20 December 2026 and 4 January 2027; in May 30 F',
    );
  });

  it('leave words alone that only hold such letters', () => {
    for (const word of [
      'thermometer',
      'diameter',
      'parameter',
      'coloratura',
      'leaf fall',
      'it falls',
      'Grayson',
    ])
      expect(inBritish(word)).toBe(word);
  });
});

describe('a page', () => {
  const yard = { name: 'Gray Colors Nursery', language: 'en-GB' };
  const all = { yard, species: [], cultivars: [], guides: [], videos: [], lots: [] } as unknown as Catalogue;

  it('is turned but for the words of the grower, addresses and scripts', () => {
    const page =
      '<title>Flavors · Gray Colors Nursery</title><a href="/flavor/gray/" id="flavor" title="All flavors">Flavor</a><script>const color = 1;</script><article class="prose guide"><p>Our gray bark<br>color</p><details class="guide-cautions"><p>Gray mold</p></details><p>flavor</p></article><p>gray</p>';
    expect(inLanguageOf(all, page)).toBe(
      '<title>Flavours · Gray Colors Nursery</title><a href="/flavor/gray/" id="flavor" title="All flavours">Flavour</a><script>const color = 1;</script><article class="prose guide"><p>Our gray bark<br>color</p><details class="guide-cautions"><p>Grey mould</p></details><p>flavor</p></article><p>grey</p>',
    );
  });

  it('stays as it is for a yard in the United States', () => {
    const american = { ...all, yard: { ...yard, language: 'en-US' } } as unknown as Catalogue;
    expect(inLanguageOf(american, '<p>gray 30 in (76 cm)</p>')).toBe('<p>gray 30 in (76 cm)</p>');
  });
});
