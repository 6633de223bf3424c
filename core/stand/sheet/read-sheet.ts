import type { OpenCvDoor } from '../../opencv/door.ts';
import type { PointPx, Raster } from '../../raster/raster.ts';
import type { Homography } from '../frame/frame-fit.ts';
import type { SheetPaper, SheetPlace } from '../known-stand.ts';
import { findRingMarks } from './find-ring-marks.ts';
import { readGreys } from './grey-balance.ts';
import { arrowTurn, lightOfArrow } from './light-arrow.ts';
import { type NamedMarks, nameMarks } from './name-marks.ts';
import { fitOf, slopesOfMap } from './paper-map.ts';
import { ringRadiusMm } from './ring-kinds.ts';
import type { RingMark, SheetMark } from './ring-mark.ts';
import { missOf, pairsOf, settled } from './settle-marks.ts';
import { type SheetGeometry, sheetGeometry } from './sheet-geometry.ts';
import { greyNote, HINTS, marksNote, NO_DISTANCE } from './sheet-notes.ts';
import { GIVEN_FOCAL_DOUBT, type PosedSheet, poseSheet } from './sheet-pose.ts';
import type { NoSheet, SheetFit, SheetPose, SheetReading } from './sheet-reading.ts';

export interface SheetKnown {
  /** Focal length, px of the raster; `null` when unknown. */
  readonly focalLengthPx: number | null;
  readonly place: SheetPlace;
}

/** A focal length read off the sheet's own perspective is told only when it is known this well (one standard deviation). */
const MOST_FOCAL_DOUBT = 0.06;

/** Circles that fit this well are not on the wrong paper. */
const LEAST_PAPER_MISFIT = 0.02;

/** More marks than this are not all the sheet's; namings grow fast with their number. */
const MOST_MARKS = 10;

/** How true the print is, as a share (one standard deviation): what a ruler on the 100 mm line lets pass. */
const PRINT_DOUBT = 0.003;

/** Without perspective, how far the scale may be off as a share (one standard deviation). */
const SCALE_DOUBT = { affine: 0.02, similarity: 0.03 };

/**
 * Reads the stand sheet in a photo.
 *
 * @param raster upright photo
 * @param paper what the sheet was printed on
 * @param known focal length in px of the raster, and where the sheet is fixed
 * @returns where the sheet lies, its scale, how it stands before the camera, and the light's colour; or what to do
 *
 * Notes: the lens is taken to be straight (no distortion) with its axis through the photo's middle.
 */
export function readSheet(
  door: OpenCvDoor,
  raster: Raster,
  paper: SheetPaper,
  known: SheetKnown,
): SheetReading | NoSheet {
  return readSheetMarks(findRingMarks(door, raster), raster, paper, known);
}

/** The same, from marks already found. */
export function readSheetMarks(
  found: readonly RingMark[],
  raster: Raster,
  paper: SheetPaper,
  known: SheetKnown,
): SheetReading | NoSheet {
  if (found.length === 0) return refusal('no-marks');
  if (found.length === 1) return refusal('one-mark');
  const geometry = sheetGeometry(paper);
  const surest = found.slice(0, MOST_MARKS);
  const named = nameMarks(surest, geometry);
  const other = nameMarks(surest, sheetGeometry(paper === 'A4' ? 'Letter' : 'A4'));
  if (isRather(other, named)) return refusal('other-paper');
  if (named === null) return refusal('unclear');

  const { marks, map: mapOfMarks } = settled(named.marks, geometry);
  const fit = fitOf(pairsOf(marks, geometry));
  if (mapOfMarks === null || fit === null) return refusal('unclear');
  const posed =
    fit === 'perspective'
      ? poseSheet(pairsOf(marks, geometry), mapOfMarks, geometry, raster, known.focalLengthPx)
      : null;
  // Four marks alone would leave the map no check; a flat sheet before a pinhole has less freedom than a free map.
  const map = marks.length === 4 && posed !== null ? posed.paperToPhoto : mapOfMarks;
  const { mmPerPx, doubt } = scaleAtSheet(fit, posed, map, marks, geometry);
  const pose = poseOf(fit, posed, mmPerPx, doubt, raster, known.focalLengthPx);
  const greys = readGreys(raster, geometry.greys, map);
  const arrowTurnDeg = arrowTurn(geometry, map);
  return {
    ok: true,
    marks,
    fit,
    paperToPhoto: map,
    residualPx: fit === 'perspective' ? missOf(marks, geometry, map) : null,
    mmPerPxAtSheet: mmPerPx,
    mmPerPxDoubt: doubt,
    pose,
    greys,
    arrowTurnDeg,
    lightSide: lightOfArrow(arrowTurnDeg, known.place),
    notes: [
      marksNote(marks.length, geometry.marks.length, fit),
      pose === null ? NO_DISTANCE : null,
      greyNote(greys),
    ].filter((note) => note !== null),
  };
}

