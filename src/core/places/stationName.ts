/** What the name of an official station says about where it is. */

import { usStates } from './usStates.ts';

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
    region: inUs ? (usStates[match?.[2] ?? ''] ?? null) : null,
    country: inUs ? 'US' : null,
  };
}

/** Postal code of a state by its name, lower case; null for other regions. */
function stateCode(region: string): string | null {
  return (
    Object.entries(usStates)
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
