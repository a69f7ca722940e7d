/** What the name of an official station says about where it is. */

/** Postal codes of the United States (USPS Publication 28). */
const states: Readonly<Record<string, string>> = {
  AL: 'Alabama',
  AK: 'Alaska',
  AZ: 'Arizona',
  AR: 'Arkansas',
  CA: 'California',
  CO: 'Colorado',
  CT: 'Connecticut',
  DE: 'Delaware',
  DC: 'District of Columbia',
  FL: 'Florida',
  GA: 'Georgia',
  HI: 'Hawaii',
  ID: 'Idaho',
  IL: 'Illinois',
  IN: 'Indiana',
  IA: 'Iowa',
  KS: 'Kansas',
  KY: 'Kentucky',
  LA: 'Louisiana',
  ME: 'Maine',
  MD: 'Maryland',
  MA: 'Massachusetts',
  MI: 'Michigan',
  MN: 'Minnesota',
  MS: 'Mississippi',
  MO: 'Missouri',
  MT: 'Montana',
  NE: 'Nebraska',
  NV: 'Nevada',
  NH: 'New Hampshire',
  NJ: 'New Jersey',
  NM: 'New Mexico',
  NY: 'New York',
  NC: 'North Carolina',
  ND: 'North Dakota',
  OH: 'Ohio',
  OK: 'Oklahoma',
  OR: 'Oregon',
  PA: 'Pennsylvania',
  PR: 'Puerto Rico',
  RI: 'Rhode Island',
  SC: 'South Carolina',
  SD: 'South Dakota',
  TN: 'Tennessee',
  TX: 'Texas',
  UT: 'Utah',
  VT: 'Vermont',
  VA: 'Virginia',
  WA: 'Washington',
  WV: 'West Virginia',
  WI: 'Wisconsin',
  WY: 'Wyoming',
};

/** Words about the site of a station, not the name of its place. */
const siteWords =
  /\b(?:MUNI(?:CIPAL)?|INTL|INTERNATIONAL|RGNL|REGIONAL|AIRPORT|ARPT|AP|FLD|FIELD|WSO|WSFO|WFO|WB)\b/g;

export interface StationPlace {
  name: string | null;
  region: string | null;
  country: string | null;
}

/** `LEBANON MUNI AP, NH US` is Lebanon, New Hampshire, US. Nulls where the name does not say. */
export function stationPlace(agencyName: string): StationPlace {
  const match = /^(.*),\s*([A-Z]{2})(?:\s+([A-Z]{2}))?$/.exec(agencyName.trim());
  const words = (match?.[1] ?? agencyName).replace(siteWords, ' ').replace(/\s+/g, ' ').trim();
  const name = words
    .toLowerCase()
    .replace(/(^|[\s-])(\p{L})/gu, (_, before, letter) => before + letter.toUpperCase());
  const inUs = match?.[3] === 'US';
  return {
    name: name === '' ? null : name,
    region: inUs ? (states[match?.[2] ?? ''] ?? null) : null,
    country: inUs ? 'US' : null,
  };
}

/** Postal code of a state by its name, lower case; null for other regions. */
export function stateCode(region: string): string | null {
  return (
    Object.entries(states)
      .find(([, name]) => name === region)?.[0]
      .toLowerCase() ?? null
  );
}

/** Letters that stay whole when accents are taken off. */
const plainLetters: Readonly<Record<string, string>> = {
  ı: 'i',
  ø: 'o',
  ł: 'l',
  đ: 'd',
  ß: 'ss',
  æ: 'ae',
  œ: 'oe',
  þ: 'th',
};

/** The id a place gets when none is given: its name with the state or country, such as `lebanon-nh` or `adelaide-au`. */
export function placeId(name: string, region: string, country: string): string {
  const code = (country === 'US' ? stateCode(region) : null) ?? country.toLowerCase();
  const plain = name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[ıøłđßæœþ]/g, letter => plainLetters[letter] ?? '')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
  return `${plain}-${code}`;
}
