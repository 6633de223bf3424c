import { seenAt } from './sight-lines.ts';
import type { SilhouetteField } from './silhouette-field.ts';

/**
 * The visual hull on a grid of cubes: how deep inside it each cube's middle lies, plan's unit. Uprights are stored one after another:
 * the value at (i, j, k) is `depths[(i * across + j) * high + k]`, i along u, j along v, k along h.
 */
export interface HullGrid {
  readonly across: number;
  readonly high: number;
  /** Side of a cube. */
  readonly side: number;
  /** Middle of the first cube. */
  readonly firstU: number;
  readonly firstV: number;
  readonly firstH: number;
  readonly depths: Float32Array;
}

export interface HullWish {
  readonly cubes: number;
  readonly halfWidth: number;
  /** The pot below the rim is taken out of the hull. */
  readonly potRadius: number | null;
}

/** Cubes left empty on every side. */
const MARGIN = 2;

/**
 * Cuts the visual hull: what lies inside every silhouette.
 *
 * @param fields at least one, all in one unit
 * @param options cubes along the longest side, 8 to 128; the square seen from above that holds the plant (half its side, about the axis);
 * radius of the pot below the rim, `null` when unknown
 *
 * How: each cube's middle is looked up in each silhouette's field and keeps the least depth, in its own distance from the camera. On an upright
 * of cubes the place on the picture moves evenly, so a view costs one look-up a cube. An upright that lies wholly outside one silhouette is left.
 *
 * Notes: depths are exact next to a face and too small (in amount) inside and at edges; volumes and surfaces read them near 0 only.
 *
 * Reference: Laurentini (1994), The visual hull concept for silhouette-based image understanding (from memory).
 */
export function cutHull(
  fields: readonly SilhouetteField[],
  { cubes, halfWidth, potRadius }: HullWish,
): HullGrid {
  const [lowest, highest] = heightsOf(fields, halfWidth);
  const side = Math.max(2 * halfWidth, highest - lowest) / (cubes - 2 * MARGIN);
  const across = Math.ceil((2 * halfWidth) / side) + 2 * MARGIN;
  const high = Math.ceil((highest - lowest) / side) + 2 * MARGIN;
  const firstU = -((across - 1) / 2) * side;
  const firstH = lowest - (MARGIN - 0.5) * side;
  const depths = new Float32Array(across * across * high);
  for (let i = 0; i < across; i++) {
    for (let j = 0; j < across; j++) {
      const start = (i * across + j) * high;
      const upright = {
        depths: depths.subarray(start, start + high),
        u: firstU + i * side,
        v: firstU + j * side,
      };
      upright.depths.fill(2 * halfWidth);
      fields.every((field) => keepLeast(upright, field, firstH, side));
      if (potRadius !== null) takeOutPot(upright, potRadius, firstH, side);
    }
  }
  return { across, high, side, firstU, firstV: firstU, firstH, depths };
}

interface Upright {
  readonly depths: Float32Array;
  readonly u: number;
  readonly v: number;
}

/** Lowers an upright's depths to those of one silhouette; says whether any of it may still be in the hull. */
function keepLeast({ depths, u, v }: Upright, field: SilhouetteField, firstH: number, side: number): boolean {
  const { sight, columns, rows, cell, firstX, firstY } = field;
  // The zoom depends on u and v only, so the place on the picture moves evenly along the upright.
  const start = seenAt(sight, [u, v, firstH]);
  const across = (start.x - firstX) / cell;
  const c = Math.min(Math.max(across, 0), columns - 1.001);
  const beyond = Math.abs(across - c) * cell;
  const column = Math.floor(c);
  const share = c - column;
  const near = column * rows;
  const next = near + rows;
  const down = (firstY - start.y) / cell;
  const step = (side * start.zoom) / cell;
  let deepest = Number.NEGATIVE_INFINITY;
  for (let k = 0; k < depths.length; k++) {
    const wanted = down - k * step;
    const r = wanted < 0 ? 0 : Math.min(wanted, rows - 1.001);
    const row = r | 0;
    const f = r - row;
    const one = (field.depths[near + row] as number) * (1 - f) + (field.depths[near + row + 1] as number) * f;
    const two = (field.depths[next + row] as number) * (1 - f) + (field.depths[next + row + 1] as number) * f;
    const depth = (one + share * (two - one) - beyond - Math.abs(wanted - r) * cell) / start.zoom;
    if (depth < (depths[k] as number)) depths[k] = depth;
    if ((depths[k] as number) > deepest) deepest = depths[k] as number;
  }
  return deepest > -2 * side;
}

function takeOutPot({ depths, u, v }: Upright, potRadius: number, firstH: number, side: number): void {
  const outside = Math.hypot(u, v) - potRadius;
  for (let k = 0; k < depths.length; k++) {
    depths[k] = Math.min(depths[k] as number, Math.max(outside, firstH + k * side));
  }
}

/** Lowest and highest that the plant may be, from what each view shows at its nearest and farthest. */
function heightsOf(fields: readonly SilhouetteField[], halfWidth: number): [lowest: number, highest: number] {
  let [lowest, highest] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (const { sight, lowest: low, highest: high } of fields) {
    const zooms = [-1, 1].map(
      (side) => seenAt(sight, [side * halfWidth * sight.cos, side * halfWidth * sight.sin, 0]).zoom,
    );
    const eye = sight.camera?.heightMm ?? 0;
    lowest = Math.min(lowest, ...zooms.map((zoom) => eye + (low - eye) / zoom));
    highest = Math.min(highest, Math.max(...zooms.map((zoom) => eye + (high - eye) / zoom)));
  }
  return [lowest, highest];
}
