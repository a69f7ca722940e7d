/** Winter chill from hourly temperatures. Chill is only ever told as a range over years; see `chillOfYears`. */

/** Chilling hour: from 0 to 7.2 C. Sources: Bennett 1949, California Agriculture 3(11); Weinberger 1950. */
export function chillingHour(tC: number): number {
  return tC >= 0 && tC <= 7.2 ? 1 : 0;
}

/** Upper end of each step, C, and the units of an hour in it. Above the last, -1. */
const utahSteps = [
  [1.4, 0],
  [2.4, 0.5],
  [9.1, 1],
  [12.4, 0.5],
  [15.9, 0],
  [18, -0.5],
] as const;

/** Utah chill units of an hour. Source: Richardson, Seeley and Walker 1974, HortScience 9:331-332. */
export function utahUnits(tC: number): number {
  return utahSteps.find(([upTo]) => tC <= upTo)?.[1] ?? -1;
}

/** Growing degree hours: base, optimum and critical temperature, C. Source: Anderson, Richardson, Kesner 1986, Acta Hort. 184:71-78. */
const GDH_BASE_C = 4;
const GDH_OPTIMUM_C = 25;
const GDH_CRITICAL_C = 36;

/** Growing degree hours of an hour. */
export function growingDegreeHour(tC: number): number {
  const range = GDH_OPTIMUM_C - GDH_BASE_C;
  if (tC >= GDH_BASE_C && tC <= GDH_OPTIMUM_C) {
    return (range / 2) * (1 + Math.cos(Math.PI * (1 + (tC - GDH_BASE_C) / range)));
  }
  if (tC > GDH_OPTIMUM_C && tC <= GDH_CRITICAL_C) {
    const over = (tC - GDH_OPTIMUM_C) / (GDH_CRITICAL_C - GDH_OPTIMUM_C);
    return range * (1 + Math.cos((Math.PI / 2) * (1 + over)));
  }
  return 0;
}

/**
 * The Dynamic Model: warmth undoes a half-made portion, cold fixes it.
 * Sources: Fishman, Erez and Couvillon 1987, J. Theor. Biol. 124:473-483 and 126:309-321; Erez et al. 1990,
 * Acta Hort. 276:165-174 (constants).
 */
const SLOPE = 1.6;
const TRANSITION_K = 277;
const A0 = 139500;
const A1 = 2.567e18;
/** Activation energies over the gas constant, K; making the intermediate needs less than breaking it. */
const E0 = 4153.5;
const E1 = 12888.8;
/** The model's own zero of the Kelvin scale. */
const ZERO_C_IN_K = 273;

interface HourRates {
  /** Share of a full intermediate that becomes a portion. */
  readonly fixedShare: number;
  /** Level the intermediate moves to. */
  readonly level: number;
  /** Share of the way to that level not gone in an hour. */
  readonly left: number;
}

function hourRates(tC: number): HourRates {
  const tK = tC + ZERO_C_IN_K;
  const odds = Math.exp((SLOPE * TRANSITION_K * (tK - TRANSITION_K)) / tK);
  return {
    fixedShare: odds === Number.POSITIVE_INFINITY ? 1 : odds / (1 + odds),
    level: (A0 / A1) * Math.exp((E1 - E0) / tK),
    left: Math.exp(-A1 * Math.exp(-E1 / tK)),
  };
}

/**
 * A counter to be fed one hourly temperature (C) after another; it returns the portions fixed in that hour. Start it at
 * leaf fall and never restart it within a winter: half-made portions carry over.
 */
export function chillPortionCounter(rates: (tC: number) => HourRates = hourRates): (tC: number) => number {
  let intermediate = 0;
  let started = false;
  let lastFixedShare = 0;
  return tC => {
    const { fixedShare, level, left } = rates(tC);
    if (started) {
      const kept = intermediate < 1 ? intermediate : intermediate * (1 - lastFixedShare);
      intermediate = level - (level - kept) * left;
    }
    started = true;
    lastFixedShare = fixedShare;
    return intermediate >= 1 ? intermediate * fixedShare : 0;
  };
}

/** Rates every 0.05 C from -60 to 60 C: hourly curves are not known better than that, and three exponentials are slow. */
const STEPS_PER_C = 20;
const TABLE_FROM_C = -60;
const TABLE_TO_C = 60;
const rateTable = Array.from({ length: (TABLE_TO_C - TABLE_FROM_C) * STEPS_PER_C + 1 }, (_, i) =>
  hourRates(TABLE_FROM_C + i / STEPS_PER_C),
);

/** The same rates, looked up to the nearest 0.05 C. For long runs of simulated weather. */
export function tabledRates(tC: number): HourRates {
  const held = Math.min(TABLE_TO_C, Math.max(TABLE_FROM_C, tC));
  return rateTable[Math.round((held - TABLE_FROM_C) * STEPS_PER_C)] as HourRates;
}
