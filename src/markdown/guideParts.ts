/** From the body of a guide and what is known of its reader to HTML. The same input always gives the same bytes. */

import type { Heading, PhrasingContent, RootContent } from 'mdast';
import type { ContainerDirective, LeafDirective, TextDirective } from 'mdast-util-directive';
import { recordAddress } from '../core/addresses/paths.ts';
import type { CareTask } from '../core/care/calendar.ts';
import type { CareYear } from '../core/care/careYear.ts';
import type { Caution } from '../core/care/cautions.ts';
import { conditionOf, isOpenToAll, type ReaderFacts, sightOf } from '../core/care/guideConditions.ts';
import { hasFreezeAt } from '../core/care/guideDates.ts';
import { calendarFacts } from '../core/care/guideFacts.ts';
import { type GuidePart, knownOfReaders, partOpenedBy } from '../core/care/guideHeadings.ts';
import {
  measureText,
  parseMeasure,
  readersUnitFirst,
  temperatureText,
  type UnitChoice,
} from '../core/care/guideMeasures.ts';
import { attributeOf, plainText, treeOf } from '../core/care/guideTree.ts';
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
import { publishedAddress } from '../core/markdown/links.ts';
import { nodesOf } from '../core/markdown/tree.ts';
import type { Figure, Form } from '../core/records/common.ts';
import type { Guide } from '../core/records/guide.ts';
import type { Species } from '../core/records/species.ts';
import { type BlockTemplate, blockTemplate, filled, type Publish, withWords } from './guideBlocks.ts';
import { type CautionBox, cautionBoxOf } from './guideCautions.ts';
import { anchor, blocksHtml, box, finished, type GuideContent, line } from './guideHtml.ts';
import { askedDate, audienceWords, dateWords, rangeWords } from './guideWords.ts';
import type { FinishedBlock } from './safeHtml.ts';

/** What is known of a reader; null where it is not, and the guide then speaks to all. */
export interface GuideReader {
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
  /** Turns a path of this site into a link under its base path. */
  link: (path: string) => string;
  /** Names that parts had before, by their name of today, so that links of then still lead there. */
  oldNames: ReadonlyMap<string, readonly string[]>;
}

export interface GuideHeading extends GuidePart {
  /** 2 or 3. */
  depth: number;
}

export interface RenderedGuide {
  html: string;
  headings: GuideHeading[];
  /** The cautions that were put in, for pages that show them once more. */
  cautions: Caution[];
}

const sentence = (words: string) => words.charAt(0).toUpperCase() + words.slice(1);

/** Blocks that are the same for every reader but for some words, kept as long as the guide is, for one way to make links. */
interface KeptBlocks {
  readonly link: GuideReader['link'];
  readonly publish: Publish;
  readonly templates: Map<RootContent, BlockTemplate | null>;
}

const keptBlocks = new WeakMap<Guide, KeptBlocks>();

function blocksOf(guide: Guide, link: GuideReader['link']): KeptBlocks {
  let kept = keptBlocks.get(guide);
  if (kept?.link !== link) {
    const page = recordAddress('guide', guide.id);
    kept = { link, publish: address => publishedAddress(address, page, link), templates: new Map() };
    keptBlocks.set(guide, kept);
  }
  return kept;
}

class GuideWriter {
  readonly headings: GuideHeading[] = [];
  readonly #box: CautionBox;
  readonly #guide: Guide;
  readonly #reader: GuideReader;
  readonly #facts: ReaderFacts;
  readonly #species: readonly Species[];
  readonly #kept: KeptBlocks;
  /** Words of the headings among what was written. */
  readonly #headingWords = new Map<GuideContent, string>();
  #cautionsPlaced = false;

  constructor(guide: Guide, reader: GuideReader) {
    this.#guide = guide;
    this.#reader = reader;
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
    this.#kept = blocksOf(guide, reader.link);
  }

  get cautions(): Caution[] {
    return this.#box.cautions;
  }

