/** The pages of videos, and the files beside each that its maker takes along. These hold nothing that the page does not show. */

import type { Video } from '../../../core/records/video.ts';
import { qrSvg } from '../../../outputs/qrImage.ts';
import { endCardModulePx, qrPng } from '../../../outputs/qrPng.ts';
import { videoPath, videosPath } from '../../addresses/videoPaths.ts';
import { stockInputs } from '../../inputs.ts';
import { noInputs, pageRoute, type Route } from '../../route.ts';
import { contextOf, type Site } from '../../site.ts';
import { descriptionFile, endCardAddress } from './videoFiles.ts';
import { videoPage } from './videoPage.ts';
import { videosPage } from './videosPage.ts';

function routesOf(site: Site, video: Video): Route[] {
  const { all } = site;
  const context = contextOf(site);
  const { absolute } = context.links;
  const address = endCardAddress(all, video, absolute);
  const pixels = endCardModulePx(address);
  const inputs = () => stockInputs(all);
  const codeInputs = () => address;
  return [
    pageRoute(videoPath(video.id), inputs, () => videoPage(all, video, context)),
    {
      file: `videos/${video.id}/description.txt`,
      inputs,
      make: () => descriptionFile(all, video, absolute),
    },
    { file: `videos/${video.id}/qr.svg`, inputs: codeInputs, make: () => qrSvg(address, pixels) },
    { file: `videos/${video.id}/qr.png`, inputs: codeInputs, make: () => qrPng(address, pixels) },
  ];
}

export function videoRoutes(site: Site): Route[] {
  const { all } = site;
  return [
    pageRoute(videosPath, noInputs, () => videosPage(all, contextOf(site))),
    ...all.videos.flatMap(video => routesOf(site, video)),
  ];
}
