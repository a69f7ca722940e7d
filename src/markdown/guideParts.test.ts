import { describe, expect, it } from 'vitest';
import { realSpecies, speciesIds } from '../../tests/care/realPlaces.ts';
import type { CareTask } from '../core/care/calendar.ts';
import type { CareYear, SeasonDays } from '../core/care/careYear.ts';
import { day } from '../core/days.ts';
import { ripenesses } from '../core/phenology/puttingAway.ts';
import type { Guide } from '../core/records/guide.ts';
import { type GuideReader, renderGuide } from './guideParts.ts';

const never: SeasonDays = { p10: null, p50: null, p90: null };
const on = (p10: number, p50: number, p90: number): SeasonDays => ({ p10, p50, p90 });
/** Days of the season that starts on July 24: 70 is October 2, 100 is November 1, 280 is April 30. */
const frosty: CareYear = {
  placeId: 'somewhere',
  placeName: 'Somewhere',
  placeClass: { winter: 'cold', season: 'middle', summer: 'moderate', air: 'fair' },
  species: realSpecies('fig'),
  firstDoy: 205,
  potLiters: 11,
  firstFreeze: {
    '36F': on(60, 70, 80),
    '32F': on(70, 80, 90),
    '28F': on(75, 90, 100),
    '24F': on(80, 100, 120),
    '20F': on(90, 110, 130),
  },
  lastFreeze: {
    '36F': on(280, 290, 300),
    '32F': on(270, 280, 290),
    '28F': on(260, 270, 280),
    '24F': on(250, 260, 270),
    '20F': on(240, 250, 260),
  },
  leafFall: on(78, 88, 101),
  dormant: on(100, 110, 120),
  budbreak: on(265, 275, 285),
  potRiskFirst: on(120, 130, 140),
  potRiskLast: on(200, 210, 220),
  coldRiskFirst: { young: never, established: never },
  coldRiskLast: { young: never, established: never },
  evergreen: false,
  meanC: Array.from({ length: 365 }, () => 10),
  coldestDay: 175,
  hottestDay: 0,
  hottestHighC: 30,
  etoMm: Array.from({ length: 365 }, () => 4),
  nights: Object.fromEntries(
    ripenesses.map(name => [name, { meets: on(80, 90, 100), before: on(95, 105, 115) }]),
  ) as CareYear['nights'],
  winterLowC: -20,
};
const levels = ['36F', '32F', '28F', '24F', '20F'] as const;
const nowhere = Object.fromEntries(levels.map(level => [level, never])) as CareYear['firstFreeze'];
const warm: CareYear = {
  ...frosty,
  placeName: 'Warmhaven',
  placeClass: { winter: 'frost-free', season: 'long', summer: 'very-hot', air: 'humid' },
  firstFreeze: nowhere,
  lastFreeze: nowhere,
  leafFall: never,
  dormant: never,
  budbreak: never,
  potRiskFirst: never,
  evergreen: true,
};

const guide = (body: string, over: Partial<Guide> = {}): Guide => ({
  id: 'try',
  title: 'Try',
  kind: 'growing-on',
  summary: 'A try.',
  species: [],
  forms: [],
  body,
  bodyLine: 1,
  ...over,
});
const reader = (over: Partial<GuideReader> = {}): GuideReader => ({
  units: 'us',
  year: null,
  species: realSpecies('fig'),
  form: null,
  stage: null,
  kept: null,
  tasks: [],
  yardSpecies: speciesIds.map(realSpecies),
  link: path => `/orchard${path}`,
  oldNames: new Map(),
  ...over,
});
/** HTML without the cautions. */
const html = (body: string, over: Partial<GuideReader> = {}, guideOver: Partial<Guide> = {}) =>
  renderGuide(guide(body, guideOver), reader(over)).html.replace(
    /\n*<aside class="guide-cautions".*?<\/aside>\n*/s,
    '',
  );

