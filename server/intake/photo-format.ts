/** Formats that the intake opens. */
export type PhotoFormat = 'jpeg' | 'png' | 'webp' | 'heic';

/** What a file is by its first bytes; its name and its sender's word are never asked. */
export type RecognisedFormat =
  | { readonly known: true; readonly format: PhotoFormat }
  | { readonly known: false; readonly what: string };

/** The brands of ISO base media files whose still picture is HEVC-coded (ISO/IEC 23008-12, annex B). */
const HEIC_BRANDS = ['heic', 'heix', 'heim', 'heis', 'hevc', 'hevx', 'mif1', 'msf1'];

/** Recognises a file by its signature. `what` words a foreign file for a sentence: "a GIF picture". */
export function recogniseFormat(bytes: Uint8Array): RecognisedFormat {
  const head = Buffer.from(bytes.buffer, bytes.byteOffset, Math.min(bytes.length, 512)).toString('latin1');
  if (head.startsWith('\xff\xd8\xff')) return { known: true, format: 'jpeg' };
  if (head.startsWith('\x89PNG\r\n\x1a\n')) return { known: true, format: 'png' };
  if (head.startsWith('RIFF') && head.slice(8, 12) === 'WEBP') return { known: true, format: 'webp' };
  if (head.slice(4, 8) === 'ftyp') {
    const brand = head.slice(8, 12);
    if (HEIC_BRANDS.includes(brand)) return { known: true, format: 'heic' };
    return { known: false, what: brand.startsWith('avi') ? 'an AVIF picture' : 'a film' };
  }
  return { known: false, what: foreignKind(head) };
}

function foreignKind(head: string): string {
  if (/^GIF8[79]a/.test(head)) return 'a GIF picture';
  if (/^(II\*\0|MM\0\*)/.test(head)) return 'a TIFF or raw camera picture';
  if (head.startsWith('%PDF-')) return 'a PDF document';
  if (head.startsWith('BM')) return 'a BMP picture';
  if (head.startsWith('PK\x03\x04')) return 'a ZIP archive';
  if (/<svg[\s>]/i.test(head)) return 'an SVG drawing';
  if (/^(\s*<|<!doctype)/i.test(head)) return 'a web page or markup text';
  if (/^[\t\n\r\x20-\x7e\x80-\xff]+$/.test(head)) return 'text';
  return 'no picture that can be read here';
}
