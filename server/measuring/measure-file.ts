import { readFile } from 'node:fs/promises';
import type { LastOutline } from '../../core/canopy/last-outline.ts';
import { decodeColours } from '../../core/canopy/learned-colours.ts';
import type { Stroke } from '../../core/canopy/stroke.ts';
import type { NormalLeaf } from '../../core/foliage/normal-leaf.ts';
import {
  type CutOut,
  cutGathered,
  type GatheredPhoto,
  gatherPhoto,
  type MeasuredPhoto,
  measureCutOut,
} from '../../core/measure-photo.ts';
import type { PointPx } from '../../core/raster/raster.ts';
import type { PhotoReport } from '../../core/report.ts';
import { NO_OUTLINES, type PartsOutlines } from '../../core/silhouette/parts-outlines.ts';
import type { KnownStand } from '../../core/stand/known-stand.ts';
import type { RimByHand } from '../../core/stand/rim-by-hand.ts';
import { type CheckedPhoto, checkPhoto } from '../intake/check-photo.ts';
import { clockNotes } from '../intake/clock-notes.ts';
import { maskOfClearPng } from '../intake/decode-picture.ts';
import { localDay } from '../local-day.ts';
import { encodedPictures, NO_PICTURES, type PicturesPng } from './encoded-pictures.ts';
import type { ViewLens } from './join-sitting.ts';
import { knownStand, standPhoto } from './known-stand.ts';
import { networkAtHand } from './network.ts';
import { unreadableReport } from './unreadable-report.ts';

/** A photo file to measure, with all that is known beside it; plain data, as it crosses to a worker thread. */
export interface MeasureTask {
  readonly path: string;
  /** What the file holds, where it was unpacked already; left out, it is read. */
  readonly unpacked?: CheckedPhoto | undefined;
  readonly photoName: string;
  readonly rimMm: number | null;
  /** When the photo came in, ISO 8601; left out where nothing hangs on its day. */
  readonly receivedAt?: string;
  /** Photo of the same stand without a plant. */
  readonly emptyPath: string | null;
  readonly stand: StandOfTask;
  readonly turnDeg: number | null;
  /** Whether the trained network is heard. */
  readonly network: boolean;
  /** The plant's own colours, as core encodes them. */
  readonly colours: Uint8Array | null;
  readonly lastOutline: EarlierOutline | null;
  /** The plant's leaf in good health; `null` before it was learned. */
  readonly normalLeaf: NormalLeaf | null;
  /** The grower's strokes, photo px. */
  readonly strokes: readonly Stroke[];
  /** The rim's ends as the grower set them, photo px; left out or `null` for those found. */
  readonly rimByHand?: RimByHand | null;
  /** `screen`: white on clear and of working size; `photo`: greys of the photo's size. */
  readonly pictures: 'screen' | 'photo' | 'none';
}

/** What is known of the stand that a photo was taken on. */
export interface StandOfTask {
  /** The picture that the photo is brought in line with; may be the photo itself. */
  readonly referencePath: string | null;
  readonly sheet: KnownStand['sheet'];
  readonly cameraDistanceMm: number | null;
}

/** A photo taken on no stand. */
export const NO_STAND: StandOfTask = { referencePath: null, sheet: null, cameraDistanceMm: null };

/** An outline of an earlier day as the store keeps it. */
export interface EarlierOutline {
  readonly maskPng: Uint8Array;
  /** Rim ends as shares of the photo's width and height. */
  readonly rim: readonly [PointPx, PointPx] | null;
  readonly days: number;
}

/** What measuring a file gives; it crosses from a worker thread, so it is plain data. */
export interface MeasuredFile extends PicturesPng {
  readonly report: PhotoReport;
  /** Closed contour in photo px; empty when nothing was cut out. */
  readonly outlinePx: readonly PointPx[];
  readonly partsOutlines: PartsOutlines;
  readonly lens: ViewLens;
  /** To learn the plant's normal leaf from; `null` when not measured, or white is not known. */
  readonly leafLook: NormalLeaf | null;
}

/** Reads and measures one photo file. A file that is no photo gives a report that says so. */
export async function measureFile(task: MeasureTask): Promise<MeasuredFile> {
  return measureGatheredFile(await gatherFile(task), task);
}

