import type { Raster } from '../raster/raster.ts';
import type { RingMark } from './sheet/ring-mark.ts';

/** Paper that the stand sheet is printed on. */
export type SheetPaper = 'A4' | 'Letter';

/** Where the sheet is fixed: on the backdrop behind the plant, or flat on the bench under or before the pot. */
export type SheetPlace = 'backdrop' | 'bench';

/** The stand sheet as the grower put it up. */
export interface StandSheet {
  readonly paper: SheetPaper;
  readonly place: SheetPlace;
  /** How far the pot's axis stands in front of the sheet, mm, 0 or more; 0 when unknown for a sheet on the bench. */
  readonly plantInFrontMm: number;
}

/** What is known of the stand a photo was taken on. */
export interface KnownStand {
  /** The stand's reference picture: its empty photo, else its first photo, of the photo's raster size; `null` = none yet. */
  readonly reference: Raster | null;
  /** All ring marks on the reference, when they were found before; left out, they are looked for. */
  readonly referenceRings?: readonly RingMark[];
  readonly sheet: StandSheet | null;
  /** Level distance from the camera to the plant's axis, mm; `null` when unknown. */
  readonly cameraDistanceMm: number | null;
  /** Focal length in px of the raster; `null` when unknown. */
  readonly focalLengthPx: number | null;
}
