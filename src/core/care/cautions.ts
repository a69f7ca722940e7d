/**
 * Cautions that go into guides and tasks by rule, so that none can be left out: which work calls for which, and the words. Labels,
 * local rules and people licensed for the work decide; these lines are the usual warnings, not the whole of them.
 */

import type { Standing } from '../records/common.ts';
import type { GuideKind } from '../records/guide.ts';
import type { Species } from '../records/species.ts';
import type { TaskName } from './guideVocabulary.ts';

const cautionTopics = [
  'plant',
  'pets',
  'movement',
  'lifting',
  'blades',
  'heaters',
  'electric-heat',
  'ladders',
  'mold',
  'mix',
  'digging',
  'pesticides',
  'wraps',
] as const;
export type CautionTopic = (typeof cautionTopics)[number];

export interface Caution {
  topic: CautionTopic;
  /** Unique among the cautions of one guide. */
  id: string;
  title: string;
  text: string;
  standing: Standing;
  source: string;
}

type GeneralTopic = Exclude<CautionTopic, 'plant' | 'pets' | 'movement'>;

const practice = 'Common practice, no source.';

const general: Record<GeneralTopic, Omit<Caution, 'topic' | 'id'>> = {
  lifting: {
    title: 'Lifting',
    text: 'A wet pot weighs more than it looks: about 30 to 40 lb (14 to 18 kg) for a #5, 90 lb (40 kg) and more for a #15. Keep it close, lift with the legs, do not twist. Under the best conditions 51 lb (23 kg) is the most one person should lift. Use a dolly or a second pair of hands for anything larger than a #5.',
    standing: 'published',
    source:
      'Load limit: revised NIOSH lifting equation, DHHS (NIOSH) 94-110, 1994. Weights of pots: our working figures.',
  },
  blades: {
    title: 'Knives and saws',
    text: 'Cut away from yourself, with the other hand behind the blade. Wear gloves and eye protection. Close the tool before you put it down.',
    standing: 'practice',
    source: practice,
  },
  heaters: {
    title: 'Heaters and fumes',
    text: 'Never burn propane, gasoline, kerosene, wood or charcoal in a shed, garage or greenhouse to keep out frost, and never run a generator or any engine there, even with the door open. Carbon monoxide has no smell and kills within minutes. Fit an alarm. If it sounds or you feel dizzy, sick or weak, get out into fresh air and call the emergency number (911 in the US). Stand an electric heater on a firm floor, three feet (1 m) from anything that burns, and never leave it running near fuel, straw or wraps.',
    standing: 'practice',
    source: 'Common practice, as fire and consumer safety agencies advise. The maker’s instructions decide.',
  },
  'electric-heat': {
    title: 'Electric warmth',
    text: 'Heating cables, mats and lamps must be made for use outdoors and run from a protected socket (GFCI or RCD). Keep lamps off straw, leaves and cloth. Plug a heater straight into the wall, never into an extension cord. An electrician decides about anything fixed.',
    standing: 'practice',
    source: 'Common practice, as fire and consumer safety agencies advise. The maker’s instructions decide.',
  },
  ladders: {
    title: 'Ladders',
    text: 'Work from the ground with a pole where you can. A leaning ladder stands one out for every four up, on firm ground, with a person at its foot; keep three points of contact. Do not climb into the tree. Large or high wood is work for a qualified arborist.',
    standing: 'practice',
    source: practice,
  },
  mold: {
    title: 'Mold',
    text: 'Damp storage and wet wraps grow gray mold. Air the place, take dead leaves out, and wet moldy material before you clear it. Wear a fitted N95 respirator for that, and leave the job to someone else if you have lung disease, asthma or a weakened immune system.',
    standing: 'practice',
    source: practice,
  },
  mix: {
    title: 'Potting mix',
    text: 'Potting mix can carry Legionella bacteria. Open bags outdoors and away from your face, keep dust down, wear gloves and wash your hands.',
    standing: 'practice',
    source: 'Common practice, as health agencies advise on the bag.',
  },
  digging: {
    title: 'Before you dig',
    text: 'Find out where gas, power, water and phone lines run before you dig a planting hole. In the US call 811, which is free, a few business days ahead. Most other countries have a service like it.',
    standing: 'practice',
    source: practice,
  },
  pesticides: {
    title: 'Sprays, hormones and baits',
    text: 'The label is the law: use only what is permitted for that plant, place and purpose where you live, in the amount and with the protection it names. Rooting hormone counts as a pesticide in the United States. Observe the days-to-harvest interval on the label, and do not eat fruit from a newly bought tree in its first season if the tree may have been treated.',
    standing: 'practice',
    source:
      'Common practice. United States: Federal Insecticide, Fungicide and Rodenticide Act. The label decides.',
  },
  wraps: {
    title: 'Wraps and packing',
    text: 'Keep plastic sheets, ties and water-holding gel away from children and animals: they choke.',
    standing: 'practice',
    source: practice,
  },
};

