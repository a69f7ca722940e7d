import { describe, expect, it } from 'vitest';
import { realSpecies, realYear, speciesIds } from '../../../../tests/care/realPlaces.ts';
import type { CareYear } from '../../../core/care/careYear.ts';
import type { Catalogue, CultivarEntry } from '../../../core/catalogue.ts';
import { day } from '../../../core/days.ts';
import type { Guide } from '../../../core/records/guide.ts';
import type { Place } from '../../../core/records/place.ts';
import { guideTrees } from '../../../markdown/guideParts.ts';
import { unitsIn } from '../../words/units.ts';
import { arrivalSpans } from './arrivalMonths.ts';
import { arrivalForms, arrivalViews } from './arrivalViews.ts';
import { arrivalCalendarFile, placeCalendarFile } from './guideFiles.ts';
import { sheetPlace, sheetSource } from './guideSources.ts';
import { arrivalGuide, leadingOfYard, leadingSpecies, speciesOf } from './guideSubject.ts';
import { formGuide, generalGuide } from './guideViews.ts';
import { placeGuide } from './placeSheetView.ts';
import { quotedFigures } from './quotedFigures.ts';
import { speciesDateHeadings, speciesDates } from './speciesDates.ts';
import { speciesTable } from './speciesTable.ts';
import { taskList } from './tasks.ts';
import { reasonsInWords } from './taskView.ts';

const asOf = day('2026-11-25');
const guide = (over: Partial<Guide> = {}): Guide => ({
  id: 'winter',
  title: 'Winter',
  kind: 'overwintering-pot',
  summary: 'About winter.',
  species: [],
  forms: [],
  body: 'Roots are hurt from :figure[a limit]{of="root-injury"}.\n\n::task{name="water-stored"}\n',
  bodyLine: 1,
  ...over,
});
const grown = (species: string, count: number) =>
  Array.from({ length: count }, () => ({ cultivar: { species } }) as CultivarEntry);
const all = {
  asOf,
  yard: { address: 'https://yard.example/' },
  home: { country: 'US' },
  species: speciesIds.map(realSpecies),
  cultivars: [...grown('jujube', 1), ...grown('fig', 2)],
  guides: [guide(), guide({ id: 'first', kind: 'arrival' })],
  firstAddresses: new Map(),
  namingHost: 'yard.example',
  earlierParts: new Map(),
} as unknown as Catalogue;
const place = (id: string, name: string, country = 'US') => ({ id, name, country }) as Place;
const minneapolis = place('minneapolis-mn', 'Minneapolis');
const link = (path: string) => path;
const links = { href: link, absolute: link };
const viewOf = (of: Guide, at: Place, year: CareYear) =>
  placeGuide(sheetSource(all, of, link)!, sheetPlace(at), year, guideTrees(of, link));

describe('the species of a guide', () => {
  it('is the one of most cultivars, among those the guide is for', () => {
    expect(leadingSpecies(all, guide())?.id).toBe('fig');
    expect(leadingOfYard(all)?.id).toBe('fig');
    expect(leadingSpecies(all, guide({ species: ['jujube', 'mulberry'] }))?.id).toBe('jujube');
    expect(leadingSpecies({ ...all, species: [] }, guide())).toBeNull();
    expect(speciesOf(all, guide({ species: ['mulberry'] })).map(({ id }) => id)).toEqual(['mulberry']);
  });

  it('and the form choose the arrival guide, if the yard has one for them', () => {
    expect(arrivalGuide(all, 'bare-root', 'fig')?.id).toBe('first');
    const picky = { guides: [guide({ kind: 'arrival', forms: ['leafed-pot'], species: ['fig'] })] };
    expect(arrivalGuide(picky, 'leafed-pot', 'fig')).not.toBeNull();
    expect(arrivalGuide(picky, 'bare-root', 'fig')).toBeNull();
    expect(arrivalGuide(picky, 'leafed-pot', 'jujube')).toBeNull();
  });
});

