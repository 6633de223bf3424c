import type { CheckedPhoto } from '../intake/check-photo.ts';

/** Each holds up to 8 MB. */
const MOST_HELD = 3;

/** Photos that came in just now, still unpacked: measured next, they need not be unpacked again. */
export interface FreshPhotos {
  hold(path: string, photo: CheckedPhoto): void;
  /** Gives a photo away once; `undefined` when it is not held. */
  take(path: string): CheckedPhoto | undefined;
}

/** The newest few by the path of their original. What is not asked for gives way to newer ones. */
export function freshPhotos(): FreshPhotos {
  const held = new Map<string, CheckedPhoto>();
  return {
    hold(path, photo) {
      held.delete(path);
      held.set(path, photo);
      const oldest = held.keys().next();
      if (held.size > MOST_HELD && !oldest.done) held.delete(oldest.value);
    },
    take(path) {
      const photo = held.get(path);
      held.delete(path);
      return photo;
    },
  };
}