/** A photo file on which every voice was heard, ready to be measured with any strokes; or why it cannot be read. */
export type GatheredFile =
  | { readonly ok: true; readonly gathered: GatheredPhoto; readonly notes: readonly string[] }
  | { readonly ok: false; readonly hint: string };

/** The costly first half of `measureFile`: all but the strokes. */
export async function gatherFile(task: MeasureTask): Promise<GatheredFile> {
  const { photoName, rimMm, turnDeg } = task;
  const checked = task.unpacked ?? (await checkPhoto(await readFile(task.path)));
  if (!checked.ok) return { ok: false, hint: checked.hint };
  const empty = await standPhoto(task.emptyPath);
  const known = await knownStand(checked, task);
  const trained = await networkAtHand(task.network);
  const gathered = await gatherPhoto(checked.upright, {
    photoName,
    rimMm,
    turnDeg,
    stand: known.stand,
    empty: empty.raster,
    network: trained.network,
    colours: task.colours && decodeColours(task.colours),
    lastOutline: task.lastOutline && (await lastOutlineOf(task.lastOutline)),
    normalLeaf: task.normalLeaf,
  });
  const emptyNote = empty.hint && `The photo of the empty stand was not used. ${empty.hint}`;
  const clock = task.receivedAt ? clockNotes(checked.exif, localDay(new Date(task.receivedAt))) : [];
  const notes = [
    ...checked.notes,
    ...clock,
    ...[emptyNote, known.note, trained.note].filter((note) => note !== null),
  ];
  return { ok: true, gathered, notes };
}

/** The second half of `measureFile`: cuts with the strokes, measures and draws. */
export async function measureGatheredFile(
  file: GatheredFile,
  { photoName, turnDeg, strokes, rimByHand, pictures }: MeasureTask,
): Promise<MeasuredFile> {
  if (!file.ok) return unreadableFile(photoName, turnDeg, file.hint);
  const found = cutGathered(file.gathered, strokes, rimByHand ?? null);
  // The pictures are packed by the decoder's own threads, meanwhile the plant is measured on this one.
  const drawn = found.ok ? found : found.cutOut;
  const packing = encodedPictures(drawn, file.gathered.photo, pictures);
  const [packed, measured] = await Promise.all([packing, measuredSoon(file.gathered, found)]);
  return {
    report: { ...measured.report, notes: [...file.notes, ...measured.report.notes] },
    outlinePx: measured.outlinePx,
    partsOutlines: measured.partsOutlines,
    lens: lensOf(file.gathered),
    leafLook: measured.leafLook,
    ...(measured.canopy === null ? NO_PICTURES : packed),
  };
}

/** A fault comes as a rejection, so that the pictures under way are waited for. */
async function measuredSoon(gathered: GatheredPhoto, found: CutOut): Promise<MeasuredPhoto> {
  return measureCutOut(gathered, found);
}

/** What a file gives that could not be measured; `hint` says why and what to do. */
export function unreadableFile(photoName: string, turnDeg: number | null, hint: string): MeasuredFile {
  return {
    report: unreadableReport(photoName, turnDeg, hint),
    outlinePx: [],
    partsOutlines: NO_OUTLINES,
    ...NO_PICTURES,
    lens: { focalLengthPx: null, cameraDistanceMm: null },
    leafLook: null,
  };
}

function lensOf({ photo, stand }: GatheredPhoto): ViewLens {
  const rasterPx = stand?.focalLengthPx ?? null;
  return {
    focalLengthPx: rasterPx === null ? null : (rasterPx * photo.widthPx) / photo.raster.width,
    cameraDistanceMm: stand?.cameraDistanceMm ?? null,
  };
}

async function lastOutlineOf({ maskPng, rim, days }: EarlierOutline): Promise<LastOutline> {
  const canopy = await maskOfClearPng(maskPng);
  const inRaster = ([x, y]: PointPx): PointPx => [x * canopy.width, y * canopy.height];
  const pot = rim && { rimLeftPx: inRaster(rim[0]), rimRightPx: inRaster(rim[1]) };
  return { canopy, pot, days };
}
