import type { Raster } from '../../raster/raster.ts';
import { LINEAR_OF_STEP } from '../../stand/sheet/light-plane.ts';
import { angleAtColumn, enlargementAt, type PotSight } from './pot-sight.ts';

/** Light summed down each column of a part of the photo, so that the light of any upright stretch is found at once. */
export interface BandColumns {
  /** Middle of each column, px of the raster. */
  readonly xPx: Float64Array;
  readonly top: number;
  readonly rows: number;
  /** (rows + 1) sums a column. */
  readonly sums: Float64Array;
}

/** A part of the photo, px. */
export interface Window {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Where a band lies on the pot. */
export interface BandPlace {
  /** Row of the line between the two rows of the code where it faces the camera, px. */
  readonly frontYPx: number;
  /** How far that line rises from there to the pot's outline ÷ radius: negative when the camera stands below it. */
  readonly rise: number;
  /** How far the line falls to the right ÷ distance from the axis. */
  readonly slant: number;
  /** Height of one row ÷ radius. */
  readonly rowShare: number;
}

/** Most columns that are looked at: a step of the code is then still six of them wide where it faces the camera. */
const MOST_COLUMNS = 240;

/** @returns `null` when the window holds nothing of the raster */
export function bandColumns(raster: Raster, window: Window): BandColumns | null {
  const left = Math.max(0, Math.floor(window.left));
  const right = Math.min(raster.width, Math.ceil(window.right));
  const top = Math.max(0, Math.floor(window.top));
  const bottom = Math.min(raster.height, Math.ceil(window.bottom));
  const rows = bottom - top;
  if (right - left < 8 || rows < 8) return null;
  const every = Math.ceil((right - left) / MOST_COLUMNS);
  const count = Math.floor((right - left) / every);
  const sums = new Float64Array(count * (rows + 1));
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < count; column++) {
      let light = 0;
      for (let k = 0; k < every; k++) {
        const at = 3 * ((top + row) * raster.width + left + column * every + k);
        light +=
          0.2126 * (LINEAR_OF_STEP[raster.data[at] as number] as number) +
          0.7152 * (LINEAR_OF_STEP[raster.data[at + 1] as number] as number) +
          0.0722 * (LINEAR_OF_STEP[raster.data[at + 2] as number] as number);
      }
      const at = column * (rows + 1) + row;
      sums[at + 1] = (sums[at] as number) + light / every;
    }
  }
  return {
    xPx: Float64Array.from({ length: count }, (_, k) => left + k * every + every / 2),
    top,
    rows,
    sums,
  };
}

/** How near each column's place on the pot is: see `enlargementAt`. */
export function enlargements({ xPx }: BandColumns, sight: PotSight): Float64Array {
  return xPx.map((x) => enlargementAt(angleAtColumn(x, sight), sight));
}

/** Of each row only its middle is read: its edges are blurred and may lie a little higher or lower. */
const READ_FROM = 0.18;
const READ_TO = 0.86;
/** Light that counts as none: black is never quite black, and noise must not make it look like a pattern. */
const DARK = 0.008;

/** What the two rows of a band look like along the columns. */
export interface BandLight {
  /** How the rows differ: (upper − lower) ÷ (upper + lower), −1 to 1; 0 where they are alike. */
  readonly contrast: Float32Array;
  /** Light of both rows, mean of the two. */
  readonly light: Float32Array;
}

/**
 * Reads the two rows of a band along the columns.
 *
 * @param nears from `enlargements`
 * @param every only each so many-th column; the others stay 0
 */
export function bandLight(
  columns: BandColumns,
  sight: PotSight,
  nears: Float64Array,
  place: BandPlace,
  every = 1,
): BandLight {
  const { xPx } = columns;
  const contrast = new Float32Array(xPx.length);
  const light = new Float32Array(xPx.length);
  const front = enlargementAt(0, sight);
  // From the front to the outline, where a thing is neither nearer nor farther than the axis.
  const risePx = (place.rise * sight.radiusPx) / (front - 1);
  for (let k = 0; k < contrast.length; k += every) {
    const near = nears[k] as number;
    const row = place.rowShare * sight.radiusPx * near;
    const middle =
      place.frontYPx - risePx * (front - near) + place.slant * ((xPx[k] as number) - sight.axisXPx);
    const upper = meanLight(columns, k, middle - READ_TO * row, middle - READ_FROM * row);
    const lower = meanLight(columns, k, middle + READ_FROM * row, middle + READ_TO * row);
    contrast[k] = (upper - lower) / (upper + lower + DARK);
    light[k] = (upper + lower) / 2;
  }
  return { contrast, light };
}

function meanLight(columns: BandColumns, column: number, from: number, to: number): number {
  const sum = lightAbove(columns, column, to) - lightAbove(columns, column, from);
  return sum / Math.max(1e-6, to - from);
}

/** Light of a column from the window's top down to a row. */
function lightAbove({ top, rows, sums }: BandColumns, column: number, y: number): number {
  const base = column * (rows + 1);
  const row = Math.min(rows, Math.max(0, y - top));
  const whole = Math.min(rows - 1, Math.floor(row));
  const before = sums[base + whole] as number;
  return before + (row - whole) * ((sums[base + whole + 1] as number) - before);
}