/** Which work of a guide calls for which caution. Every guide handles the plant, so `plant` and `pets` go with all. */
export const topicsOfGuide: Record<GuideKind, readonly CautionTopic[]> = {
  arrival: [
    'plant',
    'pets',
    'movement',
    'wraps',
    'lifting',
    'heaters',
    'electric-heat',
    'blades',
    'digging',
    'mix',
    'pesticides',
  ],
  'overwintering-pot': ['plant', 'pets', 'lifting', 'heaters', 'electric-heat', 'mold', 'blades'],
  'overwintering-ground': [
    'plant',
    'pets',
    'heaters',
    'electric-heat',
    'ladders',
    'mold',
    'wraps',
    'digging',
    'pesticides',
  ],
  waking: [
    'plant',
    'pets',
    'lifting',
    'heaters',
    'electric-heat',
    'ladders',
    'blades',
    'mix',
    'mold',
    'wraps',
  ],
  establishing: [
    'plant',
    'pets',
    'movement',
    'lifting',
    'digging',
    'heaters',
    'electric-heat',
    'ladders',
    'blades',
    'wraps',
    'pesticides',
  ],
  'growing-on': ['plant', 'pets', 'lifting', 'mix', 'blades', 'pesticides'],
  propagation: ['plant', 'pets', 'movement', 'blades', 'ladders', 'mix', 'mold', 'wraps', 'pesticides'],
  pruning: ['plant', 'pets', 'blades', 'ladders', 'mold', 'pesticides'],
};

/** The same for single tasks; a task that is not named needs no more care than gardening does. */
export const topicsOfTask: Partial<Record<TaskName, readonly CautionTopic[]>> = {
  unpack: ['plant', 'wraps'],
  'stand-apart': ['pesticides'],
  'pot-up': ['mix', 'lifting'],
  'store-on-arrival': ['lifting', 'heaters', 'electric-heat'],
  'hold-late-leaves': ['plant', 'heaters', 'electric-heat'],
  'plant-dormant': ['digging', 'lifting'],
  'plant-out': ['digging', 'lifting', 'plant'],
  protect: ['plant', 'heaters', 'electric-heat', 'ladders', 'wraps'],
  'ready-for-store': ['lifting'],
  'move-in': ['lifting', 'heaters', 'electric-heat', 'plant'],
  'shelter-nights': ['lifting', 'heaters', 'electric-heat'],
  'inspect-stored': ['mold', 'heaters'],
  'inspect-protection': ['mold', 'pesticides'],
  prune: ['plant', 'blades', 'ladders', 'pets'],
  uncover: ['mold', 'wraps'],
  wake: ['lifting', 'heaters', 'electric-heat'],
  'pot-on': ['mix', 'lifting', 'plant'],
  'cover-new-leaves': ['wraps', 'electric-heat'],
  'move-out': ['lifting'],
};

function ofSpecies(species: Species, topic: 'plant' | 'pets' | 'movement'): Caution[] {
  const name = species.common[0] ?? species.botanical;
  if (topic === 'movement') {
    return [
      {
        topic,
        id: `movement-${species.id}`,
        title: `Moving ${name} plants`,
        text: species.movement,
        standing: 'practice',
        source: 'The plant health authority at both ends decides.',
      },
    ];
  }
  return species.hazards
    .filter(({ to }) => (topic === 'plant' ? to !== 'pets' : to === 'pets'))
    .map(({ to, caution, standing, source }, index) => ({
      topic,
      id: `${topic}-${species.id}-${index + 1}`,
      title:
        to === 'pets'
          ? `Pets and ${name}`
          : to === 'people'
            ? `Handling ${name}`
            : `People, pets and ${name}`,
      text: caution,
      standing,
      source,
    }));
}

function cautionsOf(topics: readonly CautionTopic[], species: readonly Species[]): Caution[] {
  return topics.flatMap(topic => {
    if (topic === 'plant' || topic === 'pets' || topic === 'movement') {
      return species.flatMap(one => ofSpecies(one, topic));
    }
    return [{ topic, id: topic, ...general[topic] }];
  });
}

/** Every caution due in a guide of a kind, for the species it speaks of: hazards of the plants first. */
export function cautionsFor(kind: GuideKind, species: readonly Species[]): Caution[] {
  return cautionsOf(topicsOfGuide[kind], species);
}

/** Every caution due for one task with one species. */
export function cautionsForTask(name: TaskName, species: Species): Caution[] {
  return cautionsOf(topicsOfTask[name] ?? [], [species]);
}

/**
 * The gravest of some cautions in a sentence or two, for the line that stands above them all: what can kill first, then what the
 * plant itself does to the hands that work on it.
 */
export function gravest(cautions: readonly Caution[]): string {
  const fumes = cautions.some(({ topic }) => topic === 'heaters')
    ? 'Fumes from heaters and engines can kill.'
    : '';
  const plant =
    cautions.find(({ topic }) => topic === 'plant') ?? cautions.find(({ topic }) => topic !== 'heaters');
  if (plant === undefined) return fumes;
  const [first = plant.text] = plant.text.split(/(?<=\.) /);
  return `${fumes} ${plant.title}: ${first.charAt(0).toLowerCase()}${first.slice(1)}`.trim();
}
