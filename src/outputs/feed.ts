/**
 * What changed on the list, for programs that look in now and then: Atom (RFC 4287) and JSON Feed 1.1 (jsonfeed.org/version/1.1). Days come
 * from the records, never from a clock: the same changes give the same bytes.
 */

import type { Day } from '../core/days.ts';
import { xmlElement } from './xml.ts';

export interface FeedEntry {
  /** Names the entry for ever. */
  id: string;
  title: string;
  day: Day;
  /** The page it is about. */
  url: string;
  /** One or two sentences. */
  summary: string;
  /** Everything, as HTML. */
  html: string;
  /** What kind of change it is, in a word. */
  tag: string;
}

export interface Feed {
  /** Names the feed for ever, also when the site moves. */
  id: string;
  title: string;
  subtitle: string;
  /** The yard. */
  author: string;
  home: string;
  /** The page that shows the same. */
  page: string;
  atom: string;
  json: string;
  /** Newest first. */
  entries: readonly FeedEntry[];
}

/** A feed has to name a day even when nothing has ever changed. */
const before = '1970-01-01';

/** RFC 3339: a day of the records is told as its first moment. */
const moment = (day: string) => `${day}T00:00:00Z`;

function atomEntry({ id, title, day, url, summary, html, tag }: FeedEntry): string {
  return [
    '<entry>',
    xmlElement('id', {}, id),
    xmlElement('title', {}, title),
    xmlElement('updated', {}, moment(day)),
    xmlElement('published', {}, moment(day)),
    xmlElement('link', { rel: 'alternate', type: 'text/html', href: url }),
    xmlElement('category', { term: tag }),
    xmlElement('summary', {}, summary),
    xmlElement('content', { type: 'html' }, html),
    '</entry>',
  ].join('\n');
}

/** The feed as an Atom document. */
export function atomFeed({ id, title, subtitle, author, page, atom, entries }: Feed): string {
  return [
    '<?xml version="1.0" encoding="utf-8"?>',
    '<feed xmlns="http://www.w3.org/2005/Atom" xml:lang="en">',
    xmlElement('id', {}, id),
    xmlElement('title', {}, title),
    xmlElement('subtitle', {}, subtitle),
    xmlElement('updated', {}, moment(entries[0]?.day ?? before)),
    `<author>${xmlElement('name', {}, author)}</author>`,
    xmlElement('link', { rel: 'self', type: 'application/atom+xml', href: atom }),
    xmlElement('link', { rel: 'alternate', type: 'text/html', href: page }),
    ...entries.map(atomEntry),
    '</feed>\n',
  ].join('\n');
}

export interface JsonFeed {
  version: 'https://jsonfeed.org/version/1.1';
  title: string;
  description: string;
  home_page_url: string;
  feed_url: string;
  language: 'en';
  authors: { name: string; url: string }[];
  items: {
    id: string;
    url: string;
    title: string;
    summary: string;
    content_html: string;
    date_published: string;
    tags: string[];
  }[];
}

/** The feed as JSON Feed 1.1. */
export function jsonFeed({ title, subtitle, author, home, page, json, entries }: Feed): JsonFeed {
  return {
    version: 'https://jsonfeed.org/version/1.1',
    title,
    description: subtitle,
    home_page_url: page,
    feed_url: json,
    language: 'en',
    authors: [{ name: author, url: home }],
    items: entries.map(entry => ({
      id: entry.id,
      url: entry.url,
      title: entry.title,
      summary: entry.summary,
      content_html: entry.html,
      date_published: moment(entry.day),
      tags: [entry.tag],
    })),
  };
}
