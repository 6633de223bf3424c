import type { PhotoFormat } from './photo-format.ts';

/**
 * Whether a file reaches to where its own headers say it ends; `false` for one whose copying stopped half-way.
 *
 * JPEG tells no length: its decoder notices a missing end by itself.
 */
export function isWholeFile(bytes: Uint8Array, format: PhotoFormat): boolean {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  switch (format) {
    case 'jpeg':
      return true;
    case 'png':
      return pngIsWhole(view);
    case 'webp':
      return view.byteLength >= 12 && 8 + view.getUint32(4, true) <= view.byteLength;
    case 'heic':
      return heicIsWhole(view);
  }
}

/** Walks the chunks to the closing IEND (PNG 3rd edition, 5.3). */
function pngIsWhole(view: DataView): boolean {
  let offset = 8;
  while (offset + 12 <= view.byteLength) {
    if (view.getUint32(offset + 4) === 0x49454e44) return true;
    offset += 12 + view.getUint32(offset);
  }
  return false;
}

/**
 * Walks the top-level boxes (ISO/IEC 14496-12, 4.2) until both the facts and the coded picture are there whole;
 * phones append more behind them. Half a HEIC decodes to a half-grey picture without an error.
 */
function heicIsWhole(view: DataView): boolean {
  const wanted = new Set(['meta', 'mdat']);
  let offset = 0;
  while (wanted.size > 0) {
    if (offset + 16 > view.byteLength) return false;
    let size = view.getUint32(offset);
    if (size === 0) return true; // The last box runs to the end of the file.
    if (size === 1) size = Number(view.getBigUint64(offset + 8));
    if (size < 8 || offset + size > view.byteLength) return false;
    wanted.delete(boxType(view, offset + 4));
    offset += size;
  }
  return true;
}

function boxType(view: DataView, offset: number): string {
  return String.fromCharCode(...[0, 1, 2, 3].map((at) => view.getUint8(offset + at)));
}
