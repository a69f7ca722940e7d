/** Everything the files of a site are made from, as plain data, so that it can be handed to a worker. */

import type { Catalogue } from '../core/catalogue.ts';
import type { StockEvent } from '../core/history/event.ts';
import { type SiteLinks, siteLinks } from '../outputs/siteLinks.ts';
import type { PublishedPhoto } from '../photos.ts';
import type { PageContext, ScriptName, StylesheetName } from './page.ts';

/** Addresses of bundled files with the base path in front, by the names that pages ask for them with. */
export interface Assets {
  styles: Readonly<Record<StylesheetName | 'site', string>>;
  scripts: Readonly<Record<ScriptName | 'place', string>>;
  /** The two files of letters that pages are set in. */
  fonts: readonly string[];
}

export interface CopiedFile {
  /** Below the output folder. */
  file: string;
  /** Where its bytes are. */
  from: string;
  /** Made of nothing of the yard. */
  ofNothingWritten?: true;
}

export interface Site {
  all: Catalogue;
  /** The newest changes of the list, newest first. */
  changes: readonly StockEvent[];
  /** By the file of the original. */
  photos: ReadonlyMap<string, PublishedPhoto>;
  assets: Assets;
  /** Files that are published as they are: bundled ones, and those of public/. */
  copied: readonly CopiedFile[];
  /** Path below which the site lives, with a slash at both ends. */
  base: string;
  /** Made of a proposal, only to be looked at: search engines are asked to leave it out. */
  preview: boolean;
}

/** Links of a site: at the address of its yard, below its base path. */
export function linksOf({ all, base }: Pick<Site, 'all' | 'base'>): SiteLinks {
  return siteLinks(all.yard.address, base);
}

export function contextOf(site: Site): PageContext {
  return {
    links: linksOf(site),
    async photo(file) {
      const photo = site.photos.get(file);
      if (photo === undefined) throw new Error(`no photograph was published of ${file}`);
      return photo;
    },
  };
}
