/**
 * The text a grower pastes below a video. It holds what stays true: titles, times, short addresses and cautions, never stock or prices, which
 * are on the pages the addresses lead to.
 */

import { cautionsFor, topicsOfGuide } from '../care/cautions.ts';
import { guideParts } from '../care/guideHeadings.ts';
import type { Guide } from '../records/guide.ts';
import type { Species } from '../records/species.ts';
import type { Chapter, ChapterLink, Video } from '../records/video.ts';
import { chapterTime } from './chapters.ts';

interface NamedTree {
  name: string;
  species: Species;
}

/** What a video speaks of. Each answers null for what is not there. */
export interface Subjects {
  /** The finished address a link or the video itself is read under, as short as there is one. */
  addressOf: (link: ChapterLink | 'video') => string;
  cultivar: (id: string) => NamedTree | null;
  /** The cultivar of a lot. */
  lot: (id: string) => NamedTree | null;
  guide: (id: string) => Guide | null;
  place: (id: string) => { name: string } | null;
  /** Every species of the yard. */
  species: readonly Species[];
}

export interface Description {
  text: string;
  /** Characters of the text (Unicode code points). */
  length: number;
  /** The chapter that takes most of it, with the things it is the first to name, and how many characters those are. */
  longest: { chapter: Chapter; length: number };
}

const oneLine = (words: string) => words.replace(/\s+/g, ' ').trim();
const lengthOf = (words: string) => [...words].length;

function commonName({ common, botanical }: Species): string {
  return common[0] ?? botanical;
}

function guideName(guide: Guide, part: string | null): string {
  const heading = part === null ? undefined : guideParts(guide).find(({ id }) => id === part);
  return heading === undefined ? guide.title : `${guide.title}, ${heading.text}`;
}

/** What a link leads to, in words; null when it is not there on the day. */
function linkName({ kind, id, part }: ChapterLink, subjects: Omit<Subjects, 'addressOf'>): string | null {
  if (kind === 'place') {
    const place = subjects.place(id);
    return place && `Climate of ${place.name}`;
  }
  if (kind === 'guide') {
    const guide = subjects.guide(id);
    return guide && `Guide: ${guideName(guide, part)}`;
  }
  const tree = subjects[kind](id);
  if (tree === null) return null;
  const name = `${tree.name} (${commonName(tree.species)})`;
  return kind === 'lot' ? `${name}, lot ${id}` : name;
}

/** Lines of the things a chapter is the first to name. */
function newLines({ links }: Chapter, subjects: Subjects, said: Set<string>): string[] {
  return links.flatMap(link => {
    const name = linkName(link, subjects);
    if (name === null) return [];
    const line = `${oneLine(name)}: ${subjects.addressOf(link)}`;
    if (said.has(line)) return [];
    said.add(line);
    return [line];
  });
}

/** Species of the trees a video shows; those of its guides when it shows none. */
function speciesSpokenOf(links: readonly ChapterLink[], subjects: Subjects): Species[] {
  const shown = new Set<Species>();
  for (const { kind, id } of links) {
    const tree = kind === 'cultivar' || kind === 'lot' ? subjects[kind](id) : null;
    if (tree) shown.add(tree.species);
  }
  if (shown.size > 0) return subjects.species.filter(one => shown.has(one));
  const guides = links.flatMap(({ kind, id }) => (kind === 'guide' ? (subjects.guide(id) ?? []) : []));
  return subjects.species.filter(({ id }) =>
    guides.some(({ species }) => species.length === 0 || species.includes(id)),
  );
}

/** What can hurt somebody: the plants by their own words, the work of the guides by its name. */
function cautionLines(links: readonly ChapterLink[], subjects: Subjects): string[] {
  const plants = speciesSpokenOf(links, subjects).flatMap(species =>
    species.hazards.map(({ to, caution }) => {
      const whom = to === 'people' ? '' : to === 'pets' ? ', pets' : ', people and pets';
      return `Take care (${commonName(species)}${whom}): ${oneLine(caution)}`;
    }),
  );
  const guides = new Set(
    links.flatMap(({ kind, id }) => (kind === 'guide' ? (subjects.guide(id) ?? []) : [])),
  );
  const work = new Set(
    [...guides].flatMap(({ kind }) => cautionsFor(kind, []).map(({ title }) => title.toLowerCase())),
  );
  if (work.size === 0) return plants;
  return [
    ...plants,
    ...movementLines([...guides], links, subjects),
    `Before you do it yourself: the guides list the usual cautions (${[...work].join('; ')}). Labels, local rules and people licensed for the work decide.`,
  ];
}

/** The law on moving plants, for each species shown, where a guide is about a tree that travels: it arrives, is planted or is propagated. */
function movementLines(
  guides: readonly Guide[],
  links: readonly ChapterLink[],
  subjects: Subjects,
): string[] {
  if (!guides.some(({ kind }) => topicsOfGuide[kind].includes('movement'))) return [];
  return speciesSpokenOf(links, subjects).map(
    species => `Moving ${commonName(species)} plants: ${oneLine(species.movement)}`,
  );
}

/** The description of a video. Deterministic; never cut. */
export function videoDescription(video: Video, subjects: Subjects): Description {
  const said = new Set<string>();
  const parts = video.chapters.map(chapter => ({
    chapter,
    line: `${chapterTime(chapter)} ${oneLine(chapter.title)}`,
    things: newLines(chapter, subjects, said),
  }));
  const sections = [
    [oneLine(video.title)],
    video.summary === null ? [] : [oneLine(video.summary)],
    [`All of it, as it stands today: ${subjects.addressOf('video')}`],
    parts.map(({ line }) => line),
    parts.flatMap(({ things }) => things),
    cautionLines(
      video.chapters.flatMap(({ links }) => links),
      subjects,
    ),
  ];
  const text = `${sections
    .filter(lines => lines.length > 0)
    .map(lines => lines.join('\n'))
    .join('\n\n')}\n`;
  const lengths = parts.map(({ chapter, line, things }) => ({
    chapter,
    length: lengthOf([line, ...things].join('\n')),
  }));
  const longest = lengths.reduce((most, one) => (one.length > most.length ? one : most));
  return { text, length: lengthOf(text), longest };
}

/** In what a description is too long, as a clause; null when it is not. */
export function overTheLimit({ length, longest }: Description, limit: number): string | null {
  if (length <= limit) return null;
  const over = length - limit;
  const letters = over === 1 ? '1 character' : `${over} characters`;
  return `the text below the video is ${letters} over the limit of ${limit}; its longest chapter, at ${chapterTime(longest.chapter)}, takes ${longest.length}`;
}
