/** Where things are on the site. Paths from its root; `href` puts the base path in front. */

import type { Form, RipeningClass } from '../../core/records/common.ts';

export function lotPath(id: string): string {
  return `/lots/${id}/`;
}

export function cultivarPath(id: string): string {
  return `/cultivars/${id}/`;
}

export const stockPath = '/stock/';

export const soldPath = '/stock/sold/';

export const orderingPath = '/ordering/';

export const searchPath = '/search/';

export const cultivarsPath = '/cultivars/';

export function flavorPath(id: string): string {
  return `${cultivarsPath}flavor/${id}/`;
}

export function ripeningPath(ripening: RipeningClass): string {
  return `${cultivarsPath}ripening/${ripening}/`;
}

export function formPath(form: Form): string {
  return `${stockPath}form/${form}/`;
}

/** The walk on the phone: for the grower, linked from nowhere. */
export const walkPath = '/walk/';

export const placesPath = '/places/';

export function placePath(id: string): string {
  return `/places/${id}/`;
}

export const howWeKnowPath = '/how-we-know/';

export const climatesPath = '/climates/';

export function climatePath(kind: string): string {
  return `${climatesPath}${kind}/`;
}

export const myPlacePath = '/my-place/';

export const comparePath = '/compare/';

export const changesPath = '/changes/';

/** When what ripens at a place. */
export function fruitYearPath(place: string): string {
  return `${placePath(place)}fruit-year/`;
}

/** Picture of a shared link: `cultivar-ID`, `guide-ID`, `video-ID` or `site`. */
export function cardPath(name: string): string {
  return `/cards/${name}.png`;
}
