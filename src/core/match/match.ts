/** One verdict for a cultivar in a place, with its reasons and what would change it. */
import type { Crop, Reason } from '../records/common.ts';
import type { Species } from '../records/species.ts';
import type {
  Match,
  MatchContext,
  PotVerdict,
  RipeningVerdict,
  TreeAge,
  WetVerdict,
  WinterVerdict,
} from './answers.ts';
import { fruitChanges, ripeningChanges, winterChanges } from './change.ts';
import { chillReasons } from './chillMet.ts';
import { formAdvice } from './forms.ts';
import { type LevelParts, levelOf } from './level.ts';
import type { PlaceOutlook, SpeciesOutlook } from './placeOutlook.ts';
import { potVerdict } from './pot.ts';
import { needsWasp, ripeningVerdict } from './ripening.ts';
import type { MatchedCultivar } from './subject.ts';
import { levelSeen, trialSeen, trialsIn } from './trials.ts';
import { wetVerdict } from './wet.ts';
import { winterVerdict } from './winter.ts';

/** Keeps what was made for a key: many cultivars share a verdict. */
function memo<T>(): (key: string, make: () => T) => T {
  const kept = new Map<string, T>();
  return (key, make) => {
    const known = kept.get(key);
    if (known !== undefined) return known;
    const made = make();
    kept.set(key, made);
    return made;
  };
}

/** The crop that decides: the likeliest to ripen outdoors, then with a head start; the main crop of two alike. */
function bestCrop(ripening: readonly RipeningVerdict[]): RipeningVerdict | undefined {
  const score = ({ share, headStart, crop }: RipeningVerdict) =>
    share + headStart.share / 1000 + (crop === 'main' ? 1e-6 : 0);
  return ripening
    .filter(({ blocked }) => blocked === null)
    .reduce<RipeningVerdict | undefined>(
      (best, each) => (best === undefined || score(each) > score(best) ? each : best),
      undefined,
    );
}

const partnerReason: Reason = {
  text: 'It needs another cultivar of the species nearby to set fruit.',
  standing: 'practice',
};

/** Steps by which each part falls short, so that the worst is told first. */
const careSteps = { nothing: 0, mulch: 0, wrap: 1, bury: 2, store: 3 } as const;
const cropSteps = { reliable: 0, 'most-years': 1, 'some-years': 2, 'not-outdoors': 3 } as const;
const wetSteps = { sound: 0, 'some-loss': 1, 'heavy-loss': 2 } as const;
const chillSteps = { met: 0, doubtful: 1, short: 3 } as const;
const MOST_STEPS = 3;

type Part = readonly [steps: number, because: readonly Reason[]];

/** Reasons of all parts after `first`, those that fall short most before the others. */
function worstFirst(first: Reason[], parts: readonly Part[]): Reason[] {
  for (let steps = MOST_STEPS; steps >= 0; steps -= 1) {
    for (const [own, because] of parts) if (own === steps) first.push(...because);
  }
  return first;
}

interface WinterPart {
  readonly winter: Record<TreeAge, WinterVerdict>;
  readonly pot: PotVerdict;
  readonly changes: Reason[];
}

/** The verdicts cultivars of one species share in one place, each made once. */
function sharedVerdicts(
  place: PlaceOutlook,
  species: Species,
  outlook: SpeciesOutlook,
  context: MatchContext,
) {
  const winters = memo<WinterPart>();
  const crops = memo<RipeningVerdict>();
  const wets = memo<WetVerdict>();
  const changes = memo<Reason[]>();
  return {
    winterOf: (offsetC: number) =>
      winters(String(offsetC), () => {
        const at = (age: TreeAge) => winterVerdict(place, species, age, offsetC, context);
        const winter = {
          'first-winter': at('first-winter'),
          'second-winter': at('second-winter'),
          established: at('established'),
        };
        return {
          winter,
          pot: potVerdict(place, species, offsetC, context),
          changes: winterChanges(winter),
        };
      }),
    cropOf: (cultivar: MatchedCultivar, crop: Crop) => {
      const wood = crop === 'breba' ? cultivar.hardinessOffsetC : 0;
      const key = `${crop} ${cultivar.ripening} ${needsWasp(cultivar.pollination, crop)} ${wood}`;
      return crops(key, () => ripeningVerdict(place, species, cultivar, crop, context));
    },
    wetOf: ({ ripening, fruit }: MatchedCultivar, crop: Crop) =>
      wets(`${crop} ${ripening} ${fruit.eye} ${fruit.splits} ${fruit.rain}`, () =>
        wetVerdict(outlook.crops[crop].get(ripening)?.window ?? place.usualWindow, fruit),
      ),
    ripeningChangesOf: (
      { ripening, hardinessOffsetC }: MatchedCultivar,
      best: RipeningVerdict | undefined,
    ) =>
      best === undefined || best.word === 'reliable'
        ? []
        : changes(`${best.crop} ${ripening} ${hardinessOffsetC}`, () =>
            ripeningChanges(place, species, ripening, best),
          ),
  };
}

/**
 * A function that judges cultivars of one species in one place. Verdicts that cultivars share are made once, so judging a
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
  const chill: Part = [chillSteps[outlook.chill], chillReasons(species, outlook.chill, place.chill)];

  return cultivar => {
    const { winter, pot, changes } = shared.winterOf(cultivar.hardinessOffsetC);
    const ripening = cultivar.crops.map(crop => shared.cropOf(cultivar, crop));
    const best = bestCrop(ripening);
    const wet = shared.wetOf(cultivar, best?.crop ?? 'main');
    const model: LevelParts = {
      care: winter.established.care,
      outdoors: best?.share ?? 0,
      headStart: ripening.reduce((most, { headStart }) => Math.max(most, headStart.share), 0),
      wet: wet.level,
      chill: outlook.chill,
      fruitless: best === undefined,
    };
    const modelled = levelOf(model);
    const trials = trialsIn(cultivar.trials, place.class);
    const seen = trials.map(trial => trialSeen(trial, model));
    const parts: Part[] = [];
    if (best) parts.push([cropSteps[best.word], best.because]);
    for (const { blocked, because } of ripening) if (blocked !== null) parts.push([MOST_STEPS, because]);
    parts.push(
      [careSteps[model.care], winter.established.because],
      [wetSteps[wet.level], wet.because],
      chill,
    );
    if (cultivar.pollination === 'partner') parts.push([0, [partnerReason]]);
    return {
      cultivar: cultivar.id,
      place: place.id,
      level: trials[0] ? levelSeen(trials[0], model) : modelled,
      because: worstFirst(
        seen.map(({ text }): Reason => ({ text, standing: 'seen' })),
        parts,
      ),
      whatWouldChangeIt: [
        ...shared.ripeningChangesOf(cultivar, best),
        ...changes,
        ...fruitChanges(cultivar, ripening, wet),
      ],
      winter,
      pot,
      ripening,
      wet,
      forms,
      trials: seen,
      modelled,
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
