/** The guides that ship: checked, readable, complete for every place and for nobody in particular, with every caution that is due. */

import { readdirSync, readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { type CautionTopic, cautionsFor } from '../src/core/care/cautions.ts';
import { guideCalendar } from '../src/core/care/guideCalendar.ts';
import { checkGuideMarkdown } from '../src/core/care/guideMarkdown.ts';
import { sentenceOffenders } from '../src/core/care/guideSentences.ts';
import { day } from '../src/core/days.ts';
import { forms } from '../src/core/records/common.ts';
import { type Guide, guideKinds, normaliseGuide, writtenGuide } from '../src/core/records/guide.ts';
import { type GuideReader, renderGuide } from '../src/markdown/guideParts.ts';
import { realSpecies, realYear, speciesIds } from './care/realPlaces.ts';

const folder = new URL('../content/guides/', import.meta.url);

const guides: Guide[] = readdirSync(folder)
  .filter(file => file.endsWith('.md'))
  .sort()
  .map(file => {
    const text = readFileSync(new URL(file, folder), 'utf8');
    const [, front = '', body = ''] = /^---\n([\s\S]*?)\n---\n([\s\S]*)$/.exec(text) ?? [];
    const line = front.split('\n').length + 3;
    return normaliseGuide(file.replace('.md', ''), writtenGuide.parse(parse(front)), { text: body, line });
  });

/** One place of every kind of winter, and the odd ones. */
const placeIds = [
  'international-falls-mn',
  'minneapolis-mn',
  'lincoln-ne',
  'asheville-nc',
  'seattle-wa',
  'mobile-al',
  'camborne-gb',
  'phoenix-az',
  'melbourne-au',
  'canberra-au',
  'santiago-cl',
  'miami-fl',
  'honolulu-hi',
] as const;

const yardSpecies = speciesIds.map(realSpecies);
const nobody: GuideReader = {
  units: 'us',
  year: null,
  species: null,
  form: null,
  stage: null,
  kept: null,
  tasks: [],
  yardSpecies,
  link: path => `/base${path}`,
  oldNames: new Map(),
};
const readerAt = (placeId: string, guide: Guide): GuideReader => {
  const year = realYear(placeId, 'fig');
  return { ...nobody, year, tasks: guideCalendar(guide.kind, year, day('2026-11-25')) };
};

const textOf = (html: string) =>
  html
    .replace(/<[^>]+>/g, ' ')
    .replace(/&#x26;/g, '&')
    .replace(/\s+/g, ' ');

describe.each(guides)('$id', guide => {
  it('passes the check without an error or a warning', () => {
    const { kind, species, forms: guideForms, body, bodyLine } = guide;
    expect(
      checkGuideMarkdown(body, { kind, species, forms: guideForms, bodyLine, yardSpecies: speciesIds }),
    ).toEqual([]);
  });

  it('has no sentence of more than 35 words', () => {
    expect(
      sentenceOffenders(guide.body).map(({ line, words, sentence }) => `${line}: ${words} ${sentence}`),
    ).toEqual([]);
  });

  it('speaks to everyone, in both units, with no trace of a directive', () => {
    for (const units of ['us', 'metric'] as const) {
      const { html, headings } = renderGuide(guide, { ...nobody, units });
      const text = textOf(html);
      expect(text.length).toBeGreaterThan(3000);
      expect(text).not.toMatch(
        /:(?:before|after|around|measure|figure|part|task|cautions)\b|\{|\}|undefined|null|NaN/,
      );
      expect(new Set(headings.map(({ id }) => id)).size).toBe(headings.length);
      for (const { id } of headings) expect(html).toContain(`id="${id}"`);
    }
  });

  it.each(placeIds)('has a full page for %s', placeId => {
    const { html } = renderGuide(guide, readerAt(placeId, guide));
    const text = textOf(html);
    expect(text.length).toBeGreaterThan(2500);
    expect(text).not.toMatch(
      /:(?:before|after|around|measure|figure|part|task|cautions)\b|\{|\}|undefined|null|NaN/,
    );
    // The page around it adds to this; the whole may have 20 kB.
    expect(gzipSync(html).length).toBeLessThan(12_000);
    expect(renderGuide(guide, readerAt(placeId, guide)).html).toBe(html);
    // Fragments are addresses: those of a place are among those of the general guide.
    const general = renderGuide(guide, nobody).headings.map(({ id }) => id);
    for (const { id } of renderGuide(guide, readerAt(placeId, guide)).headings) {
      expect(general).toContain(id);
      expect(id).not.toContain('--');
    }
  });

  it('gives every reader of a form something to do', () => {
    for (const form of forms) {
      const { html } = renderGuide(guide, { ...readerAt('minneapolis-mn', guide), form });
      expect(textOf(html).length).toBeGreaterThan(2000);
    }
  });
});

describe('the set of guides', () => {
  it('has one of every kind', () => {
    expect(guides.map(({ kind }) => kind).sort()).toEqual([...guideKinds].sort());
  });

  /** Words in a guide that call for a caution, whatever the table of kinds says. */
  const calls: readonly [CautionTopic, RegExp][] = [
    ['lifting', /\blift (?:the|a) (?:pot|tree)|\bdolly\b|heavier than/i],
    ['heaters', /\bheater|warm the place|garage/i],
    ['electric-heat', /warm the place/i],
    ['mold', /\bmold\b|\bdamp(?:en)? store/i],
    ['pesticides', /\bbait\b|\bhormone\b|\bspray\b/i],
    ['digging', /\bdig\b/i],
    ['blades', /\bsecateurs\b|\bcut (?:it|them|just|off|above|small)\b|\bprune (?:for|while)\b/i],
    ['mix', /\bpotting mix\b/i],
    ['wraps', /\bfilm\b|\bplastic\b|\bthe wrap\b/i],
    ['movement', /\bcome[s]? from (?:us|the yard)|\barrives?\b.*\bparcel\b|propagat/i],
  ];

  it.each(guides)('$id carries a caution for everything it tells people to do', guide => {
    const topics = new Set(cautionsFor(guide.kind, yardSpecies).map(({ topic }) => topic));
    const due = calls.filter(([, pattern]) => pattern.test(guide.body)).map(([topic]) => topic);
    expect(due.filter(topic => !topics.has(topic))).toEqual([]);
  });

  it('finds cautions due at all, so that the check above can fail', () => {
    const due = guides.flatMap(guide =>
      calls.filter(([, pattern]) => pattern.test(guide.body)).map(([topic]) => topic),
    );
    expect(new Set(due).size).toBeGreaterThanOrEqual(8);
  });

  it('prints every hazard of every species in every guide, and for every place', () => {
    for (const guide of guides) {
      for (const reader of [nobody, readerAt('honolulu-hi', guide), readerAt('minneapolis-mn', guide)]) {
        const text = textOf(renderGuide(guide, reader).html);
        for (const species of yardSpecies) {
          for (const { caution } of species.hazards) expect(text).toContain(caution.replace(/\s+/g, ' '));
        }
      }
    }
  });

  it('prints only the hazards of the species asked about', () => {
    const pruning = guides.find(({ kind }) => kind === 'pruning')!;
    const text = textOf(renderGuide(pruning, { ...nobody, species: realSpecies('jujube') }).html);
    expect(text).toMatch(/thorns/);
    expect(text).not.toMatch(/milky sap/);
  });

  it('dates move with the place', () => {
    const waking = guides.find(({ kind }) => kind === 'waking')!;
    const safe = (placeId: string) =>
      /for good after (\w+ \d+)/.exec(textOf(renderGuide(waking, readerAt(placeId, waking)).html))?.[1];
    // Published 1991-2020 last 32 F dates put the 10 % date in the second half of May at International Falls or later, and in April at Lincoln.
    expect(safe('minneapolis-mn')).toMatch(/^May /);
    expect(safe('mobile-al')).toMatch(/^March /);
    expect(safe('honolulu-hi')).toBeUndefined();
  });
});

describe('cautions by rule', () => {
  const fig = realSpecies('fig');
  it('name sun and sap, pets, and the law wherever a fig is handled, with a source', () => {
    for (const kind of guideKinds) {
      const cautions = cautionsFor(kind, [fig]);
      const words = cautions.map(({ text }) => text).join(' ');
      // Derraik and Rademaker 2007; Son et al. 2017: sap and ultraviolet light together blister skin.
      expect(words, kind).toMatch(/sap .*sunlight/);
      expect(words, kind).toMatch(/dogs, cats and horses/);
      for (const { source, text, title } of cautions) {
        expect(source).not.toBe('');
        expect(title).not.toBe('');
        expect(text).toMatch(/\.$/);
      }
      expect(new Set(cautions.map(({ id }) => id)).size).toBe(cautions.length);
    }
    for (const kind of ['arrival', 'establishing', 'propagation'] as const) {
      expect(
        cautionsFor(kind, [fig]).some(({ topic }) => topic === 'movement'),
        kind,
      ).toBe(true);
    }
  });

  it('hold the lifting limit of NIOSH', () => {
    // Load constant 51 lb (23 kg): Waters, Putz-Anderson, Garg, Applications Manual for the Revised NIOSH Lifting Equation, DHHS 94-110.
    expect(cautionsFor('growing-on', [fig]).find(({ topic }) => topic === 'lifting')?.text).toContain(
      '51 lb (23 kg)',
    );
  });

  it('warn of carbon monoxide and of electricity wherever a store or a cover may be warmed', () => {
    for (const kind of ['overwintering-pot', 'overwintering-ground', 'waking'] as const) {
      const words = cautionsFor(kind, [fig])
        .map(({ text }) => text)
        .join(' ');
      expect(words).toMatch(/Carbon monoxide/);
      expect(words).toMatch(/GFCI or RCD/);
    }
  });
});
