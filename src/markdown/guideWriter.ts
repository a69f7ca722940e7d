/** Writes the text of a guide for a reader. The same text and reader always give the same bytes, at the build and in a browser. */

import type { RootContent } from 'mdast';
import type { CareTask } from '../core/care/calendar.ts';
import type { CareYear } from '../core/care/careYear.ts';
import type { Caution } from '../core/care/cautions.ts';
import {
  conditionOf,
  isOpenToAll,
  knownOfReaders,
  type ReaderFacts,
  sightOf,
} from '../core/care/guideConditions.ts';
import { hasFreezeAt } from '../core/care/guideDates.ts';
import { calendarFacts } from '../core/care/guideFacts.ts';
import {
  measureText,
  parseMeasure,
  readersUnitFirst,
  temperatureText,
  type UnitChoice,
} from '../core/care/guideMeasures.ts';
import {
  type DateDirective,
  dateDirectives,
  type Keeping,
  type SpeciesFigureName,
  type Stage,
  speciesFigures,
  type TaskName,
} from '../core/care/guideVocabulary.ts';
import { tasksOfGuide, taskTable } from '../core/care/taskTable.ts';
import { type NamedPart, partNamed } from '../core/markdown/partNames.ts';
import type { Figure, Form } from '../core/records/common.ts';
import type { Guide } from '../core/records/guide.ts';
import type { Species } from '../core/records/species.ts';
import { type CautionBox, cautionBoxOf } from './guideCautions.ts';
import { box, finished, finishedHtml, type GuideContent, line } from './guideHtml.ts';
import { type AskedWords, filled, type GuideNode, type GuideText } from './guideText.ts';
import { askedDate, audienceWords, dateWords, rangeWords } from './guideWords.ts';

/** What is known of a reader; null where it is not, and the guide then speaks to all. */
export interface KnownReader {
  units: UnitChoice;
  /** The year of a place, for one species; null for the general guide. */
  year: CareYear | null;
  species: Species | null;
  form: Form | null;
  stage: Stage | null;
  kept: Keeping | null;
  /** Tasks of a whole season, from which `::task` takes its days of the year. */
  tasks: readonly CareTask[];
  /** Every species of the yard: names, figures and cautions for a reader without one. */
  yardSpecies: readonly Species[];
  /** Names that parts had before, by their name of today, so that links of then still lead there. */
  oldNames: ReadonlyMap<string, readonly string[]>;
}

export interface GuideHeading extends NamedPart {
  /** 2 or 3. */
  depth: number;
}

export interface RenderedGuide {
  html: string;
  headings: GuideHeading[];
  /** The cautions that were put in, for pages that show them once more. */
  cautions: Caution[];
}

/** What a guide is about, as far as its text asks. */
type WrittenGuide = Pick<Guide, 'kind' | 'species' | 'forms'>;

/** Writes the blocks that are trees, and puts a text together that has some. */
export interface TreeHand {
  block(node: RootContent, writer: Pick<GuideWriter, 'node' | 'words'>): GuideContent[];
  heading(
    node: Extract<GuideNode, { kind: 'treeHeading' }>,
    id: string,
    old: readonly string[],
    writer: Pick<GuideWriter, 'node' | 'words'>,
  ): GuideContent;
  html(blocks: GuideContent[]): string;
}

const sentence = (words: string) => words.charAt(0).toUpperCase() + words.slice(1);

class GuideWriter {
  readonly headings: GuideHeading[] = [];
  readonly #box: CautionBox;
  readonly #guide: WrittenGuide;
  readonly #reader: KnownReader;
  readonly #facts: ReaderFacts;
  readonly #species: readonly Species[];
  readonly #trees: TreeHand | null;
  /** Words of the headings among what was written. */
  readonly #headingWords = new Map<GuideContent, string>();
  #cautionsPlaced = false;

