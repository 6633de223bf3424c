import { type KeptPhoto, keptDatabase } from './kept-database.ts';

/** On the disk when it resolves, as far as the browser can promise that. */
const ON_DISK = { durability: 'strict' } as const;

/** Keeps a photo with its bytes, both or neither. */
export async function keepPhoto(photo: KeptPhoto, bytes: ArrayBuffer): Promise<void> {
  const database = await keptDatabase();
  const change = database.transaction(['photos', 'bytes'], 'readwrite', ON_DISK);
  await Promise.all([
    change.objectStore('photos').put(photo),
    change.objectStore('bytes').put(bytes, photo.key),
    change.done,
  ]);
}

/** The photos that wait on this device, in the order chosen. */
export async function keptPhotos(): Promise<KeptPhoto[]> {
  const photos = await (await keptDatabase()).getAll('photos');
  return photos.sort((a, b) => a.chosenAtMs - b.chosenAtMs);
}

/** Its bytes; `null` when it is no longer kept: another page may have sent it. */
export async function keptBytes(key: string): Promise<ArrayBuffer | null> {
  return (await (await keptDatabase()).get('bytes', key)) ?? null;
}

/** Notes how sending went; a photo that is no longer kept stays gone. */
export async function noteTrouble(key: string, change: Pick<KeptPhoto, 'tries' | 'trouble'>): Promise<void> {
  const { store, done } = (await keptDatabase()).transaction('photos', 'readwrite', ON_DISK);
  const photo = await store.get(key);
  if (photo) await store.put({ ...photo, ...change });
  await done;
}

export async function letPhotoGo(key: string): Promise<void> {
  const database = await keptDatabase();
  const change = database.transaction(['photos', 'bytes'], 'readwrite', ON_DISK);
  await Promise.all([
    change.objectStore('photos').delete(key),
    change.objectStore('bytes').delete(key),
    change.done,
  ]);
}
