/** Addresses of a site that may live below a path. */

export interface SiteLinks {
  /** A path of the site, such as `/lots/26-layer-01/`, with its base path in front. */
  href: (path: string) => string;
  /** The same with the site's own address in front: for canonical links, feeds and files others read. */
  absolute: (path: string) => string;
}

/** Links of the site at an address, below a base path. */
export function siteLinks(address: string, basePath: string): SiteLinks {
  const base = basePath.replace(/\/*$/, '/');
  const href = (path: string) => base + path.replace(/^\/+/, '');
  return { href, absolute: path => new URL(href(path), address).href };
}
