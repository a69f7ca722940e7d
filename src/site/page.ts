/** What a page of the site is before the base layout is put around it. Pages are pure functions from the catalogue to this. */

import type { SiteLinks } from '../outputs/siteLinks.ts';
import type { PageThing } from '../outputs/structuredData.ts';
import type { PublishedPhoto } from '../photos.ts';
import type { Html } from './html.ts';

/** Scripts that pages ask for by name. The one by which a page follows the visitor's place stands on every page without being asked for. */
export type ScriptName = 'notFound' | 'orderList' | 'compare' | 'search' | 'choosePlace' | 'walk';

/** Stylesheets beside the one that all pages share. Those that end in `Print` hold for paper alone. */
export type StylesheetName =
  | 'choosePlace'
  | 'compare'
  | 'evidence'
  | 'fruitYear'
  | 'guidePrint'
  | 'home'
  | 'lotPrint'
  | 'place'
  | 'guideSheet'
  | 'ordering'
  | 'placeList'
  | 'search'
  | 'videos'
  | 'walk';

/** Pixels of the picture of a shared link: the size that services crop least. Common practice, no source. */
export const CARD_WIDTH = 1200;
export const CARD_HEIGHT = 630;

/** Lets the site be put on the home screen. W3C Web Application Manifest. */
export const siteManifestPath = '/site.webmanifest';

export interface Page {
  /** Heading of the page, as its head names it; null on the first page, whose title is the yard. */
  title: string | null;
  /** One or two sentences for search engines. */
  description: string;
  /** From the root of the site, such as `/lots/26-layer-01/`; null for the page that stands in for missing ones. */
  path: string | null;
  /** Path of the page this one is a version of, which search engines are sent to; itself where left out. */
  canonical?: string;
  /** Measures that readers of the page see first; those of the United States where left out. */
  units?: 'us' | 'metric';
  /** For the grower alone: without the place of a visitor. */
  forGrower?: boolean;
  /** Keeps the page out of search engines. */
  unlisted?: boolean;
  /** Picture of a link to the page where it is shared, by its name, with what it shows in words; that of the yard where left out. */
  card?: { name: string; alt: string };
  /** Path of the manifest that lets the page be put on the home screen. */
  manifest?: string;
  /** Tells feed readers where the changes of the list are to be had. */
  feeds?: boolean;
  /** What the page says to programs that read schema.org; null for what it has nothing to say about. */
  things?: readonly (PageThing | null)[];
  scripts?: readonly ScriptName[];
  styles?: readonly StylesheetName[];
  /** The sheet that pages share; guides have one of their own, so that their first view is soon there. */
  sheet?: 'guideSheet';
  /** All that stands between the running head and the foot. */
  main: Html;
}

/** What pages ask of the site around them. */
export interface PageContext {
  links: SiteLinks;
  /** A photograph by its file, in the widths and formats it is published in. */
  photo: (file: string) => Promise<PublishedPhoto>;
}
