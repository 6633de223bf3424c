const HEADER_BYTES = 128;
const TAG_BYTES = 12;

/**
 * Whether an ICC colour profile can be read: its signature, its length and where its tags lie. One that cannot is passed
 * over in silence by the decoder.
 *
 * Reference: ICC.1:2022, 7.2 (header) and 7.3 (tag table).
 */
export function isReadableProfile(profile: Uint8Array): boolean {
  const view = new DataView(profile.buffer, profile.byteOffset, profile.byteLength);
  if (view.byteLength < HEADER_BYTES + 4) return false;
  if (view.getUint32(36) !== 0x61637370 || view.getUint32(0) > view.byteLength) return false; // 'acsp'
  const tags = view.getUint32(HEADER_BYTES);
  if (HEADER_BYTES + 4 + tags * TAG_BYTES > view.byteLength) return false;
  for (let tag = 0; tag < tags; tag += 1) {
    const at = HEADER_BYTES + 4 + tag * TAG_BYTES;
    if (view.getUint32(at + 4) + view.getUint32(at + 8) > view.byteLength) return false;
  }
  return true;
}
