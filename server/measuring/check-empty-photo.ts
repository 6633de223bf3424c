import { readFile } from 'node:fs/promises';
import { DECISION_SIDE_PX } from '../../core/canopy/gather-evidence.ts';
import { edgeWidthPx, isTooDark } from '../../core/canopy/photo-quality.ts';
import { type OpenCvDoor, openOpenCv } from '../../core/opencv/door.ts';
import { shrinkRaster } from '../../core/opencv/pictures.ts';
import { labOfRaster } from '../../core/raster/lab.ts';
import type { Raster } from '../../core/raster/raster.ts';
import { checkPhoto } from '../intake/check-photo.ts';
import type { EmptyPhotoCheck, StandSheet } from '../schemas/stand.ts';
import type { EmptyCheck } from '../store/stand-versions.ts';
import { sheetOnEmptyPhoto } from './sheet-on-empty-photo.ts';

/** An empty photo of the store to look at, and the sheet that should be seen on it. */
export interface EmptyPhotoTask {
  readonly path: string;
  readonly sheet: StandSheet | null;
}

/** Looks at an empty photo as soon as it has come, so that a bad one can be taken again while the camera stands. */
export async function checkEmptyPhoto({ path, sheet }: EmptyPhotoTask): Promise<EmptyCheck> {
  const checked = await checkPhoto(await readFile(path));
  if (!checked.ok) throw new Error(`The empty photo can no longer be read: ${checked.hint}`);
  const door = await openOpenCv();
  const reading = sheetOnEmptyPhoto(door, checked, sheet);
  return { check: qualityOf(door, checked.upright.raster, reading !== null), reading };
}

/**
 * Width of the sharpest edges, px of the decision copy, above which a photo is blurred. Printed rings are sharp, and
 * above this measuring calls a photo unsharp too; a bare place may hold no sharp edge: a rendered, sharp one read 6.1.
 */
const BLURRED_PX = { rings: 4.2, bare: 8 };
/** From here on a channel is taken as burnt out. */
const BURNT = 250;
/** Share of burnt-out pixels from which pale petals would be lost. */
const MOST_BURNT = 0.5;

const WORDS = {
  dark: 'The photo is nearly black. Give the place more light, or expose longer, and take it again.',
  bright:
    'Much of the photo is pure white, where pale petals could not be told from the backdrop. Expose a little less and take it again.',
  blurred: 'The photo is blurred. Rest the camera on something firm, let it focus, and take it again.',
  unknown: 'The light is good. Nothing in the picture has an edge to tell by whether it is sharp.',
  good: 'Light and sharpness are good.',
} as const;

function qualityOf(door: OpenCvDoor, raster: Raster, ringsBelong: boolean): EmptyPhotoCheck {
  const small = shrinkRaster(door, raster, DECISION_SIDE_PX);
  const picture = labOfRaster(small);
  const everywhere = { ...small, data: new Uint8Array(small.width * small.height).fill(1) };
  const brightness = isTooDark(picture, null)
    ? 'too-dark'
    : burntShare(small) > MOST_BURNT
      ? 'too-bright'
      : 'good';
  const widthPx = edgeWidthPx(door, picture, everywhere);
  const sharpness =
    widthPx === null ? 'unknown' : widthPx > BLURRED_PX[ringsBelong ? 'rings' : 'bare'] ? 'blurred' : 'good';
  const wrong = [
    ...(brightness === 'too-dark' ? [WORDS.dark] : []),
    ...(brightness === 'too-bright' ? [WORDS.bright] : []),
    ...(sharpness === 'blurred' ? [WORDS.blurred] : []),
  ];
  const words = wrong.length > 0 ? wrong.join(' ') : sharpness === 'unknown' ? WORDS.unknown : WORDS.good;
  return { good: wrong.length === 0, brightness, sharpness, words };
}

function burntShare({ width, height, data }: Raster): number {
  let burnt = 0;
  for (let at = 0; at < data.length; at += 3) {
    if (Math.min(data[at] as number, data[at + 1] as number, data[at + 2] as number) >= BURNT) burnt++;
  }
  return burnt / (width * height);
}
