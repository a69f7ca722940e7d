/** A video: where to watch it, its chapters, and how everything they speak of stands today. */

import { oldNames } from '../../../core/addresses/earlierParts.ts';
import type { Catalogue } from '../../../core/catalogue.ts';
import { dayInWords } from '../../../core/days.ts';
import type { Video } from '../../../core/records/video.ts';
import { videoPath, videosPath } from '../../addresses/videoPaths.ts';
import { attribute, type Html, html } from '../../html.ts';
import type { Page, PageContext } from '../../page.ts';
import { crumbs } from '../../parts/crumbs.ts';
import { movedPartLines } from '../../parts/movedParts.ts';
import type { StateView } from '../../words/state.ts';
import type { LinkedThing, WayOn } from './linkedThing.ts';
import { type ChapterView, type VideoView, videoView } from './video.ts';

type Href = (path: string) => string;

const stateMark = ({ state, words }: StateView): Html => html`<span class="state ${state}">${words}</span>`;

function wayOn({ words, path, name, state, guide }: WayOn, href: Href): Html {
  return html`
    <p class="on">
      ${words} <a href="${href(path)}"${attribute('data-guide-dates', guide !== undefined && href(guide))}>${name}</a>
      ${state && stateMark(state)}
    </p>
  `;
}

/** What a chapter links to, each with its present state and the way on. */
/** A note whose price gives way where the yard does not send. */
function noteHtml(note: string, priced = ''): Html {
  const at = priced === '' ? -1 : note.indexOf(priced);
  if (at < 0) return html`${note}`;
  return html`${note.slice(0, at)}<span data-priced>${priced}</span>${note.slice(at + priced.length)}`;
}

function thingItem({ kind, name, path, state, note, priced, on }: LinkedThing, href: Href): Html {
  return html`
    <li>
      <p class="name">
        <span class="kind">${kind}</span> ${path === null ? name : html`<a href="${href(path)}">${name}</a>`}
      </p>
      <div>
        ${state && html`<p>${stateMark(state)}</p>`}
        ${note !== '' && html`<p class="soft">${noteHtml(note, priced)}</p>`}
        ${on.map(way => wayOn(way, href))}
      </div>
    </li>
  `;
}

/** `names` are those by which links of before know the chapter. */
function chapterItem({ id, time, title, things }: ChapterView, names: readonly string[], href: Href): Html {
  const items = things.map(thing => thingItem(thing, href));
  return html`
    <li id="${id}">
      <h3>
        ${names.map(name => html`<span id="${name}"></span>`)}
        <a class="time" href="#${id}">${time}</a> <span>${title}</span>
      </h3>
      ${items.length > 0 && html`<ul class="things">${items}</ul>`}
    </li>
  `;
}

function watchButton({ address, at }: NonNullable<VideoView['watch']>): Html {
  return html`<p class="buttons unprinted"><a class="button" href="${address}">Watch it at ${at}</a></p>`;
}

export function videoPage(all: Catalogue, video: Video, { links }: PageContext): Page {
  const { date, summary, watch, chapters } = videoView(all, video);
  const path = videoPath(video.id);
  const { here, elsewhere } = oldNames(
    all.earlierParts.get(path),
    path,
    new Set(chapters.map(({ id }) => id)),
  );
  return {
    title: video.title,
    description: `${summary} A video of ${all.yard.name}, ${date}.`,
    path,
    card: { name: `video-${video.id}`, alt: video.title },
    styles: ['videos'],
    main: html`
      ${crumbs([{ path: videosPath, name: 'Videos' }], video.title, links)}
      <h1>${video.title} <span class="kind">video</span></h1>
      <p class="standfirst">${summary}</p>
      <p>
        Published <time datetime="${video.date}">${date}</time>. Trees, prices and dates below are those of ${dayInWords(all.asOf)}.
      </p>
      ${watch && watchButton(watch)}
      <section aria-labelledby="chapters">
        <h2 id="chapters">Chapters</h2>
        <ol class="chapters">
          ${chapters.map(chapter => chapterItem(chapter, here.get(chapter.id) ?? [], links.href))}
        </ol>
      </section>
      ${movedPartLines(elsewhere, links)}
    `,
  };
}