  constructor(guide: WrittenGuide, reader: KnownReader, trees: TreeHand | null) {
    this.#guide = guide;
    this.#reader = reader;
    this.#trees = trees;
    const { year, species, form, stage, kept } = reader;
    const known = knownOfReaders(guide);
    this.#facts = {
      placeClass: year?.placeClass ?? null,
      calendar: year === null ? null : calendarFacts(year),
      hasFreeze: year === null ? null : level => hasFreezeAt(year, level),
      species: species?.id ?? known.species,
      form: form ?? known.form,
      stage,
      kept,
    };
    const named = reader.yardSpecies.filter(
      ({ id }) => guide.species.length === 0 || guide.species.includes(id),
    );
    this.#species = species ? [species] : named;
    this.#box = cautionBoxOf(guide, this.#species);
  }

  get cautions(): Caution[] {
    return this.#box.cautions;
  }

  /** The text with every directive turned into what this reader is told; the cautions come first where the text does not place them. */
  write(text: GuideText): GuideContent[] {
    const body = this.#flow(text);
    if (!this.#cautionsPlaced) {
      const firstHeading = body.findIndex(node => this.#headingWords.has(node));
      body.splice(firstHeading < 0 ? body.length : firstHeading, 0, this.#box.block);
    }
    return body;
  }

  #flow(nodes: readonly GuideNode[]): GuideContent[] {
    return nodes.flatMap(node => this.node(node));
  }

  node(node: GuideNode): GuideContent[] {
    switch (node.kind) {
      case 'block':
        return [finished(filled(node, asked => this.words(asked)))];
      case 'part':
        return this.#part(node);
      case 'caution':
        return [box('aside', 'guide-caution', this.#flow(node.nodes), 'Caution')];
      case 'cautions':
        return this.#placeCautions();
      case 'task':
        return [this.#task(node.name as TaskName)];
      case 'tree':
        return this.#treeHand().block(node.node, this);
      default:
        return [this.#heading(node)];
    }
  }

  #treeHand(): TreeHand {
    if (this.#trees === null)
      throw new TypeError('the text of this guide cannot be written without its trees');
    return this.#trees;
  }

  #heading(node: Extract<GuideNode, { kind: 'heading' | 'treeHeading' }>): GuideContent {
    const { depth } = node;
    const part = partNamed(node.text, this.headings);
    this.headings.push({ ...part, depth });
    const old = this.#reader.oldNames.get(part.id) ?? [];
    let heading: GuideContent;
    if (node.kind === 'treeHeading') heading = this.#treeHand().heading(node, part.id, old, this);
    else {
      const anchors = old.map(name => `<span id="${name}"></span>`).join('');
      const inner = filled(node.template, asked => this.words(asked));
      heading = finished(`<h${depth} id="${part.id}">${anchors}${inner}</h${depth}>`);
    }
    this.#headingWords.set(heading, part.text);
    return heading;
  }

  #part({ attributes, nodes, definitions }: Extract<GuideNode, { kind: 'part' }>): GuideContent[] {
    const sight = sightOf(conditionOf(attributes), this.#facts);
    if (sight.hidden) return this.#flow(definitions);
    const children = this.#flow(nodes);
    // Where all that is in it is for others, a line that says whom it is for would stand alone.
    const isShown = children.some(({ type }) => type !== 'definition' && type !== 'footnoteDefinition');
    if (isOpenToAll(sight.open) || !isShown) return children;
    const words = audienceWords(sight.open, this.#reader.units, id => this.#nameOf(id));
    const audience = line('guide-for', `${words}.`);
    const [first, ...rest] = children;
    const heading = first && this.#headingWords.get(first);
    if (first === undefined || heading === undefined)
      return [box('div', 'guide-part', [audience, ...children])];
    // A heading that names the reader says it already.
    const said = heading.toLowerCase() === words.replace(/^For /, '').toLowerCase();
    return [box('div', 'guide-part', said ? children : [first, audience, ...rest])];
  }

  #nameOf(speciesId: string): string {
    return this.#reader.yardSpecies.find(({ id }) => id === speciesId)?.common[0] ?? speciesId;
  }

  #placeCautions(): GuideContent[] {
    if (this.#cautionsPlaced) return [];
    this.#cautionsPlaced = true;
    return [this.#box.block];
  }

  #task(name: TaskName): GuideContent {
    const kind = taskTable[name];
    const found = this.#reader.tasks.find(task => task.name === name);
    const { units, year } = this.#reader;
    const when =
      found !== undefined
        ? `${sentence(rangeWords(found.range.from.slice(5), found.range.to.slice(5)))}. ${found.trigger}`
        : year === null
          ? readersUnitFirst(kind.rule, units)
          : tasksOfGuide[this.#guide.kind].includes(name)
            ? `For ${year.species.common[0] ?? year.species.botanical} in ${year.placeName} this does not come up.`
            : readersUnitFirst(kind.rule, units);
    return line('guide-task', `${kind.title}. `, when);
  }

  /** The words of a directive inside of a sentence. */
  words({ name, attributes, label }: AskedWords): string {
    const { units, year, species } = this.#reader;
    if ((dateDirectives as readonly string[]).includes(name)) {
      const asked = askedDate(name as DateDirective, attributes, label);
      const named =
        year !== null && species === null ? (year.species.common[0] ?? year.species.botanical) : null;
      return dateWords(asked, year, units, this.#species.length > 1 ? named : null);
    }
    if (name === 'measure') {
      const measure = parseMeasure(label);
      return measure === null ? label : measureText(measure, units);
    }
    return this.#figure(attributes.of as SpeciesFigureName, label);
  }

  /** A figure of the species the reader asked about; the author's words where there is no such species or figure. */
  #figure(name: SpeciesFigureName, otherwise: string): string {
    const only = this.#species.length === 1 ? this.#species[0]! : null;
    const figure: Figure | null = only?.[speciesFigures[name]] ?? null;
    if (figure === null) return otherwise;
    if (name === 'bare-root-keeps') return `${figure.low} to ${figure.high} days`;
    if (name === 'chill-hours') return `${figure.low} to ${figure.high} hours`;
    return temperatureText(figure.low, figure.high, this.#reader.units);
  }
}

/** A guide as a reader sees it. `trees` writes the blocks that are trees; null for a text without any. */
export function writeGuide(
  guide: WrittenGuide,
  text: GuideText,
  reader: KnownReader,
  trees: TreeHand | null,
): RenderedGuide {
  const writer = new GuideWriter(guide, reader, trees);
  const blocks = writer.write(text);
  const { headings, cautions } = writer;
  const html = finishedHtml(blocks) ?? trees?.html(blocks);
  if (html === undefined) throw new TypeError('the text of this guide cannot be written without its trees');
  return { html, headings, cautions };
}
