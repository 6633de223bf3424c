import { plantJpeg, turnedHeic } from '../server/fixtures/photos.ts';
import { drawPlant } from '../server/fixtures/synthetic-plant.ts';
import { crc32 } from './crc32.ts';

/** A file that must be refused, and the words that its sentence must hold. */
export interface BadFile {
  readonly what: string;
  readonly name: string;
  readonly type?: string;
  readonly bytes: () => Promise<Uint8Array> | Uint8Array;
  readonly sentence: string;
}

const half = (bytes: Buffer): Buffer => bytes.subarray(0, bytes.length >> 1);
const WANTED = 'whatever its name says. Send the photo as JPEG, PNG, WebP or HEIC.';
const CUT_OFF =
  'The photo ends too early: copying it stopped half-way. Copy it from the camera or phone again.';
const BROKEN = 'The photo is damaged and cannot be opened. Copy it from the camera or phone again.';

export const BAD_FILES: readonly BadFile[] = [
  {
    what: 'an empty file',
    name: 'empty.jpg',
    bytes: () => new Uint8Array(),
    sentence: 'The file is empty. Copy the photo from the camera or phone again.',
  },
  {
    what: 'text named .jpg',
    name: 'text.jpg',
    bytes: () => Buffer.from('Dear diary, the Bramble has a bud.'),
    sentence: `This file is text, ${WANTED}`,
  },
  {
    what: 'an SVG named .jpg and sent as a JPEG',
    name: 'svg.jpg',
    type: 'image/jpeg',
    bytes: () => Buffer.from('<?xml version="1.0"?><svg xmlns="http://www.w3.org/2000/svg"/>'),
    sentence: `This file is an SVG drawing, ${WANTED}`,
  },
  {
    what: 'a web page named .jpg',
    name: 'page.jpg',
    bytes: () => Buffer.from('<!doctype html><title>x</title>'),
    sentence: `This file is a web page or markup text, ${WANTED}`,
  },
  {
    what: 'a GIF named .jpg',
    name: 'plant.jpg',
    bytes: () => drawPlant({ width: 300, height: 300 }).gif().toBuffer(),
    sentence: `This file is a GIF picture, ${WANTED}`,
  },
  {
    what: 'a TIFF',
    name: 'plant.tif',
    bytes: () => drawPlant({ width: 300, height: 300 }).tiff().toBuffer(),
    sentence: `This file is a TIFF or raw camera picture, ${WANTED}`,
  },
  {
    what: 'an AVIF',
    name: 'plant.heic',
    bytes: () => drawPlant({ width: 300, height: 300 }).avif({ effort: 0 }).toBuffer(),
    sentence: `This file is an AVIF picture, ${WANTED}`,
  },
  {
    what: 'a PDF named .jpg',
    name: 'plant.jpg',
    bytes: () => Buffer.from('%PDF-1.7\n%âãÏÓ\n'),
    sentence: `This file is a PDF document, ${WANTED}`,
  },
  {
    what: 'a ZIP archive',
    name: 'photos.zip',
    bytes: () => Buffer.from('PK\x03\x04 and so on', 'latin1'),
    sentence: `This file is a ZIP archive, ${WANTED}`,
  },
  {
    what: 'a film',
    name: 'film.heic',
    bytes: () => Buffer.from('\0\0\0\x18ftypmp42\0\0\0\0mp42isom', 'latin1'),
    sentence: `This file is a film, ${WANTED}`,
  },
  {
    what: 'noise',
    name: 'noise.jpg',
    bytes: () => Uint8Array.from({ length: 5000 }, (_, at) => (at * 7919) % 251),
    sentence: `This file is no picture that can be read here, ${WANTED}`,
  },
  { what: 'half a JPEG', name: 'half.jpg', bytes: async () => half(await plantJpeg()), sentence: CUT_OFF },
  {
    what: 'the first bytes of a JPEG',
    name: 'head.jpg',
    bytes: async () => (await plantJpeg()).subarray(0, 20),
    sentence: CUT_OFF,
  },
  {
    what: 'half a PNG',
    name: 'half.png',
    bytes: async () => half(await drawPlant({ width: 400, height: 300 }).png().toBuffer()),
    sentence: CUT_OFF,
  },
  {
    what: 'half a WebP',
    name: 'half.webp',
    bytes: async () => half(await drawPlant({ width: 400, height: 300 }).webp().toBuffer()),
    sentence: CUT_OFF,
  },
  { what: 'half a HEIC', name: 'half.heic', bytes: () => half(turnedHeic()), sentence: CUT_OFF },
  {
    what: 'a PNG with a hole in its pixels',
    name: 'hole.png',
    bytes: async () => {
      const png = await drawPlant({ width: 400, height: 300 }).png().toBuffer();
      return png.fill(0, 100, 400);
    },
    sentence: BROKEN,
  },
  {
    what: 'a HEIC with its coded picture wiped out',
    name: 'hole.heic',
    bytes: () => {
      const heic = turnedHeic();
      return heic.fill(0, heic.indexOf('mdat') + 4);
    },
    sentence: BROKEN,
  },
  {
    what: 'a small PNG that unpacks to more than the memory holds',
    name: 'bomb.png',
    bytes: async () => claimedSize(await drawPlant({ width: 300, height: 300 }).png().toBuffer(), 60_000),
    sentence:
      'The picture has more than 64 megapixels. Send the photo as the camera took it, or reduce it first.',
  },
  {
    what: 'one pixel',
    name: 'dot.png',
    bytes: () => drawPlant({ width: 1, height: 1 }).png().toBuffer(),
    sentence:
      'The picture is only 1 × 1 pixels. Send the photo at the size the camera took it; at least 200 pixels on the shorter side.',
  },
  {
    what: 'a strip',
    name: 'strip.jpg',
    bytes: () => drawPlant({ width: 1200, height: 120 }).jpeg().toBuffer(),
    sentence:
      'The picture is only 1200 × 120 pixels. Send the photo at the size the camera took it; at least 200 pixels on the shorter side.',
  },
];

/** The PNG with another size in its header, its checksum made right again (PNG 3rd edition, 11.2.1). */
function claimedSize(png: Buffer, sidePx: number): Buffer {
  const claimed = Buffer.from(png);
  claimed.writeUInt32BE(sidePx, 16);
  claimed.writeUInt32BE(sidePx, 20);
  claimed.writeUInt32BE(crc32(claimed.subarray(12, 29)), 29);
  return claimed;
}
