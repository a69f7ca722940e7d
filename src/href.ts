/** Links that hold under any base path. Every link of the site is made here. */

/** The base path with exactly one slash at its end. */
const base = import.meta.env.BASE_URL.replace(/\/*$/, '/');

/** A link to a path of this site, such as `/lots/l26-01/`. */
export function href(path: string): string {
  return base + path.replace(/^\/+/, '');
}

/** The same with the site's own address in front: for canonical links, feeds and files others read. */
export function absolute(path: string): string {
  return new URL(href(path), import.meta.env.SITE).href;
}
