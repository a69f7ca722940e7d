/** Chapters of videos that speak of the thing a page is about. */

import { type Html, html } from '../html.ts';
import type { Mention } from '../pages/videos/seenIn.ts';

/** Nothing where no video speaks of it. */
export function seenInVideos(mentions: readonly Mention[], href: (path: string) => string): Html {
  if (mentions.length === 0) return html``;
  const items = mentions.map(
    ({ path, chapter, video, time, date }) =>
      html`
        <li>
          <a href="${href(path)}">${chapter}</a>
          <p class="soft">${video}, at ${time}. Video of ${date}.</p>
        </li>
      `,
  );
  return html`
    <section class="unprinted" aria-labelledby="seen-in">
      <h2 id="seen-in">Seen in</h2>
      <ul class="found">${items}</ul>
    </section>
  `;
}