  /** The body with every directive turned into what this reader is told; the cautions come first where the body does not place them. */
  write(): GuideContent[] {
    const body = this.#flow(treeOf(this.#guide).children);
    if (!this.#cautionsPlaced) {
      const firstHeading = body.findIndex(node => this.#headingWords.has(node));
      body.splice(firstHeading < 0 ? body.length : firstHeading, 0, this.#box.block);
    }
    return body;
  }

  /** Blocks that stand in the body or in a part of it, from their templates where they have one. */
  #flow(nodes: readonly RootContent[]): GuideContent[] {
    return nodes.flatMap(node => {
      if (node.type === 'heading') return [this.#heading(node)];
      const written = this.#fromTemplate(node);
      return written === null ? this.#block(node) : [finished(written)];
    });
  }

  /** Null where a block has no template. */
  #fromTemplate(node: RootContent): string | null {
    const { templates, publish } = this.#kept;
    let template = templates.get(node);
    if (template === undefined) {
      template = blockTemplate(node, publish);
      templates.set(node, template);
    }
    return template && filled(template, directive => this.#inline(directive));
  }

  #blocks(nodes: readonly RootContent[]): GuideContent[] {
    return nodes.flatMap(node => this.#block(node));
  }

  #block(node: RootContent): GuideContent[] {
    switch (node.type) {
      case 'containerDirective':
        return node.name === 'part' ? this.#part(node) : [this.#warning(node)];
      case 'leafDirective':
        return node.name === 'cautions' ? this.#placeCautions() : [this.#task(node)];
      case 'heading':
        return [this.#heading(node)];
      default:
        return withWords(
          node,
          nodes => this.#blocks(nodes) as RootContent[],
          directive => this.#inline(directive),
          this.#kept.publish,
        );
    }
  }

  #heading(node: Heading): GuideContent {
    const part = partOpenedBy(node, this.headings);
    const depth = Math.min(3, Math.max(2, node.depth)) as 2 | 3;
    this.headings.push({ ...part, depth });
    const old = this.#reader.oldNames.get(part.id) ?? [];
    const heading = this.#finishedHeading(node, depth, part.id, old) ?? {
      ...node,
      depth,
      children: [...old.map(anchor), ...(this.#blocks(node.children) as PhrasingContent[])],
      data: { ...node.data, hProperties: { id: part.id } },
    };
    this.#headingWords.set(heading, part.text);
    return heading;
  }

  #finishedHeading(node: Heading, depth: number, id: string, old: readonly string[]): FinishedBlock | null {
    const written = this.#fromTemplate(node);
    if (written === null) return null;
    const inner = written.slice('<h2>'.length, -'</h2>'.length);
    const anchors = old.map(name => `<span id="${name}"></span>`).join('');
    return finished(`<h${depth} id="${id}">${anchors}${inner}</h${depth}>`);
  }

  #part(node: ContainerDirective): GuideContent[] {
    const sight = sightOf(conditionOf(node.attributes ?? {}), this.#facts);
    if (sight.hidden) return this.#definitions(node);
    const children = this.#flow(node.children);
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

  /** Where links and footnotes lead is known in the whole text, also outside the part that this reader does not see. */
  #definitions(node: ContainerDirective): GuideContent[] {
    const definitions = [...nodesOf(node)].flatMap(({ node: each }) =>
      each.type === 'definition' || each.type === 'footnoteDefinition' ? [each] : [],
    );
    return this.#blocks(definitions);
  }

  #nameOf(speciesId: string): string {
    return this.#reader.yardSpecies.find(({ id }) => id === speciesId)?.common[0] ?? speciesId;
  }

  #warning(node: ContainerDirective): GuideContent {
    return box('aside', 'guide-caution', this.#flow(node.children), 'Caution');
  }

  #placeCautions(): GuideContent[] {
    if (this.#cautionsPlaced) return [];
    this.#cautionsPlaced = true;
    return [this.#box.block];
  }

  #task(node: LeafDirective): GuideContent {
    const name = attributeOf(node, 'name') as TaskName;
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

  #inline(node: TextDirective): string {
    const { units, year, species } = this.#reader;
    const label = plainText(node);
    if ((dateDirectives as readonly string[]).includes(node.name)) {
      const asked = askedDate(node.name as DateDirective, node.attributes ?? {}, label);
      const named =
        year !== null && species === null ? (year.species.common[0] ?? year.species.botanical) : null;
      return dateWords(asked, year, units, this.#species.length > 1 ? named : null);
    }
    if (node.name === 'measure') {
      const measure = parseMeasure(label);
      return measure === null ? label : measureText(measure, units);
    }
    return this.#figure(attributeOf(node, 'of') as SpeciesFigureName, label);
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

/** A guide as a reader sees it. The body must have passed `checkGuideMarkdown`; raw HTML never comes through. */
export function renderGuide(guide: Guide, reader: GuideReader): RenderedGuide {
  const writer = new GuideWriter(guide, reader);
  const blocks = writer.write();
  return {
    html: blocksHtml(blocks),
    headings: writer.headings,
    cautions: writer.cautions,
  };
}
