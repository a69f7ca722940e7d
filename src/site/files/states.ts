/** Outlines of the United States, one file for all maps. Lines take the color of the page that uses them. */

import { MAP_HEIGHT, MAP_WIDTH, usOutlines } from '../drawing/usMap.ts';

export function statesFile(): string {
  const { land, borders } = usOutlines();
  const path = (d: string, rest: string) =>
    `<path d="${d}" fill="none" stroke="currentColor" vector-effect="non-scaling-stroke" ${rest}/>`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${MAP_WIDTH} ${MAP_HEIGHT}"><g id="states">`,
    path(land, 'stroke-width="1"'),
    path(borders, 'stroke-width="1" stroke-opacity="0.35"'),
    '</g></svg>',
  ].join('');
}
