/** Rules about guides, videos and the text of records. */

import type { Rule } from './rule.ts';

export const textRules = {
  'guide-species': {
    level: 'error',
    title: 'A guide is for species that have a file.',
    help: 'The values are names of files in content/species without their ending. An empty list means all species.',
  },
  'video-link': {
    level: 'error',
    title: 'A chapter links to something that exists.',
    help: 'A link is cultivar:, lot:, guide: or place: and an id. A lot that is sold may be linked: the page of the video says so and offers the way on.',
  },
  'video-part': {
    level: 'error',
    title: 'A part of a guide that a chapter links to is one of its headings.',
    help: 'The name behind # is the heading in lower-case letters with hyphens between the words: "Before winter" is before-winter. When a heading is reworded its name changes, and links to it with it.',
  },
  'video-part-place': {
    level: 'error',
    title: 'Where a chapter names a place, the guide of that place has the part the chapter links to.',
    help: 'A chapter that links to a part of a guide and to a place leads to the guide of that place. Parts that its calendar or its climate does not ask for are left out there, so the link would open the guide at its top.',
  },
  'video-start': {
    level: 'error',
    title: 'The first chapter starts with the video.',
    help: 'Players take chapters out of the text below a video only when the first stands at 0:00.',
  },
  'video-chapters': {
    level: 'error',
    title: 'Chapters follow one another in time.',
    help: 'Each chapter starts after the one above it.',
  },
  'video-players': {
    level: 'warning',
    title: 'A video has three chapters or more, each of ten seconds or more.',
    help: 'Most players list the chapters of a description only then. The site shows them whatever their number and length.',
  },
  'video-same-day': {
    level: 'warning',
    title: 'Two videos do not share a date.',
    help: 'Videos are listed newest first; those of one day in the order of their file names. It may be right; a date copied from another file is the usual slip.',
  },
  'video-description': {
    level: 'error',
    title: 'The text to paste below a video is not longer than its host takes.',
    help: 'The text is made of the title, the summary, the chapters, the addresses of what they link to and the cautions that are due. The limit is video_description_limit in yard.yaml. Nothing is left out to make it fit, since nobody would notice what.',
  },
  'photo-missing': {
    level: 'error',
    title: 'A photo that is named is in content/photos.',
    help: 'Names must match letter by letter, with capitals and ending.',
  },
  'photo-type': {
    level: 'error',
    title: 'A photo is JPEG, PNG, WebP, AVIF or HEIC.',
    help: 'Other kinds cannot be made smaller for the web here. Export the picture as JPEG.',
  },
  'markdown-html': {
    level: 'error',
    title: 'Text has no HTML tags.',
    help: 'Tags would be published as they are, scripts included. Use Markdown: *emphasis*, **strong**, - lists, [links](https://...).',
  },
  'markdown-link': {
    level: 'error',
    title: 'Links lead to web pages, mail addresses or pages of this site.',
    help: "A link starts with https://, http://, mailto:, / or #, or is a plain relative address. Other kinds could run a script in the reader's browser.",
  },
  'link-nowhere': {
    level: 'error',
    title: 'A link inside the site leads to a page that is there.',
    help: 'Links are written from the root of the site, such as /cultivars/some-name/ or /guides/some-guide/#heading, and work below any path. A page that was renamed may still be linked by its old address, which the address list leads on.',
  },
  'link-part': {
    level: 'error',
    title: 'A link to a part of a page names a part that the page has.',
    help: 'The name behind # is a heading in small letters with hyphens between the words, or t- and the seconds at which a chapter of a video starts. When a heading is reworded its name changes.',
  },
  'markdown-image': {
    level: 'error',
    title: 'Pictures are named in photos, not in the text.',
    help: 'A picture in the text would be published as it is, place data included. Put the file in content/photos and name it under photos in the front matter, with a description.',
  },
  'markdown-depth': {
    level: 'error',
    title: 'Blocks of text are nested a few levels deep at most.',
    help: 'Quotes, lists and blocks inside one another beyond twenty levels are a slip, such as a long line of dashes with spaces, or a table pasted with its indentation.',
  },
  'markdown-directive': {
    level: 'error',
    title: 'Only known directives are used.',
    help: 'A word straight behind a colon, as in :note, is a directive, and one that nobody knows would make its text vanish. Put a space behind the colon, or a backslash before it.',
  },
} as const satisfies Record<string, Rule>;
