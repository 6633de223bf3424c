/** CRC-32 as PNG uses it (PNG 3rd edition, annex D); Node 20 has none. */
export function crc32(bytes: Uint8Array): number {
  let remainder = 0xffffffff;
  for (const byte of bytes) {
    remainder ^= byte;
    for (let bit = 0; bit < 8; bit += 1) {
      remainder = remainder & 1 ? (remainder >>> 1) ^ 0xedb88320 : remainder >>> 1;
    }
  }
  return (remainder ^ 0xffffffff) >>> 0;
}
