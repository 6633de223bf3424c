import { readFile } from 'node:fs/promises';
import { encodeColours, type LearnedColours, learnColours } from '../../core/canopy/learned-colours.ts';
import { checkPhoto } from '../intake/check-photo.ts';
import { maskOfClearPng, partsOfPng } from '../intake/decode-picture.ts';

/** A photo file with its accepted canopy. */
export interface Lesson {
  readonly path: string;
  readonly maskPng: Uint8Array;
  readonly partsPng: Uint8Array | null;
}

/**
 * The colours that a plant's accepted photos teach together, oldest first, as core encodes them; `null` when none
 * of them can be learned from. Always learned from the first lesson on, so that the same lessons give the same.
 */
export async function learnFromFiles(lessons: readonly Lesson[]): Promise<Uint8Array | null> {
  let colours: LearnedColours | null = null;
  for (const { path, maskPng, partsPng } of lessons) {
    const checked = await checkPhoto(await readFile(path));
    if (!checked.ok) continue; // Measuring that photo says what is wrong with it.
    const { raster } = checked.upright;
    const canopy = await maskOfClearPng(maskPng);
    if (canopy.width !== raster.width || canopy.height !== raster.height) continue;
    colours = learnColours(
      colours,
      raster,
      canopy,
      partsPng === null ? {} : { parts: await partsOfPng(partsPng) },
    );
  }
  return colours && encodeColours(colours);
}
