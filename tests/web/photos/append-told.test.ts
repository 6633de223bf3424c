import { createHash } from 'node:crypto';
import { describe, expect, it, onTestFinished, vi } from 'vitest';
import { appendTold } from '../../../web/src/photos/append-told.ts';

/** Lengths about the 64 bytes that SHA-256 works through at a time (FIPS 180-4, 5.1.1), and a photo's. */
const LENGTHS = [0, 1, 55, 56, 63, 64, 65, 300_001];

async function told(bytes: Uint8Array<ArrayBuffer>): Promise<FormData> {
  const body = new FormData();
  await appendTold(body, 'photos', new File([bytes], 'a.jpg'));
  return body;
}

describe('what is told of a photo before it is sent', () => {
  it.each([
    ['by the browser on a secure page', true],
    ['by the library on plain http', false],
  ])('is its length and SHA-256, reckoned %s', async (how, isSecure) => {
    if (!isSecure) vi.stubGlobal('crypto', { subtle: undefined });
    onTestFinished(() => void vi.unstubAllGlobals());
    for (const length of LENGTHS) {
      const bytes = Uint8Array.from({ length }, (_, at) => (at * 31) & 255);
      const body = await told(bytes);
      expect(body.get('sha256')).toBe(createHash('sha256').update(bytes).digest('hex'));
      expect(body.get('byteCount')).toBe(String(length));
      // The server must know them when the file arrives.
      expect([...body.keys()]).toEqual(['byteCount', 'sha256', 'photos']);
    }
    console.info(`SHA-256 ${how}: ${LENGTHS.length} of ${LENGTHS.length} as the system's own`);
  });
});