describe('months of arrival', () => {
  it('cover the year once, the month of the day in the first span', () => {
    const spans = arrivalSpans(realYear('minneapolis-mn', 'fig'), 'leafed-pot', asOf);
    expect(spans.map(({ months }) => months)).toEqual(['September to March', 'April to August']);
    expect(spans[0]!.words).toMatch(/until the leaves fall, then stored$/);
  });

  it('are one where the answer never changes', () => {
    expect(arrivalSpans(realYear('miami-fl', 'fig'), 'leafed-pot', asOf)).toEqual([
      {
        months: 'All year',
        numbers: [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12],
        words: 'goes outdoors in shade, and into full sun in steps',
      },
    ]);
  });

  it('turn with the seasons south of the equator', () => {
    const [november] = arrivalSpans(realYear('melbourne-au', 'fig'), 'dormant-pot', asOf);
    expect(november!.words).toMatch(/^grows/);
  });
});

describe('days by species', () => {
  const cellsAt = (placeId: string, species: string) => speciesDates([realYear(placeId, species)])[0]!.cells;

  it('has a cell for every heading, and days that differ where the species do', () => {
    const rows = speciesDates(speciesIds.map(id => realYear('richmond-va', id)));
    expect(rows.map(({ species }) => species)).toHaveLength(speciesIds.length);
    for (const { cells } of rows) expect(cells).toHaveLength(speciesDateHeadings.length);
    expect(new Set(rows.map(({ cells }) => cells.join())).size).toBeGreaterThan(1);
  });

  it('gives ranges where it freezes and says so where it does not', () => {
    const [leaves, asleep, pot] = cellsAt('minneapolis-mn', 'fig');
    expect(leaves).toMatch(/^\w+ \w+ to \w+ \w+$/);
    expect(asleep).toMatch(/ to /);
    expect(pot).toMatch(/Nov|Oct/);
    expect(cellsAt('miami-fl', 'fig')).toEqual([
      'need not',
      'rests in the coolest weeks',
      'hardly ever',
      'hardly ever',
      'after the coolest weeks',
    ]);
  });
});

