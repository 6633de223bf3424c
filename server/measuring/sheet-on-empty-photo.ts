import type { OpenCvDoor } from '../../core/opencv/door.ts';
import type { PointPx } from '../../core/raster/raster.ts';
import { findRingMarks } from '../../core/stand/sheet/find-ring-marks.ts';
import { readSheetMarks } from '../../core/stand/sheet/read-sheet.ts';
import { sheetGeometry } from '../../core/stand/sheet/sheet-geometry.ts';
import type { SheetReading } from '../../core/stand/sheet/sheet-reading.ts';
import type { CheckedPhoto } from '../intake/check-photo.ts';
import type { SheetSummary, StandSheet } from '../schemas/stand.ts';

/** Rings by chance look alike one or two at a time; three are a sheet. */
const LEAST_FOR_SHEET = 3;

/**
 * What is seen of the stand sheet on an empty photo. Without a told sheet rings are looked for all the same: `null`
 * when there are none either.
 */
export function sheetOnEmptyPhoto(
  door: OpenCvDoor,
  { upright, focalLengthPx }: CheckedPhoto,
  sheet: StandSheet | null,
): SheetSummary | null {
  const { raster, widthPx } = upright;
  const enlarged = widthPx / raster.width;
  const marksPx = (marks: readonly { readonly centrePx: PointPx }[]) =>
    marks.map(({ centrePx: [x, y] }): PointPx => [x * enlarged, y * enlarged]);
  const found = findRingMarks(door, raster);
  const nothingRead = {
    marksFound: found.length,
    marksOfSheet: sheetGeometry(sheet?.paper ?? 'A4').marks.length,
    mmPerPxAtSheet: null,
    cameraDistanceMm: null,
    greyFound: false,
    marksPx: marksPx(found),
  };
  if (sheet === null) {
    if (found.length < LEAST_FOR_SHEET) return null;
    const words = `${found.length} rings of a stand sheet are in sight. Say which paper it is and where it is fixed, and it gives frame and scale.`;
    return { ...nothingRead, words };
  }
  const read = readSheetMarks(found, raster, sheet.paper, { focalLengthPx, place: sheet.place });
  if (!read.ok) return { ...nothingRead, words: read.hint };
  const cameraDistanceMm = distanceToPot(read, sheet);
  return {
    ...nothingRead,
    marksFound: read.marks.length,
    mmPerPxAtSheet: read.mmPerPxAtSheet / enlarged,
    cameraDistanceMm,
    greyFound: read.greys.state === 'ok',
    marksPx: marksPx(read.marks),
    words: [
      ...foundInWords(read.marks.length, nothingRead.marksOfSheet, cameraDistanceMm),
      ...read.notes,
    ].join(' '),
  };
}

/** On the bench the pot's place is not seen on an empty photo: the sheet's own distance is the nearest to it. */
function distanceToPot({ pose }: SheetReading, { place, plantInFrontMm }: StandSheet): number | null {
  if (pose === null) return null;
  const distanceMm = place === 'backdrop' ? pose.distanceMm - plantInFrontMm : pose.distanceMm;
  return distanceMm > 0 ? distanceMm : null;
}

/** What the reading's own notes do not say. */
function foundInWords(found: number, all: number, cameraDistanceMm: number | null): string[] {
  const words = found === all ? [`All ${all} rings of the stand sheet are in sight.`] : [];
  if (cameraDistanceMm !== null) {
    words.push(`The camera stands about ${(cameraDistanceMm / 1000).toFixed(2)} m from the pot.`);
  }
  return words;
}
