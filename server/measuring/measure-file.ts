import { readFile } from 'node:fs/promises';
import { type MeasuredPhoto, measurePhoto } from '../../core/measure-photo.ts';
import type { PointPx, Raster, UprightPhoto } from '../../core/raster/raster.ts';
import type { PhotoReport } from '../../core/report.ts';
import { checkPhoto } from '../intake/check-photo.ts';
import { maskToClearPng, maskToPhotoPng } from '../intake/encode-picture.ts';
import { unreadableReport } from './unreadable-report.ts';

/** A photo file to measure, with all that is known beside it. */
export interface MeasureTask {
  readonly path: string;
  readonly photoName: string;
  readonly rimMm: number | null;
  /** Photo of the same stand without a plant. */
  readonly emptyPath: string | null;
  readonly turnDeg: number | null;
  /** `clear`: white on clear at working size, for the screen; `photo`: 0/255 at the photo's size. */
  readonly maskAs: 'clear' | 'photo' | 'none';
}

/** What measuring a file gives; it crosses from a worker thread, so it is plain data. */
export interface MeasuredFile {
  readonly report: PhotoReport;
  /** Closed contour in photo px; empty when not measured. */
  readonly outlinePx: readonly PointPx[];
  readonly maskPng: Uint8Array | null;
}

/** Reads and measures one photo file. A file that is no photo gives a report that says so. */
export async function measureFile(task: MeasureTask): Promise<MeasuredFile> {
  const { photoName, rimMm, turnDeg } = task;
  const checked = await checkPhoto(await readFile(task.path));
  if (!checked.ok) {
    return { report: unreadableReport(photoName, turnDeg, checked.hint), outlinePx: [], maskPng: null };
  }
  const { empty, note } = await emptyStand(task.emptyPath);
  const measured = await measurePhoto(checked.upright, { photoName, rimMm, empty, turnDeg });
  const notes = [...checked.notes, ...(note ? [note] : []), ...measured.report.notes];
  return {
    report: { ...measured.report, notes },
    outlinePx: measured.outlinePx,
    maskPng: await encodedMask(measured, checked.upright, task.maskAs),
  };
}

async function encodedMask(
  { canopy }: MeasuredPhoto,
  photo: UprightPhoto,
  maskAs: MeasureTask['maskAs'],
): Promise<Uint8Array | null> {
  if (canopy === null || maskAs === 'none') return null;
  return maskAs === 'clear' ? maskToClearPng(canopy) : maskToPhotoPng(canopy, photo);
}

interface EmptyStand {
  readonly empty: Raster | null;
  readonly note: string | null;
}

/** A season shares one empty photo: the last one stays unpacked. */
let lastEmpty: { readonly path: string; readonly stand: EmptyStand } | null = null;

async function emptyStand(path: string | null): Promise<EmptyStand> {
  if (path === null) return { empty: null, note: null };
  if (lastEmpty?.path === path) return lastEmpty.stand;
  const checked = await checkPhoto(await readFile(path));
  const stand = checked.ok
    ? { empty: checked.upright.raster, note: null }
    : { empty: null, note: `The photo of the empty stand was not used. ${checked.hint}` };
  lastEmpty = { path, stand };
  return stand;
}
