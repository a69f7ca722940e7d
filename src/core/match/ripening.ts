/** Whether a crop ripens here, and when. */
import { ripeningFigure } from '../phenology/fruit.ts';
import type { Crop, Figure, Reason, RipeningClass } from '../records/common.ts';
import type { PollinationHabit } from '../records/cultivar.ts';
import type { Species } from '../records/species.ts';
import { degreesCToF, roundTo, temperatureInWords } from '../units.ts';
import type { MatchContext, RipeningOdds, RipeningVerdict } from './answers.ts';
import type { ClassOutlook, PlaceOutlook, SpeciesOutlook } from './placeOutlook.ts';
import type { NeedOdds } from './ripeningOdds.ts';
import { SMALLEST_SHARE_FOR_A_DATE } from './tally.ts';
import { woodLimit } from './winter.ts';
import { shareOfWintersAbove } from './winterLows.ts';
import {
  cropWords,
  doyInWords,
  modeled,
  ours,
  reasonFrom,
  ripeningClassWords,
  ripeningWord,
  spreadInWords,
  yearsOfTen,
} from './words.ts';

const article = (words: string) => `${/^[aeiou]/.test(words) ? 'An' : 'A'} ${words}`;

const nothing: RipeningOdds = { share: 0, word: 'not-outdoors', dates: null };

function withShare({ dates }: NeedOdds, share: number): RipeningOdds {
  return { share, word: ripeningWord(share), dates: share < SMALLEST_SHARE_FOR_A_DATE ? null : dates };
}

/** Whether a crop of this habit sets fruit without the fig wasp. */
export function needsWasp(habit: PollinationHabit, crop: Crop): boolean {
  return habit === 'wasp-all' || (habit === 'wasp-main' && crop === 'main');
}

function blockedVerdict(
  crop: Crop,
  blocked: 'needs-wasp' | 'no-figure',
  outlook: ClassOutlook | undefined,
): RipeningVerdict {
  const because =
    blocked === 'no-figure'
      ? [ours('No figure of when it ripens is recorded for this class, so nothing is promised.')]
      : [
          ours(
            `Its ${cropWords[crop]} sets only where fig wasps live; without them the fruit drops, however warm the summer.`,
          ),
        ];
  const dates = blocked === 'needs-wasp' ? (outlook?.outdoors.dates ?? null) : null;
  return { ...nothing, dates, crop, blocked, headStart: nothing, because };
}

function seasonReasons({ start, bloom, end, endsBy }: SpeciesOutlook): Reason[] {
  return [
    ...(start === null
      ? []
      : [modeled(`Growth starts about ${doyInWords(start.p50)} (${spreadInWords(start)}).`)]),
    ...(bloom === null
      ? []
      : [modeled(`It is in full bloom about ${doyInWords(bloom.p50)} (${spreadInWords(bloom)}).`)]),
    end === null
      ? modeled('Neither freeze nor cool weather ends the season before midwinter here.')
      : modeled(
          `Its season ends about ${doyInWords(end.p50)} (${spreadInWords(end)}): by a night of ${temperatureInWords(endsBy.killingC)}, by leaf fall, or when days stay under about ${temperatureInWords(endsBy.tooCoolC)}.`,
        ),
  ];
}

function outcomeReason(crop: Crop, { share, dates }: RipeningOdds, ends: boolean): Reason {
  const when = dates === null ? '' : `; first ripe fruit ${spreadInWords(dates)}`;
  return modeled(
    `Its ${cropWords[crop]} ripens ${ends ? 'before the season ends ' : ''}${yearsOfTen(share)}${when}.`,
  );
}

/** What times the fruit, with the standing of its figure. */
function needReason({ bloom, leastDays }: Species, crop: Crop, words: string, figure: Figure): Reason {
  const least = leastDays[crop];
  const soonest = least === null ? '' : ` and at least ${Math.round(least.value)} days from budbreak`;
  const text =
    bloom === null
      ? `${article(words)} needs about ${roundTo(degreesCToF(figure.value), 50).toLocaleString('en-US')} degree-days F (${roundTo(figure.value, 10).toLocaleString('en-US')} degree-days C) from spring${soonest}.`
      : `${article(words)} is ripe about ${Math.round(figure.value)} days after a bloom in late May, earlier blooms taking longer.`;
  return reasonFrom(text, figure);
}

/** Breba fruit sits on last year's wood, which has to come through the winter. */
function woodShare(place: PlaceOutlook, species: Species, offsetC: number, shelterC: number): number {
  const { limitC } = woodLimit(species, 'established', offsetC);
  return shareOfWintersAbove(place.lowsC, limitC - shelterC);
}

/** Verdict for one crop. */
export function ripeningVerdict(
  place: PlaceOutlook,
  species: Species,
  cultivar: { ripening: RipeningClass; pollination: PollinationHabit; hardinessOffsetC: number },
  crop: Crop,
  { shelterC, waspsNear }: Pick<MatchContext, 'shelterC' | 'waspsNear'>,
): RipeningVerdict {
  const outlook = place.species.get(species.id);
  const figure = ripeningFigure(species, crop, cultivar.ripening);
  const found = outlook?.crops[crop].get(cultivar.ripening);
  if (needsWasp(cultivar.pollination, crop) && !waspsNear) return blockedVerdict(crop, 'needs-wasp', found);
  if (!outlook || !found || !figure) return blockedVerdict(crop, 'no-figure', found);
  const wood = crop === 'breba' ? woodShare(place, species, cultivar.hardinessOffsetC, shelterC) : 1;
  const outdoors = withShare(found.outdoors, found.outdoors.share * wood);
  const headStart = withShare(found.headStart, found.headStart.share);
  const need = needReason(
    species,
    crop,
    `${ripeningClassWords[cultivar.ripening]} ${cropWords[crop]}`,
    figure,
  );
  const woodReason =
    wood < 0.95
      ? [modeled(`The wood that carries it comes through the winter outdoors ${yearsOfTen(wood)}.`)]
      : [];
  const helped =
    headStart.word !== outdoors.word
      ? [modeled(`A stored pot woken four weeks early under cover ripens it ${yearsOfTen(headStart.share)}.`)]
      : [];
  return {
    ...outdoors,
    crop,
    blocked: null,
    headStart,
    because: [
      outcomeReason(crop, outdoors, outlook.end !== null),
      ...woodReason,
      need,
      ...seasonReasons(outlook),
      ...helped,
    ],
  };
}
