import { readFile } from 'node:fs/promises';
import { openOpenCv } from '../../core/opencv/door.ts';
import type { Raster } from '../../core/raster/raster.ts';
import type { KnownStand } from '../../core/stand/known-stand.ts';
import { findRingMarks } from '../../core/stand/sheet/find-ring-marks.ts';
import type { RingMark } from '../../core/stand/sheet/ring-mark.ts';
import { type CheckedPhoto, checkPhoto } from '../intake/check-photo.ts';
import type { MeasureTask } from './measure-file.ts';

/** What is known of the stand, for core; `note` says why its reference picture was left out. */
export async function knownStand(
  { upright, focalLengthPx }: CheckedPhoto,
  { path, emptyPath, stand }: MeasureTask,
): Promise<{ stand: KnownStand; note: string | null }> {
  const { referencePath, sheet, cameraDistanceMm } = stand;
  const { raster, hint } =
    referencePath === path ? { raster: upright.raster, hint: null } : await standPhoto(referencePath);
  const fits = raster?.width === upright.raster.width && raster.height === upright.raster.height;
  const why = raster !== null && !fits ? otherSize(raster, upright.raster) : hint;
  const reference = fits ? raster : null;
  const rings = reference === null || sheet === null ? {} : { referenceRings: await ringsOn(reference) };
  return {
    stand: { reference, ...rings, sheet, cameraDistanceMm, focalLengthPx },
    // Of the empty photo it is said once, as the empty photo.
    note:
      why === null || referencePath === emptyPath
        ? null
        : `The photo was not brought in line with the stand’s first photo. ${why}`,
  };
}

const foundRings = new WeakMap<Raster, readonly RingMark[]>();

/** The ring marks on a reference, found once as long as it stays unpacked: a third of a second. */
async function ringsOn(reference: Raster): Promise<readonly RingMark[]> {
  const rings = foundRings.get(reference) ?? findRingMarks(await openOpenCv(), reference);
  foundRings.set(reference, rings);
  return rings;
}

function otherSize(reference: Raster, photo: Raster): string {
  return `That one is ${reference.width} × ${reference.height} px and this one ${photo.width} × ${photo.height} px as measured. Take both with the same camera, zoom and way up.`;
}

/** A photo of the stand, unpacked; `hint` when it cannot be read. */
interface StandPhoto {
  readonly raster: Raster | null;
  readonly hint: string | null;
}

const NO_PHOTO: StandPhoto = { raster: null, hint: null };

/** The empty photo and the reference of the season that is measured stay unpacked. */
const MOST_KEPT = 2;
const kept = new Map<string, StandPhoto>();

/** Unpacks a photo that many others are measured with; `null` gives none. */
export async function standPhoto(path: string | null): Promise<StandPhoto> {
  if (path === null) return NO_PHOTO;
  const photo = kept.get(path) ?? (await unpacked(path));
  kept.delete(path);
  kept.set(path, photo);
  const oldest = kept.keys().next();
  if (kept.size > MOST_KEPT && !oldest.done) kept.delete(oldest.value);
  return photo;
}

async function unpacked(path: string): Promise<StandPhoto> {
  const checked = await checkPhoto(await readFile(path));
  return checked.ok ? { raster: checked.upright.raster, hint: null } : { raster: null, hint: checked.hint };
}
