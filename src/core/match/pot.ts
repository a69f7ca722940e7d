/** What a potted tree left outdoors needs. */
import { puttingAway, ripenessOf } from '../phenology/puttingAway.ts';
import type { Reason } from '../records/common.ts';
import type { Species } from '../records/species.ts';
import { temperatureInWords } from '../units.ts';
import type { MatchContext, PotCare, PotVerdict } from './answers.ts';
import type { PlaceOutlook } from './placeOutlook.ts';
import { woodLimit } from './winter.ts';
import type { PotLow } from './winterLows.ts';
import { modeled, ours, reasonFrom } from './words.ts';

/** The largest pot looked at that is no larger than the one asked for, so that the answer errs to the cold side. */
function potOf(pots: readonly PotLow[], liters: number): PotLow {
  return pots.findLast(pot => pot.liters <= liters) ?? (pots[0] as PotLow);
}

const careWords: Readonly<Record<PotCare, string>> = {
  'stays-out': 'The pot may stay outside.',
  insulate: 'Wrap the pot and group it with others against a wall, or bring it in for the coldest spells.',
  store: 'Keep it in cold, frost-free storage for the winter.',
};

/** What to do, and for a tree that is put away when: by the rule that guides and calendars have, for a tree in its first winter. */
function advice(care: PotCare, species: Species, potLiters: number): Reason[] {
  if (care !== 'store') return [ours(careWords[care])];
  const { when } = puttingAway[ripenessOf({ species, potLiters, firstWinter: true, wood: null })];
  return [
    ours(careWords[care]),
    ours(`In its first winter it goes in by this: ${when[0]!.toLowerCase()}${when.slice(1)}.`),
  ];
}

/** Verdict for a pot. Wood in a pot counts as in its first winter: it hardens late and wakes early. */
export function potVerdict(
  place: PlaceOutlook,
  species: Species,
  offsetC: number,
  { potLiters, shelterC }: Pick<MatchContext, 'potLiters' | 'shelterC'>,
): PotVerdict {
  const pot = potOf(place.pots, potLiters);
  const { limitC, because: woodReasons } = woodLimit(species, 'first-winter', offsetC);
  const [mixLowC, insulatedLowC] = [pot.lowC + shelterC, pot.insulatedLowC + shelterC];
  const woodHolds = place.designLowC + shelterC >= limitC;
  const injuryC = species.rootInjuryC.value;
  const severeC = species.rootSevereC.value;
  const care: PotCare = !woodHolds
    ? 'store'
    : mixLowC >= injuryC
      ? 'stays-out'
      : insulatedLowC >= severeC
        ? 'insulate'
        : 'store';
  return {
    care,
    container: pot.container,
    mixLowC,
    because: [
      modeled(
        mixLowC >= 0
          ? `The mix of a ${pot.container} pot left outside does not freeze through in nine winters in ten.`
          : `In one winter in ten the mix of a ${pot.container} pot left outside gets down to ${temperatureInWords(mixLowC)}.`,
      ),
      reasonFrom(`Roots are damaged at about ${temperatureInWords(injuryC)} and below.`, species.rootInjuryC),
      ...(woodHolds ? [] : [place.designLowReason, ...woodReasons]),
      ...advice(care, species, potLiters),
    ],
  };
}