describe('dates', () => {
  const body =
    'Move it :before{date="first-freeze" at="24F"}. Cover it :after[never]{date="last-freeze" at="32F" chance="5-in-10"}. Leaves fall :around{date="leaf-fall"}.';

  it('are days of a place', () => {
    expect(html(body, { year: frosty })).toBe(
      '<p>Move it before October 12. Cover it after April 30. Leaves fall between October 10 and November 2.</p>',
    );
  });

  it('are the rule where no place is known', () => {
    expect(html(body)).toBe(
      '<p>Move it before the day the chance of a 24 F (-4.5 C) night passes 1 in 10. ' +
        'Cover it after the day the chance of a later 32 F (0 C) night drops to 5 in 10. ' +
        'Leaves fall around the first hard freeze or two cool weeks.</p>',
    );
    expect(html('It comes :around{date="last-freeze" at="28F"}.')).toBe(
      '<p>It comes in the weeks that your place page gives for it.</p>',
    );
  });

  it('still make a sentence where the place has no such day', () => {
    expect(html(body, { year: warm })).toBe(
      '<p>Move it before nights of 24 F (-4.5 C), which are rare here. Cover it never. ' +
        'Leaves fall around the coolest weeks, since leaves need not fall here.</p>',
    );
    const others = (['dormant', 'budbreak', 'safe-out', 'stop-feeding'] as const).map(date =>
      html(`Do it :after{date="${date}"}.`, { year: warm }),
    );
    expect(others).toEqual([
      '<p>Do it after the coolest weeks, since a deep sleep is not to be relied on here.</p>',
      '<p>Do it after the first growth after the coolest weeks.</p>',
      '<p>Do it at any time of year, since freezes are rare here.</p>',
      '<p>Do it after growth slows for the coolest weeks.</p>',
    ]);
  });

  it('tell which species they are for when the reader did not say', () => {
    expect(html('Buds break :around{date="budbreak"}.', { year: frosty, species: null })).toBe(
      '<p>Buds break between April 15 and May 5 (fig).</p>',
    );
  });

  it('say so when only some years have one', () => {
    const some = {
      ...frosty,
      firstFreeze: { ...frosty.firstFreeze, '20F': { p10: 150, p50: null, p90: null } },
    };
    expect(html('It comes :around{date="first-freeze" at="20F"}.', { year: some })).toBe(
      '<p>It comes about December 21, in the few years that have one.</p>',
    );
    const fallsInSome = { ...frosty, leafFall: { ...frosty.leafFall, p90: null } };
    expect(html('Leaves come down :around{date="leaf-fall"}.', { year: fallsInSome })).toMatch(
      /^<p>Leaves come down about \w+ \d+, in the years when that happens\.<\/p>$/,
    );
  });
});

describe('parts', () => {
  const body =
    'All.\n\n:::part{winter="cold" form="bare-root"}\nDeep.\n:::\n\n:::part{no-freeze="28F"}\nMild.\n:::\n';

  it('are shown to whom they are for, and hidden from the others', () => {
    expect(html(body, { year: frosty, form: 'bare-root' })).toBe('<p>All.</p>\n<p>Deep.</p>');
    expect(html(body, { year: frosty, form: 'leafed-pot' })).toBe('<p>All.</p>');
    expect(html(body, { year: warm, form: 'bare-root' })).toBe('<p>All.</p>\n<p>Mild.</p>');
  });

  it('are shown with a line that says whom they are for while nobody knows', () => {
    expect(html(body, { year: frosty })).toContain(
      '<div class="guide-part">\n<p class="guide-for"><strong>For a bare-root tree.</strong></p>\n<p>Deep.</p>\n</div>',
    );
    const general = html(body, { units: 'metric' });
    expect(general).toContain('<strong>For a bare-root tree, where winters are cold.</strong>');
    expect(general).toContain('<strong>Where nights hardly ever reach -2 C (28 F).</strong>');
  });

  it('put that line below a heading, and leave it out where the heading says it', () => {
    expect(html('All.\n\n:::part{kept="pot"}\n## Pots\nWords.\n:::\n')).toMatch(
      /<h2[^>]*>Pots<\/h2>\n<p class="guide-for">/,
    );
    const said = html('All.\n\n:::part{form="bare-root"}\n## A bare-root tree\nWords.\n:::\n');
    expect(said).toContain('<h2 id="a-bare-root-tree">A bare-root tree</h2>\n<p>Words.</p>');
  });

  it('say nothing where all that is in them is for other readers', () => {
    const nested =
      'All.\n\n::::part{form="bare-root"}\n:::part{no-freeze="28F"}\nMild, [there].\n\n[there]: /guides/\n:::\n::::\n';
    expect(html(nested, { year: frosty })).toBe('<p>All.</p>');
    expect(html(nested, { year: warm })).toContain('guide-for');
  });

  it('take the species and form of a guide that has only one', () => {
    const part = 'All.\n\n:::part{species="fig"}\nMilk.\n:::\n\n:::part{species="jujube"}\nThorns.\n:::\n';
    expect(html(part, { species: null }, { species: ['fig'] })).toBe('<p>All.</p>\n<p>Milk.</p>');
  });
});

describe('figures, tasks and cautions', () => {
  it('quote a species, or the words given where it has no figure or nobody said which', () => {
    const body =
      'Leaves from :figure[their limit]{of="leaf-damage"}, chill :figure[as it needs]{of="chill-hours"}.';
    expect(html(body)).toBe('<p>Leaves from 30 F (-1 C), chill 100 to 300 hours.</p>');
    expect(html(body, { species: null })).toBe('<p>Leaves from their limit, chill as it needs.</p>');
    const unchilled = { ...realSpecies('fig'), chillHours: null };
    expect(html(body, { species: unchilled })).toBe('<p>Leaves from 30 F (-1 C), chill as it needs.</p>');
  });

  it('give a task its days, its rule, or say that there is no need', () => {
    const task = {
      name: 'move-in',
      range: { from: day('2026-10-30'), to: day('2026-11-04') },
      trigger: 'Leaves down.',
    } as CareTask;
    const body = '::task{name="move-in"}';
    expect(html(body, { year: frosty, tasks: [task] })).toBe(
      '<p class="guide-task"><strong>Move the pot into storage. </strong>Between October 30 and November 4. Leaves down.</p>',
    );
    expect(html(body, { year: warm }, { kind: 'overwintering-pot' })).toContain(
      'For fig in Warmhaven this does not come up.',
    );
    expect(html(body, { year: warm }, { kind: 'growing-on' })).toContain(
      'Soft or first-year wood and small pots',
    );
    expect(html(body)).toContain('after a few nights of about 25 to 20 F');
  });

  it('put the cautions where they are placed, else before the first heading, and never leave them out', () => {
    const order = (body: string) =>
      [...renderGuide(guide(body), reader()).html.matchAll(/<(aside|h2)/g)].map(([, tag]) => tag);
    expect(order('Words.\n\n## One\n\n## Two\n')).toEqual(['aside', 'h2', 'h2']);
    expect(order('Words.\n\n## One\n\n::cautions\n\n## Two\n')).toEqual(['h2', 'aside', 'h2']);
    expect(order('Words.\n')).toEqual(['aside']);
  });

  it('put them back when the part they are placed in is hidden', () => {
    const hidden = 'Words.\n\n:::part{winter="mild"}\n::cautions\n:::\n';
    expect(renderGuide(guide(hidden), reader({ year: frosty })).html).toContain('guide-cautions');
  });
});

