/** No place may read advice that its own calendar contradicts: every guide for every shipped place, words against windows. */

import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { type CareTask, careCalendar } from '../src/core/care/calendar.ts';
import type { CareYear } from '../src/core/care/careYear.ts';
import { guideCalendar } from '../src/core/care/guideCalendar.ts';
import type { TaskName } from '../src/core/care/guideVocabulary.ts';
import { dayOfSeason } from '../src/core/care/seasonClock.ts';
import { earlyFreeze } from '../src/core/care/turningPoints.ts';
import { day } from '../src/core/days.ts';
import type { Form } from '../src/core/records/common.ts';
import { type Guide, normaliseGuide, writtenGuide } from '../src/core/records/guide.ts';
import { renderGuide } from '../src/markdown/guideParts.ts';
import { realSpecies, realYear, speciesIds } from './care/realPlaces.ts';

const folder = new URL('../content/', import.meta.url);
const filesOf = (name: string, ending: string) =>
  readdirSync(new URL(name, folder))
    .filter(file => file.endsWith(ending))
    .sort();

const guides: Guide[] = filesOf('guides/', '.md').map(file => {
  const text = readFileSync(new URL(`guides/${file}`, folder), 'utf8');
  const [, front = '', body = ''] = /^---\n([\s\S]*?)\n---\n([\s\S]*)$/.exec(text) ?? [];
  return normaliseGuide(file.replace('.md', ''), writtenGuide.parse(parse(front)), { text: body, line: 1 });
});
/** Places whose monthly figures stand in their own file. */
const placeIds = filesOf('places/', '.yaml').map(file => file.replace('.yaml', ''));

const asOf = day('2026-11-25');
const yardSpecies = speciesIds.map(realSpecies);

interface Told {
  place: string;
  year: CareYear;
  /** Text of the guide, by its id. */
  text: (guide: string) => string;
  /** Parts of the guide, by its id. */
  parts: (guide: string) => string[];
}

function toldAt(place: string, speciesId: string): Told {
  const year = realYear(place, speciesId);
  const rendered = new Map(
    guides.map(guide => {
      const tasks = guideCalendar(guide.kind, year, asOf);
      const page = renderGuide(guide, {
        units: 'us',
        year,
        species: realSpecies(speciesId),
        form: null,
        stage: null,
        kept: null,
        tasks,
        yardSpecies,
        link: path => path,
        oldNames: new Map(),
      });
      return [guide.id, page] as const;
    }),
  );
  return {
    place,
    year,
    text: guide =>
      rendered
        .get(guide)!
        .html.replace(/<[^>]+>/g, ' ')
        .replace(/\s+/g, ' '),
    parts: guide => rendered.get(guide)!.headings.map(({ id }) => id),
  };
}

/** Tasks of a new tree that arrives on a day of the season. */
function arriving({ year }: Told, form: Form, kept: 'pot' | 'ground', at: number): readonly CareTask[] {
  const arrives = dayOfSeason({ season: 2026, at }, year.firstDoy);
  const plant = { species: year.species, form, kept, stage: 'first-winter' as const, potLiters: 11 };
  return careCalendar(year, { ...plant, arrives }).tasks;
}
const has = (tasks: readonly CareTask[], name: TaskName) => tasks.some(task => task.name === name);
const midwinter = ({ year }: Told) => year.coldestDay - 45;

