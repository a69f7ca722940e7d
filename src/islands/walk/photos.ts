/** Photographs taken on a walk, one for each lot, kept on the device until they are shared: they are too large for the storage of texts. */

import { href } from '../../href.ts';

export interface KeptPicture {
  lot: string;
  picture: Blob;
}

const name = `leafdrop-walk:${href('/')}`;
const store = 'photos';

function finished<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

async function opened(mode: IDBTransactionMode): Promise<IDBObjectStore> {
  const request = indexedDB.open(name, 1);
  request.onupgradeneeded = () => request.result.createObjectStore(store, { keyPath: 'lot' });
  return (await finished(request)).transaction(store, mode).objectStore(store);
}

/** Keeps the photograph of a lot in the place of an earlier one; false where the browser keeps none. */
export async function keepPhoto(lot: string, picture: Blob): Promise<boolean> {
  try {
    await finished((await opened('readwrite')).put({ lot, picture } satisfies KeptPicture));
    return true;
  } catch {
    return false;
  }
}

/** Whether the photograph of a lot is kept, without reading it. */
export async function hasPhoto(lot: string): Promise<boolean> {
  try {
    return (await finished((await opened('readonly')).count(lot))) > 0;
  } catch {
    return false;
  }
}

export async function photosOf(): Promise<KeptPicture[]> {
  try {
    return await finished<KeptPicture[]>((await opened('readonly')).getAll());
  } catch {
    return [];
  }
}

export async function clearPhotos(): Promise<void> {
  try {
    await finished((await opened('readwrite')).clear());
  } catch {
    // Nothing was kept.
  }
}
