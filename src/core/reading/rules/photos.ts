/** Rules about what photographs hold, as far as the start and end of their files tell. */

import type { Rule } from './rule.ts';

export const photoRules = {
  'photo-unreadable': {
    level: 'error',
    title: 'A photo file holds a picture in JPEG, PNG, WebP, AVIF or HEIC, whatever its name.',
    help: 'Renaming a file does not change what is in it: a TIFF picture, an SVG drawing or a text stays what it is. Open it in a picture program and export it as JPEG.',
  },
  'photo-cut-short': {
    level: 'error',
    title: 'A photo file is whole.',
    help: 'Copying that was broken off leaves a file without its end, which would show as a gray area. Copy it from the camera or telephone again.',
  },
  'photo-too-large': {
    level: 'error',
    title: 'A photo has about 200 million pixels at most.',
    help: 'A bound on the memory and time that making smaller copies takes. Photos of cameras and telephones are below it; a stitched panorama may not be.',
  },
  'photo-animated': {
    level: 'info',
    title: 'A photo is a single picture.',
    help: 'Of pictures that play one after the other, only the first is shown: movement distracts from reading.',
  },
  'photo-small': {
    level: 'warning',
    title: 'A photo has at least 480 pixels on its longer side.',
    help: 'It is shown at its own size, since enlarging would only blur it. Messengers and mail programs often send such small copies; look for the picture as the camera wrote it.',
  },
  'photo-large': {
    level: 'warning',
    title: 'Originals of photographs are no burden to the repository.',
    help: 'The site shows copies of at most 1,440 pixels in width, so an original of 6 MB or more only makes the repository slow, and git keeps it in every version for ever. npm run photos -- --shrink makes such originals smaller in their place, upright and in their colors, before they are committed.',
  },
  'photo-place': {
    level: 'info',
    title: 'Photos that hold the place where they were taken are reported, once for all of them.',
    help: 'Phones write the place into every picture. What is published are smaller copies without anything the camera wrote, so nothing needs to be done for the site. Think of it when you hand on an original.',
  },
} as const satisfies Record<string, Rule>;
