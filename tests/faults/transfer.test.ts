import { createHash } from 'node:crypto';
import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { onlyEntry } from '../server/fixtures/client.ts';
import { openBench } from '../server/fixtures/open-bench.ts';
import { plantJpeg, turnedHeic } from '../server/fixtures/photos.ts';

const ALTERED =
  'The photo arrived otherwise than it was sent: something was lost or changed on the way. Send it again.';
const CUT_OFF =
  'The photo ends too early: copying it stopped half-way. Copy it from the camera or phone again.';

const sha256 = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');
const toldOf = (bytes: Uint8Array) => ({ sha256: sha256(bytes), byteCount: String(bytes.length) });

/** Twenty bytes in the middle of the coded picture changed: most such JPEGs still unpack, to another picture. */
function flipped(bytes: Buffer, count = 20): Buffer {
  const changed = Buffer.from(bytes);
  const from = (bytes.length >> 1) - (count >> 1);
  for (let at = from; at < from + count; at += 1) changed[at] = (changed[at] ?? 0) ^ 0x5a;
  return changed;
}

describe('a photo on its way', () => {
  it('is kept when it arrives as its length and SHA-256 say', async () => {
    const { addPlant, upload } = await openBench();
    const plant = await addPlant();
    for (const [name, bytes] of [
      ['a.jpg', await plantJpeg()],
      ['b.heic', turnedHeic()],
    ] as const) {
      expect(onlyEntry(await upload(plant.id, [{ name, bytes }], toldOf(bytes))).outcome).toBe('kept');
    }
    const upper = await plantJpeg(2);
    const told = { sha256: sha256(upper).toUpperCase() };
    expect(onlyEntry(await upload(plant.id, [{ name: 'c.jpg', bytes: upper }], told)).outcome).toBe('kept');
  });

  it.each([
    ['with 20 bytes flipped', flipped],
    ['with one bit flipped', (bytes: Buffer) => flipped(bytes, 1)],
    ['cut in half', (bytes: Buffer) => bytes.subarray(0, bytes.length >> 1)],
    ['with bytes added', (bytes: Buffer) => Buffer.concat([bytes, Buffer.alloc(3)])],
  ])('%s is refused and leaves nothing behind', async (what, change) => {
    const { addPlant, upload, services } = await openBench();
    const plant = await addPlant();
    for (const [kind, bytes] of [
      ['JPEG', await plantJpeg()],
      ['HEIC', turnedHeic()],
    ] as const) {
      const answer = await upload(plant.id, [{ name: 'a.jpg', bytes: change(bytes) }], toldOf(bytes));
      expect(onlyEntry(answer)).toEqual({
        outcome: 'refused',
        fileName: 'a.jpg',
        detail: ALTERED,
        altered: true,
      });
      console.info(`${kind} ${what}: ${onlyEntry(answer).outcome}, “${ALTERED}”`);
    }
    expect(services.db.prepare('SELECT count(*) AS n FROM photos').get()).toEqual({ n: 0 });
    expect(readdirSync(services.home.photos)).toEqual([]);
    expect(readdirSync(services.home.incoming)).toEqual([]);
  });

  it('is checked by its length alone where the sender cannot reckon a fingerprint', async () => {
    const { addPlant, upload } = await openBench();
    const plant = await addPlant();
    const bytes = await plantJpeg();
    const told = { byteCount: String(bytes.length) };
    const short = await upload(plant.id, [{ name: 'a.jpg', bytes: bytes.subarray(0, -1) }], told);
    expect(onlyEntry(short)).toMatchObject({ outcome: 'refused', detail: ALTERED });
    expect(onlyEntry(await upload(plant.id, [{ name: 'a.jpg', bytes }], told)).outcome).toBe('kept');
  });

  it('as half a HEIC is refused also when nothing was told', async () => {
    const { addPlant, upload } = await openBench();
    const plant = await addPlant();
    const bytes = turnedHeic();
    const half = await upload(plant.id, [{ name: 'a.heic', bytes: bytes.subarray(0, bytes.length >> 1) }]);
    expect(onlyEntry(half)).toMatchObject({ outcome: 'refused', detail: CUT_OFF });
  });

  it('is told apart from the good ones sent with it', async () => {
    const { addPlant, send } = await openBench();
    const plant = await addPlant();
    const photos = [await plantJpeg(1), await plantJpeg(2), await plantJpeg(3)];
    const form = new FormData();
    for (const photo of photos) form.append('sha256', sha256(photo));
    for (const [at, photo] of photos.entries()) {
      form.append('photos', new Blob([new Uint8Array(at === 1 ? flipped(photo) : photo)]), `${at}.jpg`);
    }
    const answer = await send('POST', `/api/plants/${plant.id}/photos`, form);
    const outcomes = answer.body.photos.map(({ outcome }: { outcome: string }) => outcome);
    expect(outcomes).toEqual(['kept', 'refused', 'kept']);
  });

  it('needs a fingerprint that can be one, for each photo or for none', async () => {
    const { addPlant, upload } = await openBench();
    const plant = await addPlant();
    const photos = [{ name: 'a.jpg', bytes: await plantJpeg() }];
    const odd = await upload(plant.id, photos, { sha256: 'abc' });
    expect([odd.status, odd.body.detail]).toEqual([422, 'Give the SHA-256 as 64 hexadecimal digits.']);
    const length = await upload(plant.id, photos, { byteCount: '-1' });
    expect([length.status, length.body.detail]).toEqual([422, 'Give the length in whole bytes.']);
    const two = [...photos, { name: 'b.jpg', bytes: await plantJpeg(2) }];
    const few = await upload(plant.id, two, { sha256: sha256(await plantJpeg()) });
    expect([few.status, few.body.detail]).toEqual([
      422,
      'Give “sha256” once for each photo, in the order of the photos.',
    ]);
  });

  it('as an empty photo is checked alike', async () => {
    const bench = await openBench();
    const plant = await bench.addPlant();
    const bytes = await plantJpeg();
    const form = new FormData();
    form.append('sha256', sha256(bytes));
    form.append('photo', new Blob([new Uint8Array(flipped(bytes))]), 'empty.jpg');
    const answer = await bench.send('PUT', `/api/plants/${plant.id}/empty-photo`, form);
    expect([answer.status, answer.body.detail]).toEqual([422, ALTERED]);
  });
});
