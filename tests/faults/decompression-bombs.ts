import { deflateSync } from 'node:zlib';
import { crc32 } from './crc32.ts';

/** Small files that are sound and unpack to far more than the memory of a small machine holds; all show one flat colour. */

/** A grey PNG: zeros pack to a thousandth of their length (RFC 1951; PNG 3rd edition, 11.2). */
export function pngBomb(sidePx: number): Buffer {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(sidePx, 0);
  header.writeUInt32BE(sidePx, 4);
  header[8] = 8; // bits a pixel; colour type 0 is grey
  return Buffer.concat([
    Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'),
    pngChunk('IHDR', header),
    pngChunk('IDAT', deflateSync(Buffer.alloc((sidePx + 1) * sidePx), { level: 6 })),
    pngChunk('IEND', Buffer.alloc(0)),
  ]);
}

function pngChunk(type: string, data: Buffer): Buffer {
  const named = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  const chunk = Buffer.alloc(named.length + 8);
  chunk.writeUInt32BE(data.length, 0);
  named.copy(chunk, 4);
  chunk.writeUInt32BE(crc32(named), named.length + 4);
  return chunk;
}

/**
 * A grey baseline JPEG whose Huffman tables have one code each, a single 0 bit: "no change" and "end of block". A block
 * of 8 × 8 px takes two bits, so a megabyte of zeros is 268 megapixels (ITU-T T.81, annexes B and F).
 */
export function jpegBomb(sidePx: number): Buffer {
  const oneCode = [1, ...Array(15).fill(0), 0];
  const segment = (mark: number, body: readonly number[]) => [0xff, mark, 0, body.length + 2, ...body];
  const side = [sidePx >> 8, sidePx & 0xff];
  const blocks = Math.ceil(sidePx / 8) ** 2;
  return Buffer.concat([
    Buffer.from([
      ...[0xff, 0xd8],
      ...segment(0xdb, [0, ...Array(64).fill(1)]),
      ...segment(0xc0, [8, ...side, ...side, 1, 1, 0x11, 0]),
      ...segment(0xc4, [0x00, ...oneCode]),
      ...segment(0xc4, [0x10, ...oneCode]),
      ...segment(0xda, [1, 1, 0x00, 0, 63, 0]),
    ]),
    Buffer.alloc(Math.ceil((2 * blocks) / 8)),
    Buffer.from([0xff, 0xd9]),
  ]);
}

/**
 * A lossless WebP whose five prefix codes have one symbol each, which takes no bit at all: up to 268 megapixels in 40
 * bytes, filled up with a chunk that nobody reads (RFC 9649, 3.7 and 2.7).
 */
export function webpBomb(sidePx: number, byteCount = 0): Buffer {
  const bits = [...bitsOf(0x2f, 8), ...bitsOf(sidePx - 1, 14), ...bitsOf(sidePx - 1, 14)];
  // No alpha, version 0; no transform, no colour cache, one group of codes; each code simple, one symbol of one bit, 0.
  bits.push(0, 0, 0, 0, 0, 0, 0, ...Array(5).fill([1, 0, 0, 0]).flat());
  const data = Buffer.alloc(2 * Math.ceil(bits.length / 16));
  for (const [at, bit] of bits.entries()) data[at >> 3] = (data[at >> 3] ?? 0) | (bit << (at & 7));
  const chunks = [riffChunk('VP8L', data)];
  if (byteCount > 0) chunks.push(riffChunk('fill', Buffer.alloc(byteCount & ~1)));
  return riffChunk('RIFF', Buffer.concat([Buffer.from('WEBP'), ...chunks]));
}

function bitsOf(value: number, count: number): number[] {
  return Array.from({ length: count }, (_, at) => (value >> at) & 1);
}

function riffChunk(type: string, data: Buffer): Buffer {
  const head = Buffer.alloc(8);
  head.write(type, 'latin1');
  head.writeUInt32LE(data.length, 4);
  return Buffer.concat([head, data]);
}
