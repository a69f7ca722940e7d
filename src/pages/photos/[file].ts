/** The published copies of the photographs that pages show. */

import type { APIContext } from 'astro';
import { catalogue } from '../../content.ts';
import { photo, photoCopy } from '../../photos.ts';
import { photoFiles } from '../../site/parts/photoFiles.ts';

export async function getStaticPaths() {
  const published = await Promise.all(photoFiles(await catalogue()).map(photo));
  const names = new Set(published.flatMap(({ names: copies }) => copies));
  return [...names].map(file => ({ params: { file } }));
}

export async function GET({ params }: APIContext): Promise<Response> {
  const { bytes, type } = await photoCopy(params.file ?? '');
  return new Response(bytes, { headers: { 'Content-Type': type } });
}
