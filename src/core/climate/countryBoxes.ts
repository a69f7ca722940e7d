/**
 * Rough outlines of countries, to notice a latitude or longitude with the wrong sign or in the wrong place.
 * Whole degrees, widened outward, far islands as boxes of their own. General geography, no single source; good for nothing finer.
 */

/** South, north, west, east, in degrees; south and west negative. */
type Box = readonly [south: number, north: number, west: number, east: number];

const boxes: Readonly<Record<string, readonly Box[]>> = {
  AR: [[-56, -21, -74, -53]],
  AT: [[46, 50, 9, 18]],
  AU: [[-44, -9, 112, 160]],
  BE: [[49, 52, 2, 7]],
  BG: [[41, 45, 22, 29]],
  BR: [[-34, 6, -74, -28]],
  CA: [[41, 84, -142, -52]],
  CH: [[45, 48, 5, 11]],
  CL: [
    [-56, -17, -76, -66],
    [-34, -26, -110, -78],
  ],
  CN: [[18, 54, 73, 136]],
  CY: [[34, 36, 32, 35]],
  CZ: [[48, 52, 12, 19]],
  DE: [[47, 56, 5, 16]],
  DK: [[54, 58, 8, 16]],
  DZ: [[18, 38, -9, 12]],
  EG: [[21, 32, 24, 37]],
  ES: [
    [35, 44, -10, 5],
    [27, 30, -19, -13],
  ],
  FI: [[59, 71, 19, 32]],
  FR: [
    [41, 52, -6, 10],
    [-22, -20, 55, 56],
    [14, 17, -62, -60],
    [2, 6, -55, -51],
  ],
  GB: [[49, 61, -9, 2]],
  GR: [[34, 42, 19, 30]],
  HR: [[42, 47, 13, 20]],
  HU: [[45, 49, 16, 23]],
  IE: [[51, 56, -11, -5]],
  IL: [[29, 34, 34, 36]],
  IN: [[6, 38, 68, 98]],
  IT: [[35, 48, 6, 19]],
  JP: [[20, 46, 122, 154]],
  KR: [[33, 39, 124, 132]],
  MA: [[21, 36, -18, 0]],
  MX: [[14, 33, -119, -86]],
  NL: [[50, 54, 3, 8]],
  NO: [[57, 72, 4, 32]],
  NZ: [
    [-53, -33, 165, 180],
    [-45, -43, -178, -175],
  ],
  PL: [[49, 55, 14, 25]],
  PT: [
    [36, 43, -10, -6],
    [32, 40, -32, -16],
  ],
  RO: [[43, 49, 20, 30]],
  SE: [[55, 70, 10, 25]],
  TN: [[30, 38, 7, 12]],
  TR: [[35, 43, 25, 45]],
  UA: [[44, 53, 22, 41]],
  US: [
    [24, 50, -125, -66],
    [51, 72, -180, -129],
    [51, 54, 172, 180],
    [18, 23, -161, -154],
    [17, 19, -68, -64],
  ],
  UY: [[-36, -30, -59, -53]],
  ZA: [[-35, -22, 16, 33]],
};

function inside(country: string, lat: number, lon: number): boolean {
  return (boxes[country] ?? []).some(
    ([south, north, west, east]) => lat >= south && lat <= north && lon >= west && lon <= east,
  );
}

export interface PositionFault {
  /** What would put the place inside its country; null when nothing simple does. */
  better: { lat: number; lon: number } | null;
}

/**
 * Whether a position lies outside its country, with the likely slip undone: a sign turned round or the two numbers swapped.
 * Null when it lies inside, and for countries that are not in the table.
 */
export function positionFault(country: string, lat: number, lon: number): PositionFault | null {
  if (boxes[country] === undefined || inside(country, lat, lon)) return null;
  const slips = [
    { lat: -lat, lon },
    { lat, lon: -lon },
    { lat: -lat, lon: -lon },
    { lat: lon, lon: lat },
  ];
  return { better: slips.find(slip => inside(country, slip.lat, slip.lon)) ?? null };
}
