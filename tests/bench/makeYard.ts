/** Makes a seeded yard of any size for measuring, from the demonstration yard's settings, species and places. */

import { cpSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse, stringify } from 'yaml';
import { addDays, day } from '../../src/core/days.ts';
import { randomFromText } from '../../src/core/random.ts';

export interface YardSize {
  lots: number;
  cultivars: number;
}

const lotsPerFile = 250;
const walkDays = ['2025-12-05', '2026-03-20', '2026-06-10', '2026-08-15', '2026-10-20', '2026-11-18'];
const speciesIds = ['fig', 'mulberry'];

/** Writes a whole content folder. The same size and seed give the same bytes. */
export function makeYard(folder: string, demo: string, size: YardSize, seed: number): void {
  const random = randomFromText(`yard ${seed} ${size.lots} ${size.cultivars}`);
  const pick = <T>(from: readonly T[]): T => from[Math.floor(random.uniform() * from.length)]!;
  const between = (low: number, high: number) => low + Math.floor(random.uniform() * (high - low + 1));

  for (const part of ['yard.yaml', 'species', 'places']) {
    cpSync(join(demo, part), join(folder, part), { recursive: true });
  }
  for (const part of ['cultivars', 'lots', 'walks']) mkdirSync(join(folder, part), { recursive: true });

  const flavors = parse(readFileSync(join(demo, 'yard.yaml'), 'utf8')).flavor_classes as { id: string }[];
  const cultivarIds = Array.from({ length: size.cultivars }, (_, index) => `cultivar-${index + 1}`);
  for (const [index, id] of cultivarIds.entries()) {
    const traits = {
      name: `Measured Tree ${index + 1}`,
      species: speciesIds[index % speciesIds.length],
      flavor: pick(flavors).id,
      ripening: pick(['early', 'mid', 'late']),
      crops: ['main'],
      pollination: 'unaided',
      fruit: {
        skin: pick(['green', 'yellow', 'violet', 'brown']),
        flesh: pick(['cream', 'amber', 'red']),
        shape: pick(['round', 'pear', 'oval']),
        length_mm: between(25, 60),
        width_mm: between(25, 60),
        eye: 'closed',
        splits: 'low',
        rain: 'fair',
      },
      vigour: pick(['low', 'medium', 'high']),
      suits: { winter: ['cool', 'mild'], season: ['middle', 'long'], air: ['fair', 'humid'] },
      offered: pick(['a-few', 'some', 'common']),
      mothers: between(0, 6),
    };
    const prose =
      'A tree made to be measured, with a paragraph of about the usual length below its traits. '.repeat(5);
    writeFileSync(join(folder, 'cultivars', `${id}.md`), `---\n${stringify(traits)}---\n\n${prose}\n`);
  }

  const lots = Array.from({ length: size.lots }, (_, index) => {
    const started = addDays(day('2026-05-20'), between(0, 40));
    const severed = addDays(started, between(30, 45));
    return {
      lot: `m${String(index + 1).padStart(5, '0')}`,
      cultivar: pick(cultivarIds),
      method: 'air-layer',
      started,
      severed,
      pottings: [{ date: severed, container: pick(['#1', '#2', '#3']) }],
      raised: between(2, 30),
      forms: ['leafed-pot', 'dormant-pot', 'bare-root'],
    };
  });
  for (let from = 0; from < lots.length; from += lotsPerFile) {
    const name = `batch-${String(from / lotsPerFile + 1).padStart(3, '0')}.yaml`;
    writeFileSync(join(folder, 'lots', name), stringify(lots.slice(from, from + lotsPerFile)));
  }

  const left = new Map(lots.map(({ lot, raised }) => [lot, raised]));
  /** As first measured; a tree grows a little from walk to walk, as the check of measures expects. */
  const measured = new Map(
    lots.map(({ lot }) => [lot, { heightCm: between(40, 90), caliperMm: between(6, 15) }]),
  );
  for (const walkDay of walkDays) {
    const rows = lots
      .filter(({ severed }) => severed < walkDay && random.uniform() < 0.7)
      .map(({ lot }) => {
        const now = Math.max(0, left.get(lot)! - (random.uniform() < 0.3 ? 1 : 0));
        left.set(lot, now);
        const tree = measured.get(lot)!;
        tree.heightCm += between(0, 4);
        tree.caliperMm += between(0, 1);
        const [leaves, wood] = walkDay > '2026-11' ? ['bare', 'brown'] : ['full', 'green'];
        return [
          lot,
          now,
          tree.heightCm,
          tree.caliperMm,
          pick(['holding', 'full']),
          leaves,
          wood,
          'sound',
        ].join(',');
      });
    const header = 'lot,left,height_cm,caliper_mm,roots,leaves,wood,health';
    writeFileSync(join(folder, 'walks', `${walkDay}.csv`), `${[header, ...rows].join('\n')}\n`);
  }
}
