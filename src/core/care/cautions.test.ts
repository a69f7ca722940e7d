import { describe, expect, it } from 'vitest';
import { realSpecies, speciesIds } from '../../../tests/care/realPlaces.ts';
import { guideKinds } from '../records/guide.ts';
import {
  type Caution,
  type CautionTopic,
  cautionsForTask,
  gravest,
  topicsOfGuide,
  topicsOfTask,
} from './cautions.ts';
import { type TaskName, taskNames } from './guideVocabulary.ts';
import { tasksOfGuide, taskTable } from './taskTable.ts';

/** What the tools and words of a task say of its dangers, whatever the table of topics says. */
const calls: readonly [CautionTopic, (title: string, tools: string) => boolean][] = [
  ['lifting', (_title, tools) => tools.includes('dolly')],
  ['blades', (title, tools) => tools.includes('saw') || /^Prune/.test(title)],
  ['digging', (_title, tools) => tools.includes('spade')],
  ['mix', (_title, tools) => tools.includes('potting mix')],
  ['mold', title => /^Look (?:at the stored|under)/.test(title)],
  ['heaters', title => /\bstore\b|^Store/.test(title)],
  ['electric-heat', title => /\bstore\b|^Store/.test(title)],
  ['wraps', (_title, tools) => /cloth|rain cover/.test(tools)],
];

describe('cautions of tasks', () => {
  it.each(taskNames)('%s has all that its tools and title call for', name => {
    const { title, tools } = taskTable[name];
    const due = calls.filter(([, isDue]) => isDue(title, tools.join(', '))).map(([topic]) => topic);
    const topics = cautionsForTask(name, realSpecies('fig')).map(({ topic }) => topic);
    expect(due.filter(topic => !topics.includes(topic))).toEqual([]);
  });

  it('put the hazards of the species wherever its wood or leaves are handled', () => {
    const handling: readonly TaskName[] = ['unpack', 'prune', 'protect', 'move-in', 'plant-out', 'pot-on'];
    for (const name of handling) {
      for (const id of speciesIds) {
        const species = realSpecies(id);
        const words = cautionsForTask(name, species).map(({ text }) => text);
        for (const hazard of species.hazards) {
          if (hazard.to !== 'pets') expect(words, `${name} ${id}`).toContain(hazard.caution);
        }
      }
    }
  });

  it('stand in the guide the task belongs to', () => {
    const missing = guideKinds.flatMap(kind =>
      tasksOfGuide[kind].flatMap(name =>
        (topicsOfTask[name] ?? [])
          .filter(topic => !topicsOfGuide[kind].includes(topic))
          .map(topic => `${kind}: ${topic} for ${name}`),
      ),
    );
    expect(missing).toEqual([]);
  });

  it('come from rules that cover every task once in some guide, those of the first days apart', () => {
    const listed = new Set(Object.values(tasksOfGuide).flat());
    expect(taskNames.filter(name => !listed.has(name))).toEqual([]);
  });

  it('of a plant are titled by whom it hurts, numbered within their topic, and pets apart from hands', () => {
    const hazard = (to: 'people' | 'pets' | 'people-and-pets', caution: string) => ({
      to,
      caution,
      standing: 'published' as const,
      source: 'a test',
    });
    const species = {
      ...realSpecies('fig'),
      hazards: [hazard('people', 'Sap.'), hazard('pets', 'Leaves.'), hazard('people-and-pets', 'Bark.')],
    };
    const told = cautionsForTask('prune', species)
      .filter(({ topic }) => topic === 'plant' || topic === 'pets')
      .map(({ id, title, text, source }) => [id, title, text, source]);
    expect(told).toEqual([
      ['plant-fig-1', 'Handling fig', 'Sap.', 'a test'],
      ['plant-fig-2', 'People, pets and fig', 'Bark.', 'a test'],
      ['pets-fig-1', 'Pets and fig', 'Leaves.', 'a test'],
    ]);
  });

  it('are told by the gravest: what can kill, then what the plant does to hands', () => {
    const caution = (topic: string, title: string, text: string) => ({ topic, title, text }) as Caution;
    const heaters = caution('heaters', 'Heaters', 'Never burn gas indoors.');
    const plant = caution('plant', 'Handling fig', 'The milky sap irritates. Wear gloves.');
    const ladders = caution('ladders', 'Ladders', 'Work from the ground. Do not climb.');
    expect(gravest([ladders, plant, heaters])).toBe(
      'Fumes from heaters and engines can kill. Handling fig: the milky sap irritates.',
    );
    expect(gravest([ladders, plant])).toBe('Handling fig: the milky sap irritates.');
    expect(gravest([heaters, ladders])).toBe(
      'Fumes from heaters and engines can kill. Ladders: work from the ground.',
    );
    expect(gravest([heaters])).toBe('Fumes from heaters and engines can kill.');
    expect(gravest([])).toBe('');
  });
});
