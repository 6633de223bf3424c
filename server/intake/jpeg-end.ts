/** Bytes after 0xFF that belong to the coded pixels: a stuffed zero, and the eight restart marks. */
const isInsidePixels = (mark: number): boolean => mark === 0x00 || (mark >= 0xd0 && mark <= 0xd7);
const END_OF_IMAGE = 0xd9;
const START_OF_SCAN = 0xda;

/**
 * Where the picture of a JPEG file ends: the offset behind its end mark; `null` when it has none.
 *
 * Notes: segments are leapt over by their lengths, so an end mark of the thumbnail within them is not taken for the
 * picture's; phones put films and second pictures behind it.
 *
 * Reference: ITU-T T.81 (1992), annex B.1.1 and B.2.
 */
export function jpegEnd(bytes: Uint8Array): number | null {
  const file = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let at = 2;
  while (at + 1 < file.length) {
    if (file[at] !== 0xff) {
      at = nextMark(file, at);
      continue;
    }
    const mark = file[at + 1] as number;
    if (mark === END_OF_IMAGE) return at + 2;
    // 0xFF may be repeated before a mark.
    if (mark === 0xff) at += 1;
    else {
      if (at + 4 > file.length) return null;
      at += 2 + file.readUInt16BE(at + 2);
      if (mark === START_OF_SCAN) at = behindPixels(file, at);
    }
  }
  return null;
}

/** Bytes between two segments are passed over, as decoders do. */
function nextMark(file: Buffer, from: number): number {
  const at = file.indexOf(0xff, from);
  return at < 0 ? file.length : at;
}

/** The next mark that is not within coded pixels; bytes before it that a camera padded with are passed over. */
function behindPixels(file: Buffer, from: number): number {
  let at = file.indexOf(0xff, from);
  while (at >= 0 && at + 1 < file.length && isInsidePixels(file[at + 1] as number)) {
    at = file.indexOf(0xff, at + 2);
  }
  return at < 0 ? file.length : at;
}

/** A JPEG with its end mark in place, and what was odd about it, for the report's `notes`. */
export function withEndMark(bytes: Uint8Array): { bytes: Uint8Array; notes: string[] } {
  const end = jpegEnd(bytes);
  if (end === null) {
    // Should more than the mark be missing, the decoder finds too few pixels before it.
    return {
      bytes: Buffer.concat([bytes, Buffer.from([0xff, END_OF_IMAGE])]),
      notes: ['The file lacks its end mark, as some cameras leave it out; the picture itself is whole.'],
    };
  }
  if (end === bytes.length) return { bytes, notes: [] };
  return {
    bytes: bytes.subarray(0, end),
    notes: [
      'The file holds more behind the picture, as phones add a film or a second picture; only the picture was measured.',
    ],
  };
}
