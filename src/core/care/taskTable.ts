/** What each task is called and what it takes. Trigger, dates and reasons are made for the plant and place. */

import type { GuideKind } from '../records/guide.ts';
import type { TaskName } from './guideVocabulary.ts';

export interface TaskKind {
  /** An instruction, without a full stop. */
  title: string;
  /** When to do it where no place is known. */
  rule: string;
  tools: readonly string[];
}

export const taskTable: Record<TaskName, TaskKind> = {
  unpack: {
    title: 'Unpack the tree',
    rule: 'The day it arrives.',
    tools: ['scissors', 'a bucket of water'],
  },
  'stand-apart': {
    title: 'Stand it apart and watch for pests',
    rule: 'For the first two to three weeks, away from other plants.',
    tools: ['a hand lens'],
  },
  'soak-roots': {
    title: 'Soak the bare roots',
    rule: 'For 1 to 6 hours before planting, never longer than a day.',
    tools: ['a bucket of water'],
  },
  'pot-up': {
    title: 'Pot the bare-root tree',
    rule: 'On the day its roots were soaked, when it cannot be planted.',
    tools: ['a pot with holes', 'potting mix', 'pruners for broken roots'],
  },
  'keep-wrapped': {
    title: 'Keep the roots wrapped, damp and cold',
    rule: 'Until the planting window opens, no longer than the species keeps.',
    tools: ['a bag', 'damp packing', 'a thermometer'],
  },
  'settle-in': {
    title: 'Bring it to full sun in steps',
    rule: 'Over the first one to two weeks outdoors.',
    tools: ['a shaded spot out of the wind'],
  },
  'hold-late-leaves': {
    title: 'Let the late leaves go, slowly',
    rule: 'When a tree in leaf arrives with the first freeze near, or in winter.',
    tools: ['a bright cool room', 'a thermometer'],
  },
  'store-on-arrival': {
    title: 'Store the sleeping tree',
    rule: 'When a leafless tree arrives while the cold lasts.',
    tools: ['a dark, frost-free place', 'a thermometer'],
  },
  'wake-on-arrival': {
    title: 'Let the leafless tree grow',
    rule: 'When a leafless tree arrives where it is already warm.',
    tools: ['a bright spot out of the wind'],
  },
  'stand-out': {
    title: 'Stand the pot outdoors for the winter',
    rule: 'Where no cold spell is long enough to hurt the roots in a pot.',
    tools: ['a spot out of the wind'],
  },
  'plant-dormant': {
    title: 'Plant the leafless tree',
    rule: 'While it sleeps and the soil can be dug.',
    tools: ['a spade', 'a watering can', 'mulch'],
  },
  'plant-out': {
    title: 'Plant the tree in the ground',
    rule: 'After the chance of a later freeze has dropped to 1 in 10, and eight weeks before the next may come.',
    tools: ['a spade', 'a watering can', 'mulch'],
  },
  'water-asleep': {
    title: 'Water the sleeping tree in dry spells',
    rule: 'Once at planting, then after two to four weeks without rain until it grows.',
    tools: ['a watering can'],
  },
  'water-new': {
    title: 'Water the new tree',
    rule: 'Every day or two for two weeks, every few days to the twelfth week: 2 to 3 gallons for each inch of the stem.',
    tools: ['a watering can'],
  },
  'water-first-summer': {
    title: 'Water through the first summer',
    rule: 'From the thirteenth week until growth ends, about once a week.',
    tools: ['a watering can'],
  },
  'water-second-summer': {
    title: 'Soak it in the dry spells of its second summer',
    rule: 'Every ten to fourteen days without rain.',
    tools: ['a hose or a watering can'],
  },
  'stop-feeding': {
    title: 'Give the last feed',
    rule: 'Ten weeks before the median first freeze, about midsummer in cold places.',
    tools: [],
  },
  'ease-water': {
    title: 'Water less so that the wood ripens',
    rule: 'From the first freezes until the leaves are down.',
    tools: [],
  },
  'leaf-fall': {
    title: 'Watch the leaves come down',
    rule: 'After the first cold enough night or a cool spell.',
    tools: [],
  },
  mulch: {
    title: 'Mulch the roots for winter',
    rule: '30 to 45 days after the first freeze.',
    tools: ['mulch', 'a fork'],
  },
  protect: {
    title: 'Cover the tree for winter',
    rule: 'Once the leaves are down and before the nights it cannot stand.',
    tools: ['wire netting', 'dry leaves or straw', 'soft ties', 'a rain cover'],
  },
  'ready-for-store': {
    title: 'Water the pot through and mulch its top',
    rule: 'A day or two before it goes into storage.',
    tools: ['a watering can', 'leaves or straw'],
  },
  'move-in': {
    title: 'Move the pot into storage',
    rule: 'Soft or first-year wood and small pots after leaf fall or a light frost and before 27 F (-3 C); older lignified wood in large pots after a few nights of about 25 to 20 F (-4 to -6.5 C).',
    tools: ['a dolly', 'a thermometer', 'a label'],
  },
  'shelter-nights': {
    title: 'Shelter the pot on hard nights',
    rule: 'Whenever a spell is forecast that may freeze the pot through.',
    tools: ['a dolly', 'straw or bubble wrap'],
  },
  rest: {
    title: 'Give it a rest',
    rule: 'In the coolest weeks, where no cold puts it to sleep.',
    tools: [],
  },
  'water-stored': {
    title: 'Water the sleeping pot a little',
    rule: 'Every three to five weeks while it is stored.',
    tools: ['a watering can'],
  },
  'inspect-stored': {
    title: 'Look at the stored tree',
    rule: 'Every two to three weeks while it is stored.',
    tools: ['a thermometer', 'a flashlight'],
  },
  'inspect-protection': {
    title: 'Look under the cover',
    rule: 'Once a month while it is on.',
    tools: [],
  },
  prune: {
    title: 'Prune before the buds swell',
    rule: 'In the last weeks of dormancy.',
    tools: ['clean pruners', 'a saw', 'gloves'],
  },
  uncover: {
    title: 'Take the winter cover off in steps',
    rule: 'When the chance of a later hard freeze has dropped to 1 in 10.',
    tools: [],
  },
  wake: {
    title: 'Bring the tree into the light',
    rule: 'When the days outdoors reach a mean of 8 C (46 F).',
    tools: ['a dolly', 'a bright cool place'],
  },
  'water-waking': {
    title: 'Water the waking tree a little',
    rule: 'Once when it comes into the light, then when the top 2 in (5 cm) is dry.',
    tools: ['a watering can'],
  },
  'watch-buds': {
    title: 'Watch the buds swell and open',
    rule: 'From the first weeks in the light: one to two months at 50 F (10 C).',
    tools: [],
  },
  'pot-on': {
    title: 'Pot up when roots fill the pot',
    rule: 'After the first feed.',
    tools: ['a pot one or two sizes up', 'potting mix'],
  },
  'cover-new-leaves': {
    title: 'Cover new leaves on freezing nights',
    rule: 'From budbreak until the chance of a later freeze has dropped to 1 in 10.',
    tools: ['frost cloth'],
  },
  harden: {
    title: 'Harden the new leaves',
    rule: 'Over the one to two weeks before it goes out for good.',
    tools: ['a shaded spot out of the wind'],
  },
  'move-out': {
    title: 'Move the pot out for the season',
    rule: 'Once the chance of a later freeze has dropped to 1 in 10.',
    tools: ['a dolly'],
  },
  feed: {
    title: 'Feed while it grows',
    rule: 'From two weeks after budbreak until the last feed.',
    tools: ['a balanced fertiliser'],
  },
  'water-growing': {
    title: 'Water by weight and weather',
    rule: 'While it is in leaf.',
    tools: ['a watering can'],
  },
  'shade-trunk': {
    title: 'Whitewash the trunk',
    rule: 'Before the first great heat, where summers are hot and dry.',
    tools: ['white latex paint thinned with as much water', 'a brush'],
  },
};

