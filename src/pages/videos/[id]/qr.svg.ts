/** The code for the end card of a video, as SVG. */

import type { APIRoute, GetStaticPaths, InferGetStaticPropsType } from 'astro';
import { catalogue } from '../../../content.ts';
import { absolute } from '../../../href.ts';
import { qrSvg } from '../../../outputs/qrImage.ts';
import { endCardModulePx } from '../../../outputs/qrPng.ts';
import { endCardAddress } from '../../../views/videos/videoFiles.ts';

export const getStaticPaths = (async () => {
  const { videos } = await catalogue();
  return videos.map(video => ({ params: { id: video.id }, props: { video } }));
}) satisfies GetStaticPaths;

type Props = InferGetStaticPropsType<typeof getStaticPaths>;

export const GET: APIRoute<Props> = async ({ props: { video } }) => {
  const address = endCardAddress(await catalogue(), video, absolute);
  return new Response(qrSvg(address, endCardModulePx(address)), {
    headers: { 'content-type': 'image/svg+xml' },
  });
};
