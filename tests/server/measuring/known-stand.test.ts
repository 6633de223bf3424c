import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { openOpenCv } from '../../../core/opencv/door.ts';
import type { KnownStand } from '../../../core/stand/known-stand.ts';
import { readStand } from '../../../core/stand/read-stand.ts';
import { type CheckedPhoto, checkPhoto } from '../../../server/intake/check-photo.ts';
import { knownStand } from '../../../server/measuring/known-stand.ts';
import type { MeasureTask, StandOfTask } from '../../../server/measuring/measure-file.ts';
import { photographSheet, type SheetScene } from '../../core/stand/sheet/photographed-sheet.ts';
import { temporaryFolder } from '../fixtures/open-bench.ts';

const HALF_SIZE = { widthPx: 800, heightPx: 600, focalPx: 600, distanceMm: 900 };
const SHEET = { paper: 'A4', place: 'backdrop', plantInFrontMm: 150 } as const;

async function sheetPhoto(scene: Partial<SheetScene>): Promise<Uint8Array> {
  const { width, height, data } = photographSheet({ ...HALF_SIZE, ...scene }).raster;
  return sharp(data, { raw: { width, height, channels: 3 } })
    .jpeg({ quality: 95 })
    .toBuffer();
}

async function checked(bytes: Uint8Array): Promise<CheckedPhoto> {
  const photo = await checkPhoto(bytes);
  if (!photo.ok) throw new Error(photo.hint);
  return photo;
}

const taskWith = (stand: Partial<StandOfTask>): MeasureTask => ({
  path: 'photo.jpg',
  photoName: 'photo.jpg',
  rimMm: null,
  emptyPath: null,
  turnDeg: null,
  network: false,
  colours: null,
  lastOutline: null,
  normalLeaf: null,
  strokes: [],
  pictures: 'none',
  stand: { referencePath: null, sheet: SHEET, cameraDistanceMm: null, ...stand },
});

describe('the rings of a stand’s reference picture', () => {
  it('are found once for all photos of the stand, and none without a sheet', async () => {
    const referencePath = join(temporaryFolder(), 'empty.jpg');
    writeFileSync(referencePath, await sheetPhoto({ seed: 1 }));
    const photo = await checked(await sheetPhoto({ seed: 2, noiseSteps: 2 }));
    const one = (await knownStand(photo, taskWith({ referencePath }))).stand;
    const other = (await knownStand(photo, taskWith({ referencePath }))).stand;
    expect(one.referenceRings).toHaveLength(5);
    expect(other.referenceRings).toBe(one.referenceRings);
    expect((await knownStand(photo, taskWith({ referencePath, sheet: null }))).stand).not.toHaveProperty(
      'referenceRings',
    );
  });

  it('tell the same stand as when they are looked for anew', async () => {
    const referencePath = join(temporaryFolder(), 'empty.jpg');
    writeFileSync(referencePath, await sheetPhoto({ seed: 3 }));
    const photo = await checked(await sheetPhoto({ seed: 4, asideMm: [15, -10] }));
    const { stand } = await knownStand(photo, taskWith({ referencePath }));
    const { referenceRings, ...without } = stand;
    const door = await openOpenCv();
    const nothingSeen = { mask: null, canopyPx: null, rimPx: null, footPx: null };
    const read = (known: KnownStand) => readStand(door, photo.upright.raster, known, nothingSeen);
    expect(referenceRings).toHaveLength(5);
    expect(read(stand)).toEqual(read(without));
    expect(read(stand).frame?.fit.from).toBe('marks');
  });
});
