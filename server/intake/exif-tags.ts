import readExif from 'exif-reader';

/** The tags of an EXIF block; `null` when there is none that can be read. */
export function exifTags(exifBlock: Uint8Array | null | undefined): ReturnType<typeof readExif> | null {
  if (!exifBlock) return null;
  try {
    return readExif(Buffer.from(exifBlock.buffer, exifBlock.byteOffset, exifBlock.byteLength));
  } catch {
    return null; // A broken EXIF block says nothing; the picture beside it may still be fine.
  }
}
