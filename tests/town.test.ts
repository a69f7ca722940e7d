/** What the browser works out for a town, against what the pages of reference places say. */

import { beforeAll, describe, expect, it } from 'vitest';
import { assembled, loadContent } from '../src/content.ts';
import type { Catalogue } from '../src/core/catalogue.ts';
import { nothingPublished } from '../src/core/climate/figures.ts';
import { weatherYears } from '../src/core/climate/weatherYears.ts';
import { differences, nearestClimate } from '../src/core/match/nearestClimate.ts';
import { answerTown, answerWeather } from '../src/islands/town/answer.ts';
import { townFacts } from '../src/islands/town/facts.ts';
import { type Outlooks, outlooksFor } from '../src/outlooks.ts';
import { type PlaceFile, placeFile } from '../src/site/data/file.ts';
import { climatesFile, type HomeFile, homeFile } from '../src/site/data/town.ts';
import { type TreesFile, treesFile } from '../src/site/data/trees.ts';
import { packedTown } from './packedTown.ts';

let all: Catalogue;
let outlooks: Outlooks;
let trees: TreesFile;
let home: HomeFile;

/** As a browser gets it. */
const sent = <T>(file: T): T => JSON.parse(JSON.stringify(file));

beforeAll(async () => {
  all = (await assembled(await loadContent({ dir: 'content' }))).catalogue;
  outlooks = await outlooksFor(all);
  trees = sent(treesFile(all));
  home = sent(homeFile(all));
});

/** The verdicts of a place's file, put together as a page does. */
function verdictsOf({ reasons, kinds, cultivars }: PlaceFile) {
  return Object.entries(cultivars).map(([id, at]) => {
    const kind = kinds[at]!;
    const told = (indexes: readonly number[]) => indexes.map(index => reasons[index]!);
    return [id, { ...kind, because: told(kind.because), change: told(kind.change) }] as const;
  });
}

describe('a place worked out in the browser', () => {
  it.each(['minneapolis-mn', 'miami-fl', 'phoenix-az', 'seattle-wa'])(
    'is told the same as by its own page, from the same figures and years: %s',
    id => {
      const answers = outlooks.get(id)!;
      const file = sent(placeFile(all, outlooks, answers));
      const figures = { ...file.basis.figures, published: nothingPublished };
      const weather = {
        figures,
        years: weatherYears(figures),
        climate: { ...file.basis.climate, class: all.climates.get(id)!.class },
        heatStarts: file.basis.heatStarts,
      };
      const { name, region, country } = answers.place;
      const got = answerWeather({ id, name, region, country }, weather, trees, home);
      expect(JSON.stringify([...got.verdicts].sort())).toBe(JSON.stringify(verdictsOf(file).sort()));
      expect(sent(got.sending.now)).toEqual(file.travel);
    },
  );
});

describe('a town', () => {
  it('is told its own climate, not that of the nearest place', () => {
    // Alamosa, Colorado: hardiness zone 4b, not the 8a of Albuquerque (USDA Plant Hardiness Zone Map 2023 and NOAA normals 1991-2020: 32 F freezes
    // from early September to early June).
    const alamosa = answerTown(packedTown('Alamosa', 'Colorado', 'US', 37.469, -105.87, 2303), trees, home);
    const { facts } = townFacts(alamosa);
    const said = Object.fromEntries(facts.map(({ label, value }) => [label, value]));
    expect(said['Coldest night']).toMatch(/zone (?:4a|4b|5a)/);
    expect(said['Last freeze of spring']).toMatch(/usually (?:May|June|Jun) \d+/);
    const home4b = [...alamosa.verdicts.values()].filter(({ level }) => level === 'at-home');
    const inAlbuquerque = verdictsOf(sent(placeFile(all, outlooks, outlooks.get('albuquerque-nm')!)));
    expect(home4b.length).toBeLessThan(inAlbuquerque.filter(([, { level }]) => level === 'at-home').length);
  });

  it('has a verdict on every cultivar, weeks of every form, and says how sure it is', () => {
    const boone = answerTown(packedTown('Boone', 'North Carolina', 'US', 36.217, -81.675, 984), trees, home);
    expect([...boone.verdicts.keys()].sort()).toEqual(
      all.cultivars.map(({ cultivar }) => cultivar.id).sort(),
    );
    expect(boone.sending.table.map(({ form }) => form).sort()).toEqual([
      'bare-root',
      'dormant-pot',
      'leafed-pot',
    ]);
    expect(townFacts(boone).sure).toMatch(/within \d+ days and coldest night within \d+ F/);
  });

  it('is not sent to where the yard does not send', () => {
    const barred = all.yard.sending.notTo.find(({ region }) => region === 'California');
    const fresno = answerTown(packedTown('Fresno', 'California', 'US', 36.747, -119.772, 94), trees, home);
    expect(fresno.sending.now.route).toBe(barred === undefined);
  });

  it('where it never freezes says so, and has no dates to be sure of', () => {
    const singapore = answerTown(packedTown('Singapore', '', 'SG', 1.29, 103.85, 23), trees, home);
    const { facts, sure } = townFacts(singapore);
    expect(facts[0]?.value).toBe('none in nine years of ten');
    expect(sure).not.toMatch(/days/);
    for (const { value } of facts) expect(value).not.toMatch(/NaN|undefined|null|Infinity/);
  });

  it('has a place most like it, and what differs is said', () => {
    const { places } = climatesFile(all);
    const boone = answerTown(packedTown('Boone', 'North Carolina', 'US', 36.217, -81.675, 984), trees, home);
    const like = nearestClimate(boone.compared, places)!;
    const farther = nearestClimate(
      boone.compared,
      places.filter(({ id }) => id !== like.id),
    )!;
    expect(like.id).not.toBe('miami-fl');
    expect(farther.id).not.toBe(like.id);
    expect(differences(like.climate, like.climate)).toEqual([]);
    const miami = places.find(({ id }) => id === 'miami-fl')!;
    expect(differences(boone.compared, miami.climate).join(' ')).toMatch(
      /your winters are [\d.]+ zones colder/,
    );
  });
});
