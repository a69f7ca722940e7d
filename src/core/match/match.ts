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
import { changesFor } from './change.ts';
import { chillReasons } from './chillMet.ts';
import { formAdvice } from './forms.ts';
import { type LevelParts, levelOf } from './level.ts';
import type { PlaceOutlook } from './placeOutlook.ts';
import { potVerdict } from './pot.ts';
import { needsWasp, ripeningVerdict } from './ripening.ts';
import type { RipeningWindow } from './ripeningWindow.ts';
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
  const winters = memo<Record<TreeAge, WinterVerdict>>();
  const pots = memo<PotVerdict>();
  const crops = memo<RipeningVerdict>();
  const wets = memo<WetVerdict>();
  const forms = formAdvice(place, species, context);
  const chill = chillReasons(species, outlook.chill, place.chill);

  const winterOf = (offsetC: number) =>
    winters(String(offsetC), () => ({
      'first-winter': winterVerdict(place, species, 'first-winter', offsetC, context),
      'second-winter': winterVerdict(place, species, 'second-winter', offsetC, context),
      established: winterVerdict(place, species, 'established', offsetC, context),
    }));
  const cropOf = (cultivar: MatchedCultivar, crop: Crop) => {
    const { ripening, pollination, hardinessOffsetC } = cultivar;
    const key = `${crop} ${ripening} ${needsWasp(pollination, crop)} ${hardinessOffsetC}`;
    return crops(key, () => ripeningVerdict(place, species, cultivar, crop, context));
  };
  const wetOf = ({ ripening, fruit }: MatchedCultivar, crop: Crop) => {
    const window = windowOf(crop, ripening);
    const key = `${crop} ${ripening} ${fruit.eye} ${fruit.splits} ${fruit.rain}`;
    return wets(key, () => wetVerdict(window, fruit));
  };
  const windowOf = (crop: Crop, ripening: MatchedCultivar['ripening']): RipeningWindow =>
    outlook.crops[crop].get(ripening)?.window ?? place.usualWindow;

  return cultivar => {
    const winter = winterOf(cultivar.hardinessOffsetC);
    const ripening = cultivar.crops.map(crop => cropOf(cultivar, crop));
    const best = bestCrop(ripening);
    const wet = wetOf(cultivar, best?.crop ?? 'main');
    const parts: LevelParts = {
      care: winter.established.care,
      outdoors: best?.share ?? 0,
      headStart: Math.max(0, ...ripening.map(({ headStart }) => headStart.share)),
      wet: wet.level,
      chill: outlook.chill,
      fruitless: best === undefined,
    };
    const modelled = levelOf(parts);
    const trials = trialsIn(cultivar.trials, place.class);
    const decisive = trials[0];
    const groups: [number, Reason[]][] = [
      [cropSteps[best?.word ?? 'not-outdoors'], best?.because ?? []],
      [3, ripening.filter(({ blocked }) => blocked !== null).flatMap(({ because }) => because)],
      [careSteps[parts.care], winter.established.because],
      [wetSteps[wet.level], wet.because],
      [chillSteps[outlook.chill], chill],
      [0, cultivar.pollination === 'partner' ? [partnerReason] : []],
    ];
    groups.sort(([a], [b]) => b - a);
    const seen = trials.map(trial => trialSeen(trial, parts));
    return {
      cultivar: cultivar.id,
      place: place.id,
      level: decisive ? levelSeen(decisive, parts) : modelled,
      because: [
        ...seen.map(({ text }): Reason => ({ text, standing: 'seen' })),
        ...groups.flatMap(([, reasons]) => reasons),
      ],
      whatWouldChangeIt: changesFor(place, species, cultivar, { winter, ripening, best, wet }),
      winter,
      pot: pots(String(cultivar.hardinessOffsetC), () =>
        potVerdict(place, species, cultivar.hardinessOffsetC, context),
      ),
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
