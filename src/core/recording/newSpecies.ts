/**
 * A new species that starts from the figures of a related one. Every figure is marked as copied, so that no page passes it off as known of
 * this species; cautions and movement rules are never copied without a word, since somebody's skin or the law may hang on them.
 */

import { parse } from 'yaml';
import { editYaml, type YamlChange } from '../editing/editYaml.ts';
import { type YamlValue, yamlFile } from '../editing/yamlWords.ts';
import { slug } from '../reading/layout.ts';
import { quote } from '../reading/problem.ts';
import type { WrittenSpecies } from '../records/species.ts';
import { type FileChange, type OpenYard, type Planned, unknown } from './openYard.ts';

export interface SpeciesRequest {
  id?: string | undefined;
  botanical: string;
  common: readonly string[];
  /** Id of the species whose figures it starts from. */
  like: string;
  /** The cautions that hold for it, each looked at by the grower. */
  hazards: WrittenSpecies['hazards'];
  /** What is known of moving it across borders. */
  movement: string;
  /** Base price in the yard's currency, major units; needed before a lot of it can be priced. */
  basePrice?: number | undefined;
}

/** Everything that is about fruit of that species and not a figure: it has to be written anew. */
const notCopied = ['rain_at_ripening', 'pollination', 'troubles'] as const;

/** As long as a source may be. */
const mostSource = 400;

function isFigure(value: unknown): value is { value: unknown; standing: string; source: string } {
  return (
    typeof value === 'object' &&
    value !== null &&
    'standing' in value &&
    'source' in value &&
    'value' in value
  );
}

/** A value with every figure in it marked as copied. Notes are about the other species and stay behind. */
function copied(value: unknown, from: string): YamlValue {
  if (isFigure(value)) {
    const { note: _, ...figure } = value as unknown as Record<string, YamlValue>;
    const source = `Copied from ${from}, not checked for this species. There: ${String(figure.source)}`;
    return { ...figure, standing: 'ours', source: source.slice(0, mostSource) };
  }
  if (Array.isArray(value)) return value.map(each => copied(each, from));
  if (typeof value !== 'object' || value === null) return value as YamlValue;
  return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, copied(each, from)]));
}

/** How many figures a text holds that were only copied. */
function copiedFigures(text: string): number {
  return text.match(/source: "?Copied from /g)?.length ?? 0;
}

/** Cautions and movement rules of a species, for the questions about each. */
export function cautionsOf(
  { texts }: OpenYard,
  id: string,
): Pick<WrittenSpecies, 'hazards' | 'movement'> | null {
  const text = texts.get(`species/${id}.yaml`);
  return text === undefined ? null : (parse(text, { schema: 'core' }) as WrittenSpecies);
}

/** Writes the file of a species, and its base price into yard.yaml. */
export function planSpecies(yard: OpenYard, request: SpeciesRequest): Planned {
  const { botanical, common, like, hazards, movement, basePrice } = request;
  const { species } = yard.records;
  const related = species.get(like);
  const text = yard.texts.get(`species/${like}.yaml`);
  if (!related || text === undefined) return unknown('species', like, species.keys());
  const id = request.id ?? slug(common[0] ?? botanical);
  if (species.has(id)) return { refused: `there is a species ${quote(id)} already.` };
  if (!movement.trim())
    return { refused: 'say what is known of moving it across borders, or that nobody has asked yet.' };
  const written = parse(text, { schema: 'core' }) as WrittenSpecies;
  const { botanical: _b, common: _c, hazards: _h, movement: _m, ...figures } = written;
  for (const key of notCopied) delete figures[key];
  const name = related.common[0] ?? related.botanical;
  const table = copied(figures, name) as { [key: string]: YamlValue };
  const file = yamlFile({
    botanical,
    common: [...common],
    ...table,
    hazards: hazards.map(each => ({ ...each })),
    movement,
  });
  const top = `# yaml-language-server: $schema=../../src/schemas/species.schema.json\n# Begun from the figures of ${name}. Each that is known of this species takes the place of the copied one.\n\n`;
  const changes: FileChange[] = [{ path: `species/${id}.yaml`, text: top + file }];
  if (basePrice !== undefined) {
    const priced: YamlChange = { kind: 'set', path: ['prices', 'base', id], value: basePrice };
    const edited = editYaml(yard.texts.get('yard.yaml') ?? '', [priced]);
    if ('refused' in edited) return { refused: `content/yard.yaml was left alone: ${edited.refused}.` };
    changes.push({ path: 'yard.yaml', text: edited.text });
  }
  return {
    changes,
    said: `Species ${id}: ${botanical}, with ${copiedFigures(file)} figures copied from ${name} and marked so.`,
  };
}
