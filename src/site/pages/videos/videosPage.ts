/** All videos, newest first. */

import type { Catalogue } from '../../../core/catalogue.ts';
import { videosPath } from '../../addresses/videoPaths.ts';
import { html } from '../../html.ts';
import type { Page, PageContext } from '../../page.ts';
import { videoLines } from './video.ts';

export function videosPage(all: Catalogue, { links: { href } }: PageContext): Page {
  const items = videoLines(all).map(
    ({ path, title, date, summary }) => html`
      <li>
        <a href="${href(path)}">${title}</a>
        <p class="soft">${date}</p>
        <p>${summary}</p>
      </li>
    `,
  );
  return {
    title: 'Videos',
    description: `Videos of ${all.yard.name}, newest first, with what each chapter speaks of and how that stands today.`,
    path: videosPath,
    unlisted: items.length === 0,
    main: html`
      <h1>Videos</h1>
      <p class="standfirst">
        What we filmed on the benches. Each page lists the chapters, and says of every tree in them how it stands today.
      </p>
      ${items.length === 0 ? html`<p>No video has been made yet.</p>` : html`<ul class="found">${items}</ul>`}
    `,
  };
}