describe('a guide for a place', () => {
  const year = realYear('minneapolis-mn', 'fig');
  const view = viewOf(guide(), minneapolis, year);

  it('has its text, dates of a whole season, and tasks from the day on', () => {
    expect(view.body.html).toContain('Roots are hurt from a limit.');
    expect(view.body.html).toMatch(
      /<strong>Water the sleeping pot a little\. <\/strong>Between (?:October|November) \d+ and April \d+\./,
    );
    expect(view.tasks[0]!.from >= asOf).toBe(true);
    expect(view.withoutDates).toBeNull();
    expect(view.potOnly).toBeNull();
  });

  it('names the cautions of a task by fragments that its text has', () => {
    const fragments = view.tasks.flatMap(({ care }) => care.map(({ fragment }) => fragment.slice(1)));
    expect(fragments.length).toBeGreaterThan(0);
    expect(fragments.filter(id => !view.body.html.includes(`id="${id}"`))).toEqual([]);
  });

  it('puts the cautions of the leading species first', () => {
    expect(view.body.cautions[0]!.title).toBe('Handling fig');
  });

  it('says why it has no dates', () => {
    const layering = viewOf(guide({ kind: 'propagation', body: 'Cut.' }), minneapolis, year);
    expect(layering.tasks).toEqual([]);
    expect(layering.withoutDates).toMatch(/there are no dates to give/);
  });

  it('warns where the winters are too hard for the ground', () => {
    const ground = guide({ kind: 'establishing', body: 'Dig.' });
    expect(viewOf(ground, minneapolis, year).potOnly?.words).toMatch(/too hard for fig/);
    const mild = realYear('miami-fl', 'fig');
    expect(viewOf(ground, place('miami-fl', 'Miami'), mild).potOnly).toBeNull();
  });

  it('gives the units of the country first', () => {
    expect([unitsIn('US'), unitsIn('AU')]).toEqual(['us', 'metric']);
    const southern = viewOf(
      guide({ body: 'At :measure[24 F].' }),
      place('melbourne-au', 'Melbourne', 'AU'),
      realYear('melbourne-au', 'fig'),
    );
    expect(southern.body.html).toContain('At -4.5 C (24 F).');
  });

  it.each([
    'overwintering-pot',
    'overwintering-ground',
    'waking',
    'establishing',
    'growing-on',
    'pruning',
  ] as const)('gives them first in every line of the calendar of %s, and in that of a new tree', kind => {
    const melbourne = place('melbourne-au', 'Melbourne', 'AU');
    const year = realYear('munich-de', 'fig');
    const first = guide({ kind: 'arrival' });
    const [metric, us] = [melbourne, minneapolis].map(at => {
      const view = viewOf(guide({ kind }), at, year);
      const arrivals = arrivalViews({ asOf, guide: first }, at, year)!;
      const tasks = [...view.tasks, ...arrivals.shared, ...arrivals.forms.flatMap(form => form.tasks)];
      const notes = [view.potOnly?.known ?? '', ...arrivals.forms.map(({ because }) => because)];
      return [...tasks.flatMap(({ trigger, because }) => [trigger, because]), ...notes].join('\n');
    });
    expect(metric).toMatch(/\d C \(-?\d+ F\)/);
    expect(metric).not.toMatch(/\d (?:degrees )?(?:F|in|gal) \(/);
    expect(us).not.toMatch(/\d (?:degrees )?(?:C|cm|L|liters) \(/);
    const measuresOf = (text: string) => text.match(/-?\d+(?:\.\d+)? (?:F|C)\b/g)!.toSorted();
    expect(measuresOf(metric!)).toEqual(measuresOf(us!));
  });

  it('gives them first in the calendar file', () => {
    const melbourne = place('melbourne-au', 'Melbourne', 'AU');
    const file = placeCalendarFile(all, guide(), melbourne, realYear('munich-de', 'fig'), links)!;
    const words = file.replaceAll('\r\n ', '');
    expect(words).toMatch(/-4 C \(25 F\)/);
    expect(words).not.toMatch(/\d F \(/);
  });
});

describe('the arrival guide', () => {
  const arrival = guide({ kind: 'arrival' });

  it('shows what all forms share once, and the rest by form', () => {
    const views = arrivalViews({ asOf, guide: arrival }, minneapolis, realYear('minneapolis-mn', 'fig'))!;
    expect(views.shared.map(({ title }) => title)).toEqual(['Stand it apart and watch for pests']);
    expect(views.forms.map(({ form }) => form)).toEqual(['leafed-pot', 'dormant-pot', 'bare-root']);
    const titles = views.forms.map(({ tasks }) => tasks.map(({ title }) => title));
    expect(titles[0]).toContain('Let the late leaves go, slowly');
    expect(titles[1]).toContain('Store the sleeping tree');
    expect(titles[2]).toContain('Soak the bare roots');
    const ids = [...views.shared, ...views.forms.flatMap(({ tasks }) => tasks)].map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('keeps to the forms it is for', () => {
    expect(arrivalForms(guide())).toEqual([]);
    expect(arrivalViews({ asOf, guide: guide() }, minneapolis, realYear('minneapolis-mn', 'fig'))).toBeNull();
    const bare = arrivalViews(
      { asOf, guide: guide({ kind: 'arrival', forms: ['bare-root'] }) },
      place('miami-fl', 'Miami'),
      realYear('miami-fl', 'fig'),
    )!;
    expect(bare.months.map(({ heading }) => heading)).toEqual(['A leafless tree']);
  });

  it('quotes the figures of a species that is known', () => {
    const body = 'Roots keep :figure[a while]{of="bare-root-keeps"}.';
    const known = formGuide(all, guide({ body }), 'bare-root', realSpecies('fig'), link);
    expect(known.html).toContain('Roots keep 7 to 30 days.');
    expect(generalGuide(all, guide({ body }), link).html).toContain('Roots keep a while.');
  });
});

describe('figures by species', () => {
  it('stand side by side for those a guide quotes', () => {
    const table = speciesTable(quotedFigures(guide()), all.species, 'us')!;
    expect(table.headings).toEqual(['Roots are damaged at']);
    expect(table.rows.find(({ species }) => species === 'fig')?.cells).toEqual([
      { figure: '25 F (-4 C)', known: 'our figure' },
    ]);
  });

  it('are left out where there is nothing to compare', () => {
    expect(speciesTable(quotedFigures(guide({ body: 'No figure.' })), all.species, 'us')).toBeNull();
    expect(speciesTable(quotedFigures(guide()), [realSpecies('fig')], 'us')).toBeNull();
  });
});

describe('tasks as HTML', () => {
  it('have every word of the task, escaped, and a link to each caution', () => {
    const text = taskList([
      {
        id: 'move-in-2026',
        title: 'Move <it>',
        when: 'November 1 to 3, 2026',
        from: day('2026-11-01'),
        to: day('2026-11-03'),
        trigger: 'Below 20 F & dry.',
        because: 'It is cold (computed).',
        needs: 'You need a dolly.',
        care: [
          { title: 'lifting', fragment: '#caution-lifting' },
          { title: 'the sap of fig', fragment: '#caution-sap' },
        ],
      },
    ]);
    expect(text.html).toBe(
      '<ol class="care-tasks"><li id="move-in-2026" data-from="2026-11-01" data-to="2026-11-03"><p class="when"><time datetime="2026-11-01">November 1 to 3, 2026</time></p>' +
        '<p><strong>Move &lt;it&gt;.</strong> Below 20 F &amp; dry.</p>' +
        '<p class="task-care">Take care: <a href="#caution-lifting">lifting</a>, <a href="#caution-sap">the sap of fig</a>.</p>' +
        '<details><summary>Why</summary><p class="standing">You need a dolly. It is cold (computed).</p></details></li></ol>',
    );
  });
});

describe('calendar files', () => {
  const year = realYear('minneapolis-mn', 'fig');

  it('give the same bytes for the same content, ids of their own, and the page of the guide', () => {
    const there = { href: link, absolute: (path: string) => `https://yard.example${path}` };
    const once = placeCalendarFile(all, guide(), minneapolis, year, there)!;
    expect(placeCalendarFile(all, guide(), minneapolis, year, there)).toBe(once);
    expect(once).toMatch(/\r\nUID:wake-2026\.winter\.minneapolis-mn@yard\.example\r\n/);
    expect(once).toContain('\r\nDTSTAMP:20261125T000000Z\r\n');
    expect(once.replaceAll('\r\n ', '')).toContain('URL:https://yard.example/guides/winter/minneapolis-mn/');
  });

  it('keep the ids of their events over a rename of guide and place, so that nobody has an event twice (RFC 5545, 3.8.4.7)', () => {
    const idsIn = (text: string) => text.replaceAll('\r\n ', '').match(/(?<=\r\nUID:)\S+/g);
    const renamed = {
      ...all,
      firstAddresses: new Map([
        ['/guides/cold-months/', '/guides/winter/'],
        ['/places/twin-cities-mn/', '/places/minneapolis-mn/'],
      ]),
    };
    const before = placeCalendarFile(all, guide(), minneapolis, year, links)!;
    const after = placeCalendarFile(
      renamed,
      guide({ id: 'cold-months' }),
      { ...minneapolis, id: 'twin-cities-mn' },
      year,
      links,
    )!;
    expect(after).toContain('guides/cold-months/twin-cities-mn/');
    expect(idsIn(before)!.length).toBeGreaterThan(2);
    expect(idsIn(after)).toEqual(idsIn(before));
  });

  it('of a new tree run through its first two winters', () => {
    const text = arrivalCalendarFile(
      all,
      guide({ id: 'first', kind: 'arrival' }),
      minneapolis,
      year,
      'dormant-pot',
      links,
    );
    const ids = [
      ...text.replaceAll('\r\n ', '').matchAll(/UID:([^.]+)\.first\.minneapolis-mn\.dormant-pot@/g),
    ];
    const names = ids.map(([, id]) => id!);
    expect(names).toContain('store-on-arrival-2026');
    expect(names).toContain('move-in-2027');
  });
});

describe('reasons', () => {
  it('run on, each with its standing', () => {
    expect(
      reasonsInWords([
        { text: 'It is cold.', standing: 'modeled' },
        { text: 'It sleeps', standing: 'published', source: 'Author 1990.' },
      ]),
    ).toBe('It is cold (computed). It sleeps (published: Author 1990).');
  });
});
