/** The files beside the page of a video that its maker takes along. They hold nothing that the page does not show. */

import { qrSvg } from '../../../outputs/qrImage.ts';
import { endCardModulePx, qrPng } from '../../../outputs/qrPng.ts';
import { stockInputs } from '../../inputs.ts';
import type { Route } from '../../route.ts';
import { linksOf, type Site } from '../../site.ts';
import { descriptionFile, endCardAddress } from './videoFiles.ts';

export function videoRoutes(site: Site): Route[] {
  const { all } = site;
  const { absolute } = linksOf(site);
  return all.videos.flatMap(video => {
    const address = endCardAddress(all, video, absolute);
    const pixels = endCardModulePx(address);
    const inputs = () => address;
    return [
      {
        file: `videos/${video.id}/description.txt`,
        inputs: () => stockInputs(all),
        make: () => descriptionFile(all, video, absolute),
      },
      { file: `videos/${video.id}/qr.svg`, inputs, make: () => qrSvg(address, pixels) },
      { file: `videos/${video.id}/qr.png`, inputs, make: () => qrPng(address, pixels) },
    ];
  });
}