describe('the line above the cautions', () => {
  const summary = (kind: Guide['kind']) =>
    /<summary>(.*?)<\/summary>/.exec(
      renderGuide(guide('Words.', { kind }), reader({ species: realSpecies('fig') })).html,
    )?.[1];

  it('names what can kill before what the plant does to skin, and how many cautions open under it', () => {
    const { cautions } = renderGuide(
      guide('Words.', { kind: 'overwintering-pot' }),
      reader({ species: realSpecies('fig') }),
    );
    expect(summary('overwintering-pot')).toMatch(
      /^<strong>Take care\.<\/strong> Fumes from heaters and engines can kill\. Handling fig: the milky sap irritates.*sunlight/,
    );
    expect(summary('overwintering-pot')).toContain(`All ${cautions.length} cautions`);
  });

  it('speaks of no heater where the work needs none', () => {
    expect(summary('pruning')).toMatch(/^<strong>Take care\.<\/strong> Handling fig: the milky sap/);
  });
});

describe('the page', () => {
  it('keeps old names of a part at its heading, where a link of then opens the page', () => {
    const body = '## Going in\n\nWords.\n\n:::part{winter="cold"}\n## Deep cold\n\nMore.\n:::\n';
    const names = new Map([
      ['going-in', ['into-the-shed', 'moving-in']],
      ['deep-cold', ['frost']],
      ['not-there', ['gone']],
    ]);
    const { html, headings } = renderGuide(guide(body), reader({ oldNames: names }));
    expect(html).toContain(
      '<h2 id="going-in"><span id="into-the-shed"></span><span id="moving-in"></span>Going in</h2>',
    );
    expect(html).toContain('<h2 id="deep-cold"><span id="frost"></span>Deep cold</h2>');
    expect(html).not.toContain('gone');
    expect(headings.map(({ text }) => text)).toEqual(['Going in', 'Deep cold']);
  });

  it('is the same for blocks that speak of others, which are made to HTML together', () => {
    const body =
      'One.\n\n## See [there][a] now\n\n:::part{winter="cold"}\n## Deep\n\nTwo & [three][a].\n:::\n\n[a]: /places/\n';
    const { html: page, headings } = renderGuide(
      guide(`::cautions\n\n${body}`),
      reader({ oldNames: new Map([['see-there-now', ['before']]]) }),
    );
    expect(page).toMatch(
      /^<aside class="guide-cautions" aria-label="Take care">\n<details>\n<summary><strong>Take care\.<\/strong>/,
    );
    expect(page).toContain(
      '<h2 id="see-there-now"><span id="before"></span>See <a href="/orchard/places/">there</a> now</h2>',
    );
    expect(page).toContain(
      '<div class="guide-part">\n<h2 id="deep">Deep</h2>\n<p class="guide-for"><strong>Where winters are cold.</strong></p>\n' +
        '<p>Two &#x26; <a href="/orchard/places/">three</a>.</p>\n</div>',
    );
    expect(headings.map(({ id }) => id)).toEqual(['see-there-now', 'deep']);
  });

  it('has no HTML of the author, and links under the base path', () => {
    const body = 'A <b>bold</b> [place](/places/) and [web](https://a.example/).\n\n<script>x</script>\n';
    expect(html(body)).toBe(
      '<p>A bold <a href="/orchard/places/">place</a> and <a href="https://a.example/">web</a>.</p>',
    );
  });

  it('gives every heading a fragment of its own', () => {
    const { headings, html: page } = renderGuide(
      guide('W.\n\n# Top\n\n## When\n\n### When\n\n#### Deep?\n'),
      reader(),
    );
    expect(headings).toEqual([
      { id: 'top', text: 'Top', depth: 2 },
      { id: 'when', text: 'When', depth: 2 },
      { id: 'when--2', text: 'When', depth: 3 },
      { id: 'deep', text: 'Deep?', depth: 3 },
    ]);
    expect(page).toContain('<h3 id="when--2">When</h3>');
  });
});
