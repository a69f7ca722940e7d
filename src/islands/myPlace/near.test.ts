import { describe, expect, it } from 'vitest';
import type { WhereFile } from '../../site/data/where.ts';
import { parseChoice } from './choice.ts';
import { choiceNear, distanceInWords, nearZip } from './near.ts';

const hill = {
  id: 'hill',
  name: 'Hill',
  where: 'North Carolina, United States',
  lat: 35.5,
  lon: -82.5,
  heightM: 650,
  units: 'us' as const,
};
const coast = { ...hill, id: 'coast', name: 'Coast', lat: 33, lon: -80, heightM: 5 };
const where: WhereFile = {
  areas: { '288': [35.6, -82.5, 10], '995': [61.2, -149.9, 100], '006': [18.2, -66.5, 30] },
  places: [coast, hill],
  towns: false,
};

function choiceAt(zip: string) {
  const found = nearZip(where, zip);
  if (!found.ok) throw new Error(found.text);
  return choiceNear(found, found.nearest);
}

describe('the place nearest to a ZIP code', () => {
  it('is named with its distance', () => {
    const found = nearZip(where, '28801');
    expect(found.ok && found.nearest.place.id).toBe('hill');
    // A tenth of a degree of latitude is about 11 km.
    expect(choiceAt('288').found).toBe('about 7 miles (11 km) from the middle of ZIP 288');
  });

  it('says that a ZIP code tells no elevation', () => {
    expect(choiceAt('288').notes).toEqual([expect.stringContaining('does not tell your elevation')]);
    expect(choiceAt('288').warnings).toEqual([]);
  });

  it('warns of a far place and of a wide area', () => {
    const [far, wide] = choiceAt('995').warnings;
    expect(far).toMatch(/That is far/);
    expect(wide).toMatch(/another place may be nearer/);
  });

  it.each([
    ['', 'no ZIP code'],
    ['28', 'no ZIP code'],
    ['2880', 'no ZIP code'],
    ['28801-1234', 'no ZIP code'],
    ['999', 'know of no ZIP codes'],
    ['00601', 'Puerto Rico'],
    ['96910', 'Guam'],
    ['340', 'armed forces'],
    ['096', 'armed forces'],
    ['966', 'armed forces'],
  ])('is not found for "%s", and why is said', (zip, says) => {
    const found = nearZip(where, zip);
    expect(found.ok ? '' : found.text).toContain(says);
  });

  it('is found in a territory that has one', () => {
    const island = { ...hill, id: 'island', name: 'Island', lat: 18.3, lon: -66.1 };
    const found = nearZip({ ...where, places: [hill, island] }, '006');
    expect(found.ok && found.nearest.place.id).toBe('island');
  });

  it('is as far away as the words say', () => {
    expect(distanceInWords(0.2)).toBe('about 1 mile (1 km)');
    expect(distanceInWords(160.9344)).toBe('about 100 miles (160 km)');
  });
});

describe('a choice that was kept', () => {
  it('is read back, and anything else is overlooked', () => {
    const kept = choiceAt('288');
    expect(parseChoice(JSON.stringify(kept))).toEqual(kept);
    const own = { last: '04-20', first: '10-20', coldestC: -13 };
    expect(parseChoice(JSON.stringify({ ...kept, own }))?.own).toEqual(own);
    expect(parseChoice(JSON.stringify({ ...kept, own: { last: 4 } }))?.own).toBeNull();
    const town = {
      ...{
        name: 'Boone',
        where: 'North Carolina',
        region: 'North Carolina',
        country: 'US',
        lat: 36.2,
        lon: -81.7,
      },
      ...{
        heightM: 984,
        figures: '###',
        like: { name: 'Hill', differs: ['your winters are a zone colder'] },
      },
    };
    expect(parseChoice(JSON.stringify({ ...kept, town }))?.town).toEqual(town);
    for (const wrong of [undefined, {}, { ...town, lat: null }, { ...town, like: null }, 'Boone']) {
      expect(parseChoice(JSON.stringify({ ...kept, town: wrong }))).toEqual({ ...kept, town: null });
    }
    for (const text of [null, '', 'null', '3', '{}', '{"place":"../x"}', '{"place":"hill"']) {
      expect(parseChoice(text)).toBeNull();
    }
  });
});
