/** One verdict for a cultivar in a place, with its reasons and what would change it. */
import type { ChillState } from '../phenology/chill.ts';
import type { Reason } from '../records/common.ts';
import type { Species } from '../records/species.ts';
import type { Level, Match, MatchContext, RipeningVerdict, WetVerdict } from './answers.ts';
import { fruitChanges, ripeningChanges, winterChanges } from './change.ts';

import { formAdvice } from './forms.ts';
import { type LevelParts, levelOf } from './level.ts';
import type { PlaceOutlook } from './placeOutlook.ts';
import {
  addWorstFirst,
  type CropPart,
  careSteps,
  cropSteps,
  kindNumber,
  memo,
  sharedVerdicts,
  type WetPart,
  type WinterPart,
} from './sharedVerdicts.ts';
import type { MatchedCultivar } from './subject.ts';
import {
  cropWithTrials,
  ripenedHere,
  type TrialGround,
  trialReason,
  type WeighedTrial,
  weighedTrials,
  winterWithTrials,
} from './trials.ts';
import { reasonFrom } from './words.ts';

/** What a cultivar that needs a partner asks for, and how its species is pollinated where the record says so. */
function partnerReasons({ pollination }: Species, { chromosomes }: MatchedCultivar): Reason[] {
  const race =
    chromosomes === null
      ? ''
      : ` It has ${chromosomes} chromosomes, and the other tree has to be of the same race.`;
  const need: Reason = {
    text: `It needs another cultivar of the species nearby to set fruit.${race}`,
    standing: 'practice',
  };
  return pollination === null ? [need] : [need, reasonFrom(pollination.text, pollination)];
}

/** The troubles of the species that belong to a climate like this. */
function troubleReasons({ troubles }: Species, place: PlaceOutlook): Reason[] {
  return troubles
    .filter(
      ({ where: { winter, air } }) =>
        (winter?.includes(place.class.winter) ?? true) && (air?.includes(place.class.air) ?? true),
    )
    .map(trouble => reasonFrom(trouble.text, trouble));
}

/** The crop that decides: the likeliest to ripen outdoors, then with a head start; the main crop of two alike. */
function bestCrop(crops: readonly CropPart[]): RipeningVerdict | null {
  let best: RipeningVerdict | null = null;
  for (const { verdict } of crops) {
    if (verdict.blocked !== null) continue;
    const gain =
      best === null ? 1 : verdict.share - best.share || verdict.headStart.share - best.headStart.share;
    if (gain > 0 || (gain === 0 && verdict.crop === 'main')) best = verdict;
  }
  return best;
}

/** The parts a level is made of. */
function partsOf(
  crops: readonly CropPart[],
  best: RipeningVerdict | null,
  { winter }: WinterPart,
  wet: WetPart,
  chill: ChillState,
): LevelParts {
  let headStart = 0;
  for (const { verdict } of crops) headStart = Math.max(headStart, verdict.headStart.share);
  return {
    care: winter.established.care,
    outdoors: best?.share ?? 0,
    headStart,
    wet: wet.verdict.level,
    chill,
    fruitless: best === null,
  };
}

function cropPartWithTrials(part: CropPart, trials: readonly WeighedTrial[]): CropPart {
  const verdict = cropWithTrials(part.verdict, trials);
  return verdict === part.verdict
    ? part
    : { verdict, steps: cropSteps[verdict.word], because: verdict.because };
}

function partWithTrials(part: WinterPart, trials: readonly WeighedTrial[]): WinterPart {
  const established = winterWithTrials(part.winter.established, trials);
  if (established === part.winter.established) return part;
  const winter = { ...part.winter, established };
  return {
    ...part,
    winter,
    changes: winterChanges(winter),
    steps: careSteps[established.care],
    because: established.because,
  };
}

/** What is said of every cultivar that asks the same of a place; cultivars of a kind share the objects below. */
interface Kind {
  readonly level: Level;
  readonly because: Reason[];
  readonly whatWouldChangeIt: Reason[];
  readonly winter: WinterPart;
  readonly ripening: RipeningVerdict[];
  readonly wet: WetVerdict;
}

/**
 * A function that judges cultivars of one species in one place. What cultivars of a kind share is made once, so judging a
 * thousand costs little more than judging each kind. Throws a RangeError for a species the outlook was not made for.
 */
export function matcherFor(
  place: PlaceOutlook,
  species: Species,
  context: MatchContext,
): (cultivar: MatchedCultivar) => Match {
  const outlook = place.species.get(species.id);
  if (!outlook) throw new RangeError(`no outlook for the species ${species.id} at ${place.id}`);
  const shared = sharedVerdicts(place, species, outlook, context);
  const forms = formAdvice(place, species, context);
  const troubles = troubleReasons(species, place);
  const kindsByOffset = memo<ReturnType<typeof memo<Kind>>>();

  const ground: TrialGround = {
    class: place.class,
    traits: place.traits,
    traitsOf: id => context.trialClimates[id] ?? null,
  };

  function makeKind(cultivar: MatchedCultivar, trials: readonly WeighedTrial[]): Kind {
    const byModel = shared.winterOf(cultivar.hardinessOffsetC);
    const winter = partWithTrials(byModel, trials);
    const crops = cultivar.crops.map(crop => cropPartWithTrials(shared.cropOf(cultivar, crop), trials));
    const best = bestCrop(crops);
    const wet = shared.wetOf(cultivar, best?.crop ?? 'main');
    const rested = ripenedHere(trials, cultivar.crops);
    const because: Reason[] = trials.map(trialReason);
    addWorstFirst(because, [...crops, winter, wet, ...(rested ? [] : [shared.chill])]);
    if (cultivar.pollination === 'partner') because.push(...partnerReasons(species, cultivar));
    because.push(...troubles);
    return {
      level: levelOf(partsOf(crops, best, winter, wet, rested ? 'met' : outlook!.chill)),
      because,
      whatWouldChangeIt: [
        ...ripeningChanges(place, species, cultivar.ripening, best),
        ...winter.changes,
        ...fruitChanges(cultivar, crops, wet.verdict),
      ],
      winter,
      ripening: crops.map(({ verdict }) => verdict),
      wet: wet.verdict,
    };
  }

  return cultivar => {
    const ofOffset = kindsByOffset(cultivar.hardinessOffsetC, () => memo<Kind>());
    const model = ofOffset(kindNumber(cultivar), () => makeKind(cultivar, []));
    const trials = weighedTrials(cultivar.trials, ground);
    const kind = trials.length === 0 ? model : makeKind(cultivar, trials);
    return {
      cultivar: cultivar.id,
      place: place.id,
      level: kind.level,
      because: kind.because,
      whatWouldChangeIt: kind.whatWouldChangeIt,
      winter: kind.winter.winter,
      pot: kind.winter.pot,
      ripening: kind.ripening,
      wet: kind.wet,
      forms,
      trials: trials.map(({ trial }) => trial),
      modeled: model.level,
    };
  };
}

/** All cultivars in one place, in the order given. Throws a RangeError for a cultivar whose species is not in the list. */
export function matchAll(
  place: PlaceOutlook,
  cultivars: readonly MatchedCultivar[],
  speciesList: readonly Species[],
  context: MatchContext,
): Match[] {
  const judges = new Map(speciesList.map(species => [species.id, matcherFor(place, species, context)]));
  return cultivars.map(cultivar => {
    const judge = judges.get(cultivar.species);
    if (!judge) throw new RangeError(`no species ${cultivar.species} for the cultivar ${cultivar.id}`);
    return judge(cultivar);
  });
}
