/** One verdict for a cultivar in a place, with its reasons and what would change it. */
import type { Reason } from '../records/common.ts';
import type { Species } from '../records/species.ts';
import type { Level, Match, MatchContext, RipeningVerdict, TrialSeen, WetVerdict } from './answers.ts';
import { fruitChanges, ripeningChanges } from './change.ts';
import { formAdvice } from './forms.ts';
import { type LevelParts, levelOf } from './level.ts';
import type { PlaceOutlook, SpeciesOutlook } from './placeOutlook.ts';
import {
  addWorstFirst,
  type CropPart,
  kindNumber,
  memo,
  sharedVerdicts,
  type WetPart,
  type WinterPart,
} from './sharedVerdicts.ts';
import type { MatchedCultivar } from './subject.ts';
import { levelSeen, trialSeen, trialsIn } from './trials.ts';
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

/** What the model makes of the parts, before any trial. */
function modelOf(
  crops: readonly CropPart[],
  best: RipeningVerdict | null,
  { winter }: WinterPart,
  wet: WetPart,
  { chill }: SpeciesOutlook,
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

const noneSeen: TrialSeen[] = [];
const seenReason = ({ text }: TrialSeen): Reason => ({ text, standing: 'seen' });

/** What the model says of every cultivar that asks the same of a place; cultivars of a kind share the objects below. */
interface Kind {
  readonly model: LevelParts;
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

  function makeKind(cultivar: MatchedCultivar): Kind {
    const winterPart = shared.winterOf(cultivar.hardinessOffsetC);
    const crops = cultivar.crops.map(crop => shared.cropOf(cultivar, crop));
    const best = bestCrop(crops);
    const wetPart = shared.wetOf(cultivar, best?.crop ?? 'main');
    const model = modelOf(crops, best, winterPart, wetPart, outlook as SpeciesOutlook);
    const because: Reason[] = [];
    addWorstFirst(because, [...crops, winterPart, wetPart, shared.chill]);
    if (cultivar.pollination === 'partner') because.push(...partnerReasons(species, cultivar));
    because.push(...troubles);
    return {
      model,
      level: levelOf(model),
      because,
      whatWouldChangeIt: [
        ...ripeningChanges(place, species, cultivar.ripening, best),
        ...winterPart.changes,
        ...fruitChanges(cultivar, crops, wetPart.verdict),
      ],
      winter: winterPart,
      ripening: crops.map(({ verdict }) => verdict),
      wet: wetPart.verdict,
    };
  }

  return cultivar => {
    const ofOffset = kindsByOffset(cultivar.hardinessOffsetC, () => memo<Kind>());
    const kind = ofOffset(kindNumber(cultivar), () => makeKind(cultivar));
    const trials = trialsIn(cultivar.trials, place.class);
    const seen = trials.length === 0 ? noneSeen : trials.map(trial => trialSeen(trial, kind.model));
    return {
      cultivar: cultivar.id,
      place: place.id,
      level: trials[0] ? levelSeen(trials[0], kind.model) : kind.level,
      because: seen.length === 0 ? kind.because : seen.map(seenReason).concat(kind.because),
      whatWouldChangeIt: kind.whatWouldChangeIt,
      winter: kind.winter.winter,
      pot: kind.winter.pot,
      ripening: kind.ripening,
      wet: kind.wet,
      forms,
      trials: seen,
      modelled: kind.level,
    };
  };
}

/** One cultivar in one place. For many, make a `matcherFor` once per species. */
export function matchPlace(
  place: PlaceOutlook,
  cultivar: MatchedCultivar,
  species: Species,
  context: MatchContext,
): Match {
  return matcherFor(place, species, context)(cultivar);
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
