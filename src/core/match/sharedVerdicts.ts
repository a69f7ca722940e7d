/** The verdicts that cultivars of one species share in one place, each made once. */
import type { Crop, Reason } from '../records/common.ts';
import type { Fruit } from '../records/cultivar.ts';
import type { Species } from '../records/species.ts';
import type {
  MatchContext,
  PotVerdict,
  RipeningVerdict,
  TreeAge,
  WetVerdict,
  WinterVerdict,
} from './answers.ts';
import { winterChanges } from './change.ts';
import { chillReasons } from './chillMet.ts';
import type { PlaceOutlook, SpeciesOutlook } from './placeOutlook.ts';
import { potVerdict } from './pot.ts';
import { needsWasp, ripeningVerdict } from './ripening.ts';
import type { MatchedCultivar } from './subject.ts';
import { wetVerdict } from './wet.ts';
import { winterVerdict } from './winter.ts';
import { ripeningOrder } from './words.ts';

/** One part of a match: by how many steps it falls short, so that the worst is told first, and why. */
export interface Part {
  readonly steps: number;
  readonly because: readonly Reason[];
}

export interface CropPart extends Part {
  readonly verdict: RipeningVerdict;
}

export interface WetPart extends Part {
  readonly verdict: WetVerdict;
}

export interface WinterPart extends Part {
  readonly winter: Record<TreeAge, WinterVerdict>;
  readonly pot: PotVerdict;
  readonly changes: readonly Reason[];
}

export const careSteps = { nothing: 0, mulch: 0, wrap: 1, bury: 2, store: 3 } as const;
export const cropSteps = { reliable: 0, 'most-years': 1, 'some-years': 2, 'not-outdoors': 3 } as const;
const wetSteps = { sound: 0, 'some-loss': 1, 'heavy-loss': 2 } as const;
const chillSteps = { met: 0, doubtful: 1, short: 3 } as const;
const MOST_STEPS = 3;

/** Adds the reasons of all parts to a list, those that fall short most before the others. */
export function addWorstFirst(reasons: Reason[], parts: readonly Part[]): void {
  for (let steps = MOST_STEPS; steps >= 0; steps -= 1) {
    for (const part of parts) {
      if (part.steps === steps) for (const reason of part.because) reasons.push(reason);
    }
  }
}

/** Keeps what was made for a number: many cultivars share a verdict, and numbers are found faster than words. */
export function memo<T>(): (key: number, make: () => T) => T {
  const kept = new Map<number, T>();
  return (key, make) => {
    const known = kept.get(key);
    if (known !== undefined) return known;
    const made = make();
    kept.set(key, made);
    return made;
  };
}

const cropNumber: Readonly<Record<Crop, number>> = { main: 0, breba: 1 };
const eyeNumber: Readonly<Record<Fruit['eye'], number>> = {
  closed: 0,
  sealed: 1,
  'half-open': 2,
  open: 3,
  none: 4,
};
const splitNumber: Readonly<Record<Fruit['splits'], number>> = { low: 0, some: 1, high: 2 };
const rainNumber: Readonly<Record<Fruit['rain'], number>> = { good: 0, fair: 1, poor: 2 };

/** A crop of a ripening class as a number below 10. */
const classNumber = (crop: Crop, { ripening }: Pick<MatchedCultivar, 'ripening'>) =>
  cropNumber[crop] * 5 + ripeningOrder[ripening];

const fruitNumber = ({ eye, splits, rain }: Fruit) =>
  eyeNumber[eye] * 9 + splitNumber[splits] * 3 + rainNumber[rain];

/** A number that cultivars share when they differ in nothing a match looks at, but for their hardiness and their trials. */
export function kindNumber({ crops, ripening, pollination, chromosomes, fruit }: MatchedCultivar): number {
  let number = 0;
  for (const crop of crops) number = number * 11 + classNumber(crop, { ripening }) + 1;
  const wasps = Number(needsWasp(pollination, 'main')) + Number(needsWasp(pollination, 'breba'));
  const rest = (number * 6 + wasps * 2 + Number(pollination === 'partner')) * 45 + fruitNumber(fruit);
  // Two crops at most: the rest stays far below a million.
  return (chromosomes ?? 0) * 1_000_000 + rest;
}

export function sharedVerdicts(
  place: PlaceOutlook,
  species: Species,
  outlook: SpeciesOutlook,
  context: MatchContext,
) {
  const winters = memo<WinterPart>();
  const wets = memo<WetPart>();
  // Brebas hang on the hardiness of the wood as well.
  const cropsByOffset = memo<ReturnType<typeof memo<CropPart>>>();
  const chill: Part = {
    steps: chillSteps[outlook.chill],
    because: chillReasons(species, outlook.chill, place.chill),
  };

  function winterOf(offsetC: number): WinterPart {
    return winters(offsetC, () => {
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
        steps: careSteps[winter.established.care],
        because: winter.established.because,
      };
    });
  }

  function cropOf(cultivar: MatchedCultivar, crop: Crop): CropPart {
    const offsetC = crop === 'breba' ? cultivar.hardinessOffsetC : 0;
    const key = classNumber(crop, cultivar) * 2 + Number(needsWasp(cultivar.pollination, crop));
    return cropsByOffset(offsetC, () => memo<CropPart>())(key, () => {
      const verdict = ripeningVerdict(place, species, cultivar, crop, context);
      const steps = verdict.blocked === null ? cropSteps[verdict.word] : MOST_STEPS;
      return { verdict, steps, because: verdict.because };
    });
  }

  function wetOf(cultivar: MatchedCultivar, crop: Crop): WetPart {
    return wets(classNumber(crop, cultivar) * 45 + fruitNumber(cultivar.fruit), () => {
      const window = outlook.crops[crop].get(cultivar.ripening)?.window ?? place.usualWindow;
      const verdict = wetVerdict(window, cultivar.fruit, species.rainAtRipening);
      return { verdict, steps: wetSteps[verdict.level], because: verdict.because };
    });
  }

  return { chill, winterOf, cropOf, wetOf };
}
