import type { Day } from '../day/day.ts';
import type { PointPx } from '../raster/raster.ts';
import type { PhotoReport } from '../report.ts';

/** A photo that may come into a plant's film, with what tells how it lies over the others. */
export interface FilmPhoto {
  readonly id: string;
  readonly day: Day;
  /** Azimuth that faced the camera; `null` when not told, then the mark is taken to have faced it. */
  readonly turnDeg: number | null;
  /** Where the camera stood: stand and version; `null` for no stand. */
  readonly place: string | null;
  readonly widthPx: number;
  readonly heightPx: number;
  /** `null` while it is not measured. */
  readonly report: Pick<PhotoReport, 'frame' | 'notCompared' | 'axis' | 'scale' | 'ball'> | null;
  /** Closed contour, photo px; empty when nothing was cut out. */
  readonly outlinePx: readonly PointPx[];
  /** Why the grower keeps its sitting out; `null` when it counts. */
  readonly leftOut: string | null;
}

/** Why a photo does not come into the film. */
export type FilmAbsence =
  /** Not measured yet, so nothing tells how it lies. */
  | 'waiting'
  /** The grower keeps its sitting out. */
  | 'left-out'
  /** Another stand, or another version of it. */
  | 'other-place'
  /** The camera stood too far from where it stood, or the photo shows another place. */
  | 'camera-moved'
  /** Neither frame nor rim is known. */
  | 'nothing-to-hold'
  /** A photo of another size, with nothing that tells how much. */
  | 'other-size'
  /** Another photo of that day and turn is shown. */
  | 'same-day';

/** Turns within this of each other show the same side. */
const SAME_SIDE_DEG = 15;

/** The side of the plant that a photo shows, degrees in steps of 15. */
export function sideOf({ turnDeg }: Pick<FilmPhoto, 'turnDeg'>): number {
  return (Math.round((turnDeg ?? 0) / SAME_SIDE_DEG) * SAME_SIDE_DEG) % 360;
}
