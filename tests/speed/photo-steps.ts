import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { decidePlant } from '../../core/canopy/decide-plant.ts';
import { gatherEvidence } from '../../core/canopy/gather-evidence.ts';
import { readLeaf } from '../../core/foliage/read-leaf.ts';
import { measureFound } from '../../core/measure-photo.ts';
import { openOpenCv } from '../../core/opencv/door.ts';
import type { Raster, UprightPhoto } from '../../core/raster/raster.ts';
import { readStand } from '../../core/stand/read-stand.ts';
import { collarOnPot } from '../../core/turned/collar/collar-in-report.ts';
import { checkPhoto } from '../../server/intake/check-photo.ts';
import { rasterToJpeg } from '../../server/intake/encode-picture.ts';
import { encodedPictures } from '../../server/measuring/encoded-pictures.ts';
import { networkAtHand } from '../../server/measuring/network.ts';
import { homeFolders } from '../../server/store/data-home.ts';
import { keepUpload, writeWhole } from '../../server/store/photo-files.ts';
import type { StepTimes } from './step-times.ts';

const RIM_MM = 120;
const CAMERA_MM = 1600;

/** Those that work on the picture: what native OpenCV is held against. */
export const IMAGE_STEPS = ['decode', 'frame', 'canopy', 'leaf', 'measures'] as const;

/** An upright copy of a file that is known to be a photo. */
export async function unpacked(bytes: Uint8Array): Promise<UprightPhoto> {
  const checked = await checkPhoto(bytes);
  if (!checked.ok) throw new Error(checked.hint);
  return checked.upright;
}

/** The steps of a photo's way one by one, on this thread. `network` is part of `canopy`. */
export async function stepByStep(
  bytes: Buffer,
  empty: Raster,
  folder: string,
  times: StepTimes,
): Promise<void> {
  const upright = await times.time('decode', () => unpacked(bytes));
  const { raster, widthPx, heightPx } = upright;
  const door = await openOpenCv();
  const { network } = await networkAtHand(true);
  if (network === null) throw new Error('The trained network could not be loaded.');
  let networkMs = 0;
  const heard = {
    ...network,
    run: async (...looks: Parameters<typeof network.run>) => {
      const begun = performance.now();
      const planes = await network.run(...looks);
      networkMs += performance.now() - begun;
      return planes;
    },
  };
  const begun = performance.now();
  const gathered = await gatherEvidence(raster, { empty, network: heard, colours: null, lastOutline: null });
  if (!gathered.ok) throw new Error(gathered.hint);
  const found = decidePlant(gathered, []);
  times.add('canopy', performance.now() - begun);
  times.add('  of it the network', networkMs);
  if (!found.ok) throw new Error(found.hint);

  const known = { reference: empty, sheet: null, cameraDistanceMm: CAMERA_MM, focalLengthPx: null };
  const plant = { mask: gathered.object, canopyPx: null, rimPx: null, footPx: null };
  const stand = await times.time('frame', () => readStand(door, raster, known, plant));
  const { leaf, collar } = await times.time('leaf', () => ({
    leaf: readLeaf(door, raster, found.parts, { reference: empty, stand, normal: null, petalsTold: true }),
    collar: collarOnPot(raster, found.pot, { rimMm: RIM_MM, cameraDistanceMm: CAMERA_MM }),
  }));
  const measured = await times.time('measures', () =>
    measureFound(found, {
      name: 'photo.jpg',
      widthPx,
      heightPx,
      rasterWidthPx: raster.width,
      rasterHeightPx: raster.height,
      rimMm: RIM_MM,
      turnDeg: 0,
      stand,
      leaf,
      collar,
      notes: [],
    }),
  );
  if (measured.canopy === null) throw new Error(`not measured: ${measured.report.hint}`);
  await times.time('pictures for the screen', () =>
    Promise.all([rasterToJpeg(raster), encodedPictures(measured.found, upright, 'screen')]),
  );
  await storeStep(bytes, folder, times);
}

/** The original as it is kept, synced to disk. */
async function storeStep(bytes: Buffer, folder: string, times: StepTimes): Promise<void> {
  const incoming = join(folder, 'incoming.jpg');
  await writeFile(incoming, bytes);
  const home = { ...homeFolders(folder), photos: folder, pictures: folder, incoming: folder };
  await times.time('store', async () => {
    await keepUpload(incoming, join(folder, 'kept.jpg'));
    await writeWhole(home, join(folder, 'copy.jpg'), await readFile(join(folder, 'kept.jpg')));
  });
}
