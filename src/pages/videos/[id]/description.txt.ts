/** The text its maker pastes below a video. It holds nothing that the page does not show, so it may lie beside it. */

import type { APIRoute, GetStaticPaths, InferGetStaticPropsType } from 'astro';
import { catalogue } from '../../../content.ts';
import { absolute } from '../../../href.ts';
import { descriptionFile } from '../../../site/pages/videos/videoFiles.ts';

export const getStaticPaths = (async () => {
  const { videos } = await catalogue();
  return videos.map(video => ({ params: { id: video.id }, props: { video } }));
}) satisfies GetStaticPaths;

type Props = InferGetStaticPropsType<typeof getStaticPaths>;

export const GET: APIRoute<Props> = async ({ props: { video } }) =>
  new Response(descriptionFile(await catalogue(), video, absolute), {
    headers: { 'content-type': 'text/plain; charset=utf-8' },
  });
