/** A new cultivar: its file with every key that is needed, and the key of what is not known yet left to the grower. */

import { type YamlValue, yamlFile } from '../editing/yamlWords.ts';
import { slug } from '../reading/layout.ts';
import { quote } from '../reading/problem.ts';
import type { Crop, RipeningClass } from '../records/common.ts';
import type { Availability, PollinationHabit, WrittenCultivar } from '../records/cultivar.ts';
import { type Planned, unknown, type YardToAddTo } from './openYard.ts';

export interface CultivarRequest {
  id?: string | undefined;
  name: string;
  species: string;
  flavor: string;
  ripening: RipeningClass;
  crops: readonly Crop[];
  pollination: PollinationHabit;
  fruit: WrittenCultivar['fruit'];
  vigour: WrittenCultivar['vigour'];
  suits: WrittenCultivar['suits'];
  offered: Availability;
  mothers: number;
  origin?: string | undefined;
  /** Text of its page; left out: one sentence to be replaced. */
  text?: string | undefined;
}

const definedOnly = (table: object): Record<string, YamlValue> =>
  Object.fromEntries(Object.entries(table).filter(([, value]) => value !== undefined)) as Record<
    string,
    YamlValue
  >;

/** Writes the file of a cultivar. */
export function planCultivar(yard: YardToAddTo, request: CultivarRequest): Planned {
  const { species, flavor, name } = request;
  const { yard: settings, species: known, cultivars } = yard.records;
  if (!known.has(species)) return unknown('species', species, known.keys());
  const flavors = settings.flavorClasses.map(({ id }) => id);
  if (!flavors.includes(flavor)) return unknown('flavor class', flavor, flavors);
  const id = request.id ?? slug(name);
  if (id === '') return { refused: `no id can be made from the name ${quote(name)}; give one with --id.` };
  if (cultivars.has(id)) return { refused: `there is a cultivar ${quote(id)} already.` };
  const { id: _, text, ...keys } = request;
  const { suits, fruit, ...single } = keys;
  const matter = definedOnly({ ...single, fruit: definedOnly(fruit), suits: definedOnly(suits) });
  const order = [
    'name',
    'species',
    'origin',
    'flavor',
    'ripening',
    'crops',
    'pollination',
    'fruit',
    'vigour',
    'suits',
  ];
  const ordered = Object.fromEntries(
    [...order, 'offered', 'mothers'].flatMap(key =>
      matter[key] === undefined ? [] : [[key, matter[key]] as const],
    ),
  );
  const body =
    text?.trim() || `${name} is new here; what we have seen of it will be written down as it fruits.`;
  return {
    changes: [{ path: `cultivars/${id}.md`, text: `---\n${yamlFile(ordered)}---\n\n${body}\n` }],
    said: `Cultivar ${id}: ${name}.`,
  };
}
