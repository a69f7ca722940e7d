/**
 * How long a pot of moist mix takes to freeze through, as an engineering estimate: the latent heat of the water in it, let out
 * through a film of air on the wall and the top. The base stands on something that insulates. The film term of Plank's
 * freezing-time equation (Plank 1913), with volume over cooled area as the length; conduction inside is left out, so real pots
 * last longer, large ones up to about twice as long: the estimate errs on the careful side. Standing: ours.
 */

/** Heat given off by freezing water. Published: 334 kJ/kg, any physics table. */
const LATENT_HEAT_J_PER_KG = 334_000;
/** Water in a moist potting mix, share of the volume. Standing: ours. */
const WATER_SHARE = 0.4;
const WATER_KG_PER_M3 = 1000;
/** Still to lightly moving air on the outside of a pot. Standing: ours. */
const FILM_W_PER_M2_K = 10;

/**
 * Volume over cooled area of a pot as deep as it is wide, base left out, meters: (pi d^3 / 4) / (5 pi d^2 / 4) = d / 5.
 */
function coolingLengthM(liters: number): number {
  return ((4 * liters) / 1000 / Math.PI) ** (1 / 3) / 5;
}

/**
 * Degree-hours below 0 C that freeze a pot through: 120 means 24 hours at -5 C. `wallResistance` is the insulation of wall and top in
 * m2 K/W (straw or foam that doubles the time: 0.1).
 */
function freezeThroughDegreeHours(liters: number, wallResistance = 0): number {
  const joulesPerM2 = LATENT_HEAT_J_PER_KG * WATER_SHARE * WATER_KG_PER_M3 * coolingLengthM(liters);
  return (joulesPerM2 * (1 / FILM_W_PER_M2_K + wallResistance)) / 3600;
}

/** Hours at a steady air temperature below 0 C until the pot is frozen through; Infinity at or above 0 C. */
export function freezeThroughHours(liters: number, airC: number, wallResistance = 0): number {
  return airC >= 0 ? Number.POSITIVE_INFINITY : freezeThroughDegreeHours(liters, wallResistance) / -airC;
}

/** Pots up to this follow the mean of the day, larger ones that of two days. A #3 of the trade. Standing: ours. */
const ONE_DAY_POT_LITERS = 12;

/**
 * Follows the mix in a pot through the days: at the mean of the last day (large pots: two days) once it is frozen through, at 0 C
 * as long as some of it is ice, else at the mean of the air. Returns the temperature of the mix after each day's mean.
 */
export function mixFollower(liters: number): (meanC: number) => number {
  const need = freezeThroughDegreeHours(liters);
  const isLarge = liters > ONE_DAY_POT_LITERS;
  let frozen = 0;
  let yesterdayC: number | null = null;
  return meanC => {
    const runningC = isLarge && yesterdayC !== null ? (meanC + yesterdayC) / 2 : meanC;
    yesterdayC = meanC;
    frozen = Math.min(need, Math.max(0, frozen - 24 * meanC));
    if (frozen >= need) return Math.min(0, runningC);
    return frozen > 0 ? 0 : Math.max(0, runningC);
  };
}
