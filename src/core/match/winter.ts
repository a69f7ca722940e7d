/** What the winter asks of a tree in the ground. */
import type { Reason } from '../records/common.ts';
import type { Species } from '../records/species.ts';
import { differenceInWords, temperatureInWords } from '../units.ts';
import type { MatchContext, TreeAge, WinterCare, WinterVerdict } from './answers.ts';
import type { PlaceOutlook } from './placeOutlook.ts';
import { ours, reasonFrom } from './words.ts';

/** Least margin of the low of one winter in ten over what the wood stands, C. Standing: ours. */
const careFromMarginC: readonly (readonly [WinterCare, number])[] = [
  ['nothing', 3],
  ['mulch', 0],
  ['wrap', -6],
  ['bury', -12],
];

/** What a second winter still lacks, C; the first winter's figure is the species' own. Standing: ours. */
const SECOND_WINTER_ALLOWANCE_C = 3;

export const careWords: Readonly<Record<WinterCare, string>> = {
  nothing: 'It needs no help.',
  mulch: 'Mulch the crown and keep the wind off.',
  wrap: 'Wrap it, with dry leaves or straw inside.',
  bury: 'Lay it down and bury it, or winter it in a pot in an unheated building.',
  store: 'Only a tree kept in winter storage survives.',
};

const ageWords: Readonly<Record<TreeAge, string>> = {
  'first-winter': 'In its first winter in the ground',
  'second-winter': 'In its second winter',
  established: 'Once established',
};

export function winterCare(marginC: number): WinterCare {
  return careFromMarginC.find(([, from]) => marginC >= from)?.[0] ?? 'store';
}

export interface WoodLimit {
  /** What dormant wood of the cultivar stands, C. */
  readonly limitC: number;
  /** The species' own limit and what it rests on. */
  readonly because: Reason[];
}

/** What dormant wood stands at an age, the cultivar's own offset added. */
export function woodLimit(species: Species, age: TreeAge, offsetC: number): WoodLimit {
  const { dormantEstablishedC: old, dormantFirstWinterC: young } = species;
  // A record may hold young trees hardier than old ones; nothing known makes that so.
  const first = Math.max(old.value, young.value);
  const speciesC = {
    established: old.value,
    'first-winter': first,
    'second-winter': Math.min(first, old.value + SECOND_WINTER_ALLOWANCE_C),
  }[age];
  const text = `${ageWords[age]} its species' wood is hardy to about ${temperatureInWords(speciesC)}.`;
  const figure = age === 'established' ? old : young;
  const reason = figure.value === speciesC ? reasonFrom(text, figure) : ours(text);
  return { limitC: speciesC + offsetC, because: [reason, ...offsetReason(offsetC)] };
}

function offsetReason(offsetC: number): Reason[] {
  if (offsetC === 0) return [];
  const by = `${differenceInWords(Math.abs(offsetC))}`;
  return [ours(`The grower rates it ${by} ${offsetC < 0 ? 'hardier' : 'less hardy'} than its species.`)];
}

/** Verdict for one age. */
export function winterVerdict(
  place: PlaceOutlook,
  species: Species,
  age: TreeAge,
  offsetC: number,
  { shelterC }: Pick<MatchContext, 'shelterC'>,
): WinterVerdict {
  const { limitC, because } = woodLimit(species, age, offsetC);
  const designLowC = place.designLowC + shelterC;
  const marginC = designLowC - limitC;
  const care = winterCare(marginC);
  const sheltered =
    shelterC === 0
      ? []
      : [
          ours(
            `The spot is taken as ${differenceInWords(Math.abs(shelterC))} ${shelterC > 0 ? 'warmer' : 'colder'} than the station on cold nights.`,
          ),
        ];
  return {
    care,
    marginC,
    limitC,
    designLowC,
    because: [place.designLowReason, ...sheltered, ...because, ours(careWords[care])],
  };
}