/**
 * Whether the marks stand as on the other paper: a free map can stretch one paper to the other, but then its circles do
 * not fit, by about 4 %; on the right paper they fit to 1 %.
 */
function isRather(other: NamedMarks | null, named: NamedMarks | null): boolean {
  if (other === null || other.marks.length < 4) return false;
  if (named === null || named.marks.length < other.marks.length) return true;
  return named.misfit > LEAST_PAPER_MISFIT && other.misfit < named.misfit / 2;
}

function refusal(reason: NoSheet['reason']): NoSheet {
  return { ok: false, reason, hint: HINTS[reason] };
}

/** With fewer than four marks a foreshortened circle still shows its full width along its longer axis. */
function scaleAtSheet(
  fit: SheetFit,
  posed: PosedSheet | null,
  map: Homography,
  marks: readonly SheetMark[],
  geometry: SheetGeometry,
): { mmPerPx: number; doubt: number } {
  if (posed !== null) {
    return { mmPerPx: posed.mmPerPx, doubt: Math.hypot(posed.mmPerPxDoubt, PRINT_DOUBT * posed.mmPerPx) };
  }
  if (fit === 'similarity') {
    const scales = marks.map((mark) => ringRadiusMm(mark.kind) / mark.radiusPx);
    const mmPerPx = scales.reduce((sum, scale) => sum + scale, 0) / scales.length;
    return { mmPerPx, doubt: SCALE_DOUBT.similarity * mmPerPx };
  }
  const [a, b, c, d] = slopesOfMap(map, [geometry.widthMm / 2, geometry.heightMm / 2]);
  const [sum, difference] = [Math.hypot(a + d, c - b), Math.hypot(a - d, b + c)];
  const mmPerPx = 2 / (sum + difference);
  return { mmPerPx, doubt: SCALE_DOUBT.affine * mmPerPx };
}

/** With few marks the distance follows from a given focal length; the tilt's direction stays unknown. */
function poseOf(
  fit: SheetFit,
  posed: PosedSheet | null,
  mmPerPx: number,
  doubt: number,
  raster: Raster,
  focalLengthPx: number | null,
): SheetPose | null {
  const principalPx: PointPx = [raster.width / 2, raster.height / 2];
  if (posed !== null && (focalLengthPx !== null || posed.focalDoubt <= MOST_FOCAL_DOUBT)) {
    return {
      focalLengthPx: posed.focalLengthPx,
      focalLengthFrom: focalLengthPx === null ? 'perspective' : 'given',
      distanceMm: posed.middleMm[2],
      distanceDoubtMm: Math.hypot(posed.distanceDoubtMm, PRINT_DOUBT * posed.middleMm[2]),
      tiltDeg: posed.tiltDeg,
      principalPx,
      normal: posed.normal,
    };
  }
  if (fit === 'perspective' || focalLengthPx === null) return null;
  return {
    focalLengthPx,
    focalLengthFrom: 'given',
    distanceMm: focalLengthPx * mmPerPx,
    distanceDoubtMm: focalLengthPx * Math.hypot(doubt, GIVEN_FOCAL_DOUBT * mmPerPx),
    tiltDeg: null,
    principalPx,
    normal: null,
  };
}
