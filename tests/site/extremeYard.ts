/** A small yard with names and gaps that strain a layout, from the demonstration yard's settings, one species and three places. */

import { cpSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { stringify } from 'yaml';

/** The most a name may have is 80 characters. */
export const names = {
  'long-in-words': 'Grandmother Featherstonehaugh’s Second Early Honey Fig of the Lower Garden Wall'.padEnd(
    80,
    '!',
  ),
  'long-in-one-word': 'Donaudampfschifffahrtselektrizitätenhauptbetriebswerkbauunterbeamtenfeigenbaum'.padEnd(
    80,
    'e',
  ),
  'right-to-left': 'תאנת הסבתא מהגן העליון',
  'arabic-and-figures': 'تين الجدة 25 (أسود)',
  accented: 'Mündungsfeige Żółć à l’Œil Ångström Đặng',
  'nothing-known': 'Q',
} as const;

/** What no cultivar can be without; no photograph, no origin, no trial, no note. */
const bare = {
  species: 'fig',
  flavor: 'red-jam',
  ripening: 'mid',
  crops: ['main'],
  pollination: 'unaided',
  fruit: {
    skin: 'violet',
    flesh: 'red',
    shape: 'round',
    length_mm: 45,
    width_mm: 42,
    eye: 'closed',
    splits: 'low',
    rain: 'fair',
  },
  vigour: 'medium',
  suits: { winter: ['cool', 'mild'], season: ['middle', 'long'], air: ['fair'] },
  offered: 'some',
  mothers: 1,
};

/** Writes the content folder. One lot of each cultivar but the last; `left` plants of each, so 0 leaves nothing on the list. */
export function writeExtremeYard(folder: string, demo: string, left: number): void {
  for (const part of ['yard.yaml', 'species', 'temperatures.csv']) {
    cpSync(join(demo, part), join(folder, part), { recursive: true });
  }
  for (const part of ['places', 'cultivars', 'lots', 'walks', 'guides'])
    mkdirSync(join(folder, part), { recursive: true });
  for (const place of ['asheville-nc', 'international-falls-mn', 'melbourne-au']) {
    cpSync(join(demo, 'places', `${place}.yaml`), join(folder, 'places', `${place}.yaml`));
  }
  for (const [id, name] of Object.entries(names)) {
    writeFileSync(
      join(folder, 'cultivars', `${id}.md`),
      `---\n${stringify({ name, ...bare })}---\n\nA tree.\n`,
    );
  }
  const lots = Object.keys(names)
    .slice(0, -1)
    .map((cultivar, index) => ({
      lot: `x-${index + 1}`,
      cultivar,
      method: 'air-layer',
      started: '2026-05-20',
      severed: '2026-07-01',
      pottings: [{ date: '2026-07-01', container: '#1' }],
      raised: 4,
      forms: ['leafed-pot', 'dormant-pot', 'bare-root'],
    }));
  writeFileSync(join(folder, 'lots', 'all.yaml'), stringify(lots));
  const seen = lots.map(({ lot }) => `${lot},${left},75,12,full,bare,brown,sound`);
  writeFileSync(
    join(folder, 'walks', '2026-11-21.csv'),
    `lot,left,height_cm,caliper_mm,roots,leaves,wood,health\n${seen.join('\n')}\n`,
  );
}
