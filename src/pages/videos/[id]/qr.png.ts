/** The code for the end card of a video, as PNG. */

import type { APIRoute, GetStaticPaths, InferGetStaticPropsType } from 'astro';
import { catalogue } from '../../../content.ts';
import { absolute } from '../../../href.ts';
import { endCardModulePx, qrPng } from '../../../outputs/qrPng.ts';
import { endCardAddress } from '../../../views/videos/videoFiles.ts';

export const getStaticPaths = (async () => {
  const { videos } = await catalogue();
  return videos.map(video => ({ params: { id: video.id }, props: { video } }));
}) satisfies GetStaticPaths;

type Props = InferGetStaticPropsType<typeof getStaticPaths>;

export const GET: APIRoute<Props> = async ({ props: { video } }) => {
  const address = endCardAddress(await catalogue(), video, absolute);
  const bytes = await qrPng(address, endCardModulePx(address));
  return new Response(new Uint8Array(bytes), { headers: { 'content-type': 'image/png' } });
};
