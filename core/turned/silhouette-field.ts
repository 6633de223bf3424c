import type { Mask } from '../raster/raster.ts';
import type { ViewSight } from './sight-lines.ts';
import { signedDistance } from './signed-distance.ts';
import { rowExtents, widestExtent } from './silhouette-extents.ts';
import type { TurnedView } from './turned-view.ts';

/**
 * How deep inside a silhouette a place lies, on a grid over the picture at the plane of the axis, plan's unit.
 * Column by column: the value at column c, row r (from the top) is `depths[c * rows + r]`.
 */
export interface SilhouetteField {
  readonly sight: ViewSight;
  readonly columns: number;
  readonly rows: number;
  readonly cell: number;
  /** Middle of the first column, right of the axis; middle of the first row, above the rim plane. */
  readonly firstX: number;
  readonly firstY: number;
  readonly depths: Float32Array;
  /** Lowest and highest canopy, above the rim plane. */
  readonly lowest: number;
  readonly highest: number;
  /** Farthest canopy to the left and right of the axis. */
  readonly widest: number;
}

/** Cells on the longer side of the canopy: a tenth of a per cent of its size is read off between them. */
const CELLS = 360;
/** Empty cells all round, so that the surface never runs off the grid. */
const MARGIN = 12;

/**
 * Reads a silhouette as a field of depths.
 *
 * @param view canopy with its place
 * @param sight how the view sees the plant
 * @returns field; `null` for an empty mask
 *
 * Notes: below the rim the pot hides what lies behind it. There the silhouette is open: as far down as canopy is seen, nothing is
 * cut away behind the pot (the pot itself is taken out of the hull).
 */
export function silhouetteField(view: TurnedView, sight: ViewSight): SilhouetteField | null {
  const { canopy, axisXPx, rimYPx } = view;
  const rows = rowExtents(canopy);
  const extent = widestExtent(rows);
  if (extent === null) return null;
  const top = rows.findIndex((row) => row !== null);
  const bottom = rows.findLastIndex((row) => row !== null) + 1;
  const open = behindPot(view, bottom);
  const left = Math.min(extent[0], open?.left ?? extent[0]);
  const right = Math.max(extent[1], open?.right ?? extent[1]);

  const pxPerCell = Math.max(1, Math.max(right - left, bottom - top) / CELLS);
  const width = Math.ceil((right - left) / pxPerCell) + 2 * MARGIN;
  const height = Math.ceil((bottom - top) / pxPerCell) + 2 * MARGIN;
  const originX = left - MARGIN * pxPerCell;
  const originY = top - MARGIN * pxPerCell;
  const data = reduced(canopy, { originX, originY, width, height, pxPerCell });
  if (open !== null) {
    for (let row = 0; row < height; row++) {
      const y = originY + (row + 0.5) * pxPerCell;
      if (y < rimYPx || y > bottom) continue;
      for (let column = 0; column < width; column++) {
        const x = originX + (column + 0.5) * pxPerCell;
        if (x > open.left && x < open.right) data[row * width + column] = 1;
      }
    }
  }

  const cell = pxPerCell * sight.unitPerPx;
  const byRows = signedDistance({ width, height, data });
  const depths = new Float32Array(byRows.length);
  for (let row = 0; row < height; row++)
    for (let column = 0; column < width; column++)
      depths[column * height + row] = (byRows[row * width + column] as number) * cell;
  return {
    sight,
    columns: width,
    rows: height,
    cell,
    firstX: (originX + 0.5 * pxPerCell - axisXPx) * sight.unitPerPx,
    firstY: (rimYPx - originY - 0.5 * pxPerCell) * sight.unitPerPx,
    depths,
    lowest: (rimYPx - bottom) * sight.unitPerPx,
    highest: (rimYPx - top) * sight.unitPerPx,
    widest: Math.max(axisXPx - left, right - axisXPx) * sight.unitPerPx,
  };
}

/** Depth at a place on the picture, between the cells; beyond the grid it falls with the distance from it. */
export function depthAt(
  { columns, rows, cell, firstX, firstY, depths }: SilhouetteField,
  x: number,
  y: number,
): number {
  const across = (x - firstX) / cell;
  const down = (firstY - y) / cell;
  const [c, r] = [Math.min(Math.max(across, 0), columns - 1.001), Math.min(Math.max(down, 0), rows - 1.001)];
  const beyond = cell * (Math.abs(across - c) + Math.abs(down - r));
  const [c0, r0] = [Math.floor(c), Math.floor(r)];
  const [fc, fr] = [c - c0, r - r0];
  const at = c0 * rows + r0;
  const near = (depths[at] as number) * (1 - fr) + (depths[at + 1] as number) * fr;
  const next = (depths[at + rows] as number) * (1 - fr) + (depths[at + rows + 1] as number) * fr;
  return near * (1 - fc) + next * fc - beyond;
}

function behindPot({ axisXPx, rimYPx, potHalfWidthPx }: TurnedView, bottom: number) {
  if (potHalfWidthPx === null || bottom <= rimYPx) return null;
  return { left: axisXPx - potHalfWidthPx, right: axisXPx + potHalfWidthPx };
}

interface Grid {
  readonly originX: number;
  readonly originY: number;
  readonly width: number;
  readonly height: number;
  readonly pxPerCell: number;
}

/** A cell is inside when at least half of its pixels are. */
function reduced({ width, height, data }: Mask, grid: Grid): Uint8Array {
  const cells = new Uint8Array(grid.width * grid.height);
  const spanOf = (index: number, origin: number, most: number): [number, number] => {
    const from = Math.round(origin + index * grid.pxPerCell);
    return [Math.max(0, from), Math.min(most, Math.round(origin + (index + 1) * grid.pxPerCell))];
  };
  for (let row = 0; row < grid.height; row++) {
    const [y0, y1] = spanOf(row, grid.originY, height);
    for (let column = 0; column < grid.width; column++) {
      const [x0, x1] = spanOf(column, grid.originX, width);
      let count = 0;
      for (let y = y0; y < y1; y++) for (let x = x0; x < x1; x++) count += data[y * width + x] as number;
      if (count > 0 && 2 * count >= (x1 - x0) * (y1 - y0)) cells[row * grid.width + column] = 1;
    }
  }
  return cells;
}