/** What a guide says, and what the calendar has to do for it to be true. Each speaks of every place. */
const claims: readonly {
  what: string;
  says: (told: Told) => boolean;
  holds: (told: Told) => boolean;
}[] = [
  {
    what: 'storage and the way into it are told of where the calendar moves a pot in, and nowhere else',
    says: ({ parts }) => parts('overwintering-pot').includes('going-in'),
    holds: told => has(arriving(told, 'leafed-pot', 'pot', 330), 'move-in'),
  },
  {
    what: 'a pot is said to stay out where the calendar never stores or shelters it',
    says: ({ parts }) => parts('overwintering-pot').includes('staying-out'),
    holds: told => {
      const tasks = arriving(told, 'dormant-pot', 'pot', midwinter(told));
      return !has(tasks, 'move-in') && !has(tasks, 'store-on-arrival') && !has(tasks, 'shelter-nights');
    },
  },
  {
    what: 'a guide to winter in a pot begins with a place ready above freezing where the calendar stores the pot',
    says: ({ text }) => /^\s*Before the first hard night: leaves down/.test(text('overwintering-pot')),
    holds: told => has(arriving(told, 'leafed-pot', 'pot', 330), 'move-in'),
  },
  {
    what: 'a guide to waking begins with waking it slowly where a stored tree is woken',
    says: ({ text }) => /^\s*Wake it slowly/.test(text('waking-and-hardening')),
    holds: told => has(arriving(told, 'dormant-pot', 'pot', midwinter(told)), 'wake'),
  },
  {
    what: 'a tree in the ground is told to be left uncovered where the calendar neither covers it nor keeps it in its pot',
    says: ({ text }) => /^\s*Leave it uncovered/.test(text('overwintering-ground')),
    holds: told => {
      const tasks = arriving(told, 'bare-root', 'ground', midwinter(told));
      const { winterLowC, species } = told.year;
      return !has(tasks, 'protect') && winterLowC - species.dormantFirstWinterC.value >= 3;
    },
  },
  {
    what: 'a guide to planting begins with a first winter in the pot where the calendar plants no young tree before it',
    says: ({ text }) =>
      /Here wood this young does not stand its first winter/.test(text('establishing-in-the-ground')),
    holds: told => {
      const planted = arriving(told, 'bare-root', 'ground', midwinter(told)).filter(({ name }) =>
        ['plant-dormant', 'plant-out'].includes(name),
      );
      const settled = planted.every(({ trigger }) => trigger.startsWith('After its first winter'));
      return settled && told.year.winterLowC - told.year.species.dormantFirstWinterC.value < -12;
    },
  },
  {
    what: 'waking from storage is told of where a stored tree is woken',
    says: ({ parts }) => parts('waking-and-hardening').includes('out-of-storage'),
    holds: told => has(arriving(told, 'dormant-pot', 'pot', midwinter(told)), 'wake'),
  },
  {
    what: 'a dormant tree in its pot is told to be stored where the calendar stores it',
    says: ({ text }) => /Put it in the dark or in dim light/.test(text('first-48-hours')),
    holds: told => has(arriving(told, 'dormant-pot', 'pot', told.year.coldestDay), 'store-on-arrival'),
  },
  {
    what: 'late leaves are let go where the calendar lets them go',
    says: ({ text }) => /let the leaves go/.test(text('first-48-hours')),
    holds: told => {
      const freeze = earlyFreeze(told.year);
      return (
        freeze !== null &&
        has(arriving(told, 'leafed-pot', 'pot', Math.max(0, freeze - 10)), 'hold-late-leaves')
      );
    },
  },
  {
    what: 'the cool months are called the planting season where a leafless tree is planted in them',
    says: ({ text }) => /the cool months are the planting season/.test(text('establishing-in-the-ground')),
    holds: told => {
      const tasks = arriving(told, 'bare-root', 'ground', midwinter(told));
      const planted = tasks.find(({ name }) => name === 'plant-dormant');
      return (
        planted !== undefined &&
        planted.range.from <= dayOfSeason({ season: 2026, at: told.year.coldestDay }, told.year.firstDoy)
      );
    },
  },
  {
    what: 'pinching is called a matter of shape only where summers are hot',
    says: ({ text }) => /Pinching is a matter of shape/.test(text('growing-on-in-a-pot')),
    holds: ({ year: { placeClass, species } }) =>
      species.id === 'fig' && (placeClass.summer === 'hot' || placeClass.summer === 'very-hot'),
  },
  {
    what: 'a warm wall is advised where summers are cool or moderate',
    says: ({ text }) => /A wall that faces the midday sun/.test(text('establishing-in-the-ground')),
    holds: ({ year: { placeClass } }) => placeClass.summer === 'cool' || placeClass.summer === 'moderate',
  },
];

/** Work that a guide asks for in a part of its own, so that its dates must be there. */
const neverEmpty: readonly [guide: string, part: string, title: string][] = [
  ['overwintering-pot', 'going-in', 'Move the pot into storage'],
  ['overwintering-pot', 'out-and-in-on-hard-nights', 'Shelter the pot on hard nights'],
  ['overwintering-ground', 'cover', 'Cover the tree for winter'],
  ['overwintering-ground', 'cover-for-the-young-tree', 'Cover the tree for winter'],
  ['waking-and-hardening', 'out-of-storage', 'Bring the tree into the light'],
];

describe.each(['fig', 'pomegranate', 'jujube'] as const)('guides for %s', speciesId => {
  const seen = new Map<string, { yes: number; no: number }>();

  it.each(placeIds)('agree with the calendar of %s', place => {
    const told = toldAt(place, speciesId);
    for (const { what, says, holds } of claims) {
      const [said, true_] = [says(told), holds(told)];
      expect(said, `${place}: ${what}; the guide ${said ? 'says so' : 'does not'}`).toBe(true_);
      const count = seen.get(what) ?? { yes: 0, no: 0 };
      seen.set(what, said ? { ...count, yes: count.yes + 1 } : { ...count, no: count.no + 1 });
    }
    for (const [guide, part, title] of neverEmpty) {
      if (!told.parts(guide).includes(part)) continue;
      expect(told.text(guide), `${place}: ${title}`).not.toMatch(
        new RegExp(`${title}\\. For [^.]* this does not come up`),
      );
    }
  });

  it('are told both ways over the places', () => {
    if (speciesId !== 'fig') return;
    for (const { yes, no } of seen.values()) expect(yes > 0 && no > 0).toBe(true);
  });
});