/** Tasks that belong to a guide of each kind, for the calendar beside it. */
export const tasksOfGuide: Record<GuideKind, readonly TaskName[]> = {
  arrival: [
    'unpack',
    'stand-apart',
    'soak-roots',
    'pot-up',
    'keep-wrapped',
    'settle-in',
    'hold-late-leaves',
    'store-on-arrival',
    'wake-on-arrival',
    'stand-out',
    'plant-dormant',
    'plant-out',
  ],
  'overwintering-pot': [
    'stop-feeding',
    'ease-water',
    'leaf-fall',
    'ready-for-store',
    'move-in',
    'shelter-nights',
    'stand-out',
    'rest',
    'water-stored',
    'inspect-stored',
    'wake',
  ],
  'overwintering-ground': [
    'stop-feeding',
    'ease-water',
    'leaf-fall',
    'mulch',
    'protect',
    'inspect-protection',
    'uncover',
    'cover-new-leaves',
    'rest',
  ],
  waking: [
    'prune',
    'wake',
    'water-waking',
    'watch-buds',
    'uncover',
    'cover-new-leaves',
    'harden',
    'move-out',
    'feed',
    'pot-on',
  ],
  establishing: [
    'plant-dormant',
    'plant-out',
    'water-asleep',
    'water-new',
    'water-first-summer',
    'water-second-summer',
    'feed',
    'stop-feeding',
    'mulch',
    'protect',
    'shade-trunk',
  ],
  'growing-on': ['pot-on', 'move-out', 'feed', 'water-growing', 'stop-feeding', 'ease-water'],
  propagation: [],
  pruning: ['leaf-fall', 'rest', 'prune'],
};
