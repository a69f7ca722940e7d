/**
 * Climate regions of the United States by state, to group a long list. Source: the nine regions of Karl and Koss 1984 (NOAA National
 * Climatic Data Center, Historical Climatology Series 4-3), as NOAA still uses them; Alaska and Hawaii stand alone.
 */
const statesOf: Readonly<Record<string, readonly string[]>> = {
  Northeast: [
    'Connecticut',
    'Delaware',
    'District of Columbia',
    'Maine',
    'Maryland',
    'Massachusetts',
    'New Hampshire',
    'New Jersey',
    'New York',
    'Pennsylvania',
    'Rhode Island',
    'Vermont',
  ],
  Southeast: ['Alabama', 'Florida', 'Georgia', 'North Carolina', 'South Carolina', 'Virginia'],
  'Ohio Valley': ['Illinois', 'Indiana', 'Kentucky', 'Missouri', 'Ohio', 'Tennessee', 'West Virginia'],
  'Upper Midwest': ['Iowa', 'Michigan', 'Minnesota', 'Wisconsin'],
  South: ['Arkansas', 'Kansas', 'Louisiana', 'Mississippi', 'Oklahoma', 'Texas'],
  'Northern Rockies and Plains': ['Montana', 'Nebraska', 'North Dakota', 'South Dakota', 'Wyoming'],
  Southwest: ['Arizona', 'Colorado', 'New Mexico', 'Utah'],
  Northwest: ['Idaho', 'Oregon', 'Washington'],
  West: ['California', 'Nevada'],
  Alaska: ['Alaska'],
  Hawaii: ['Hawaii'],
};

/** The regions in the order of the list, east to west. */
export const usRegions: readonly string[] = Object.keys(statesOf);

/** Climate region of a state by its full name; null for other text. */
export function usRegionOf(state: string): string | null {
  return usRegions.find(region => statesOf[region]?.includes(state)) ?? null;
}
