/** What looks up towns, fetched when it is first asked for. */

import lookUrl from '../town/lookApart.ts?worker&url';

export async function townLook(): Promise<typeof globalThis.leafdropLook> {
  await import(/* @vite-ignore */ lookUrl);
  return globalThis.leafdropLook;
}
