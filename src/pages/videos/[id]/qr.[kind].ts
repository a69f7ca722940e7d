/** The code for the end card of a video, as SVG and as PNG. */

import type { APIRoute, GetStaticPaths, InferGetStaticParamsType, InferGetStaticPropsType } from 'astro';
import { catalogue } from '../../../content.ts';
import { absolute } from '../../../href.ts';
import { qrSvg } from '../../../outputs/qrImage.ts';
import { endCardModulePx, qrPng } from '../../../outputs/qrPng.ts';
import { endCardAddress } from '../../../site/pages/videos/videoFiles.ts';

const kinds = {
  svg: { type: 'image/svg+xml', draw: qrSvg },
  png: {
    type: 'image/png',
    draw: async (address: string, modulePx: number) => new Uint8Array(await qrPng(address, modulePx)),
  },
} as const;

export const getStaticPaths = (async () => {
  const { videos } = await catalogue();
  return videos.flatMap(video =>
    (Object.keys(kinds) as (keyof typeof kinds)[]).map(kind => ({
      params: { id: video.id, kind },
      props: { video },
    })),
  );
}) satisfies GetStaticPaths;

type Props = InferGetStaticPropsType<typeof getStaticPaths>;
type Params = InferGetStaticParamsType<typeof getStaticPaths>;

export const GET: APIRoute<Props, Params> = async ({ params, props: { video } }) => {
  const { type, draw } = kinds[params.kind];
  const address = endCardAddress(await catalogue(), video, absolute);
  return new Response(await draw(address, endCardModulePx(address)), { headers: { 'content-type': type } });
};
