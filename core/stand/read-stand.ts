import { DECISION_SIDE_PX } from '../canopy/gather-evidence.ts';
import type { OpenCvDoor } from '../opencv/door.ts';
import { resizeMask, shrinkRaster } from '../opencv/pictures.ts';
import { dilateMask } from '../raster/discs.ts';
import type { Mask, PointPx, Raster } from '../raster/raster.ts';
import { type FittedFrame, fitFrame } from './frame/fit-frame.ts';
import { photoAgainstStand } from './frame/photo-against-stand.ts';
import { moved, zoomOf } from './frame/similarity.ts';
import type { KnownStand } from './known-stand.ts';
import { findRingMarks } from './sheet/find-ring-marks.ts';
import { readSheetMarks } from './sheet/read-sheet.ts';
import type { RingMark } from './sheet/ring-mark.ts';
import { mmPerPxAtPlant } from './sheet/scale-from-sheet.ts';
import type { GreyReading, SheetReading } from './sheet/sheet-reading.ts';

/** A scale at the plant's axis, mm per px, with one standard deviation. */
export interface ScaleAtAxis {
  readonly mmPerPx: number;
  readonly doubt: number;
}

/** What the stand tells about one photo. Px of the raster. */
export interface StandReading {
  /** `null` without a reference, or when it cannot be told; then `notes` say why. */
  readonly frame: FittedFrame | null;
  /** Whether the photo shows another place than the stand's reference does. */
  readonly isElsewhere: boolean;
  /** At the plant's axis; `null` without a sheet, or when it cannot be carried to the plant. */
  readonly sheetScale: ScaleAtAxis | null;
  /** Camera to plant axis, mm; `null` when neither told nor read. */
  readonly cameraDistanceMm: number | null;
  readonly focalLengthPx: number | null;
  /** The sheet's grey patches in this photo; `null` when no sheet was read. */
  readonly greys: GreyReading | null;
  readonly notes: readonly string[];
}

/** Where the plant is in the photo, px of the raster. */
export interface PlantInPhoto {
  /** Where plant and pot stand, of any size; `null` when not known. */
  readonly mask: Mask | null;
  /** Middle of the canopy, of the pot's rim, and the pot's foot; `null` when not seen. */
  readonly canopyPx: PointPx | null;
  readonly rimPx: PointPx | null;
  readonly footPx: PointPx | null;
}

/** Growth of the plant's mask, px of the decision copy: shadows and soft edges move with the plant. */
const PLANT_MARGIN_PX = 6;

/**
 * Reads all that the stand tells about a photo: frame, scale, distance, light and sharpness.
 *
 * @param photo the upright raster
 */
export function readStand(
  door: OpenCvDoor,
  photo: Raster,
  known: KnownStand,
  plant: PlantInPhoto,
): StandReading {
  const { reference, sheet } = known;
  const moving = plant.mask === null ? null : dilateMask(plant.mask, PLANT_MARGIN_PX);
  const notes: string[] = [];
  const sheetIn = (raster: Raster, rings?: readonly RingMark[]): SheetReading | null => {
    if (sheet === null) return null;
    const found = rings ?? findRingMarks(door, raster);
    const readWith = (focalLengthPx: number | null) =>
      readSheetMarks(found, raster, sheet.paper, { focalLengthPx, place: sheet.place });
    const first = readWith(known.focalLengthPx);
    const byDistance = first.ok && first.pose === null ? focalByDistance(known, first) : null;
    const read = byDistance === null ? first : readWith(byDistance);
    if (!read.ok && raster === photo) notes.push(read.hint);
    return read.ok ? read : null;
  };
  const now = sheetIn(photo);
  const before = reference === null ? null : sheetIn(reference, known.referenceRings);
  const fitted =
    reference === null
      ? null
      : fitFrame(door, photo, {
          reference,
          photoMarks: now?.marks ?? [],
          referenceMarks: before?.marks ?? [],
          photoPlant: moving,
          referencePlant: null,
        });
  const frame = fitted?.ok ? fitted : null;
  if (fitted !== null && !fitted.ok) notes.push(fitted.reason);
  if (reference !== null && frame !== null) notes.push(...qualityNotes(door, photo, reference, moving));
  const sheetScale = scaleOfSheet(known, { now, before, frame }, plant, notes);
  const focalLengthPx = known.focalLengthPx ?? now?.pose?.focalLengthPx ?? null;
  return {
    frame,
    isElsewhere: fitted !== null && !fitted.ok && fitted.cause === 'unlike',
    sheetScale,
    cameraDistanceMm:
      known.cameraDistanceMm ??
      (focalLengthPx === null || sheetScale === null ? null : focalLengthPx * sheetScale.mmPerPx),
    focalLengthPx,
    greys: now?.greys ?? null,
    notes,
  };
}

/** The focal length, px, by which a sheet on the backdrop reads as large as it does from the grower's distance. */
function focalByDistance({ sheet, cameraDistanceMm }: KnownStand, read: SheetReading): number | null {
  if (sheet?.place !== 'backdrop' || cameraDistanceMm === null) return null;
  return (cameraDistanceMm + sheet.plantInFrontMm) / read.mmPerPxAtSheet;
}

/** From the sheet in this photo, else from the sheet in the reference by the frame's zoom. */
function scaleOfSheet(
  known: KnownStand,
  read: {
    readonly now: SheetReading | null;
    readonly before: SheetReading | null;
    readonly frame: FittedFrame | null;
  },
  plant: PlantInPhoto,
  notes: string[],
): ScaleAtAxis | null {
  const { sheet, cameraDistanceMm } = known;
  const { now, before, frame } = read;
  if (sheet === null) return null;
  const at = sheet.place === 'bench' ? plant.footPx : (plant.canopyPx ?? plant.rimPx);
  const scaleIn = (reading: SheetReading, plantPx: PointPx | null): ScaleAtAxis | null => {
    const abovePx = plant.footPx && plant.canopyPx ? plant.footPx[1] - plant.canopyPx[1] : 0;
    const aboveBenchMm = Math.max(0, abovePx) * reading.mmPerPxAtSheet;
    const scale = mmPerPxAtPlant(reading, { ...sheet, plantPx, aboveBenchMm, cameraDistanceMm });
    if (scale.mmPerPx !== null) return scale;
    notes.push(scale.reason);
    return null;
  };
  if (now !== null) return scaleIn(now, at);
  if (before === null || frame === null) return null;
  // The sheet stands still: what it told in the reference holds, larger or smaller by the zoom.
  const then = scaleIn(before, at === null ? null : moved(frame.move, at));
  if (then === null) return null;
  const zoom = zoomOf(frame.move);
  const mmPerPx = then.mmPerPx * zoom;
  return { mmPerPx, doubt: Math.hypot(then.doubt * zoom, mmPerPx * frame.fit.doubt.zoomShare) };
}

function qualityNotes(
  door: OpenCvDoor,
  photo: Raster,
  reference: Raster,
  plant: Mask | null,
): readonly string[] {
  const [small, before] = [photo, reference].map((one) => shrinkRaster(door, one, DECISION_SIDE_PX)) as [
    Raster,
    Raster,
  ];
  return photoAgainstStand(door, small, before, plant === null ? null : resizeMask(door, plant, small)).notes;
}
