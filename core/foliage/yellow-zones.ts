import type { OpenCvDoor } from '../opencv/door.ts';
import { type MaskPart, maskParts } from '../opencv/masks.ts';
import { meanPlane } from '../opencv/pictures.ts';
import type { PointPx } from '../raster/raster.ts';
import { edgeMiddles, traceOutlines } from '../silhouette/outline.ts';
import { reduceOutline } from '../silhouette/reduce-outline.ts';
import type { YellowZone } from './foliage.ts';
import type { LeafColours } from './leaf-colours.ts';
import { TONES } from './leaf-tone.ts';

/** Single px of yellow are noise: half of a square of this reach must be. Px of the copy. */
const REACH_PX = 3;
/** Smaller zones are not shown, share of the leaf; and no more than this many. */
const LEAST_SHARE = 0.002;
const MOST_ZONES = 12;
const MOST_POINTS = 60;

const YELLOW = TONES.indexOf('yellow');

/**
 * Where yellow leaf stands together.
 *
 * @param tones an index into `TONES` for each colour
 * @returns the largest first, px of the raster
 */
export function yellowZones(door: OpenCvDoor, colours: LeafColours, tones: Uint8Array): YellowZone[] {
  const { width, height, at, pxPerPx } = colours;
  const plane = new Float32Array(width * height);
  at.forEach((i, k) => {
    if (tones[k] === YELLOW) plane[i] = 1;
  });
  const dense = meanPlane(door, plane, colours, REACH_PX);
  const mask = { width, height, data: denseOnly(dense) };
  const { parts, labels } = maskParts(door, mask);
  const place = placeOn(colours);
  return parts
    .slice(0, MOST_ZONES)
    .filter(({ areaPx }) => areaPx >= LEAST_SHARE * at.length)
    .map((part) => {
      const { outline, centre } = drawn(part, labels, width);
      const inRaster = ([x, y]: PointPx): PointPx => [x * pxPerPx, y * pxPerPx];
      return {
        place: place(centre),
        centrePx: inRaster(centre),
        areaShare: part.areaPx / at.length,
        outlinePx: outline.map(inRaster),
      };
    });
}

function denseOnly(dense: Float32Array): Uint8Array {
  const data = new Uint8Array(dense.length);
  for (let i = 0; i < dense.length; i++) if ((dense[i] as number) > 0.5) data[i] = 1;
  return data;
}

/** Outer contour and middle of a part, px of the copy. */
function drawn(
  part: MaskPart,
  labels: Int32Array,
  width: number,
): { outline: readonly PointPx[]; centre: PointPx } {
  const window = new Uint8Array(part.width * part.height);
  let [sumX, sumY] = [0, 0];
  for (let y = 0; y < part.height; y++) {
    for (let x = 0; x < part.width; x++) {
      if (labels[(part.top + y) * width + part.left + x] !== part.label) continue;
      window[y * part.width + x] = 1;
      sumX += part.left + x + 0.5;
      sumY += part.top + y + 0.5;
    }
  }
  const loops = traceOutlines({ width: part.width, height: part.height, data: window });
  const outer = reduceOutline(edgeMiddles(loops[0] ?? []), MOST_POINTS);
  return {
    outline: outer.map(([x, y]): PointPx => [x + part.left, y + part.top]),
    centre: [sumX / part.areaPx, sumY / part.areaPx],
  };
}

/** Words for a place on the plant, by thirds of where its leaf stands. */
function placeOn({ at, width, height }: LeafColours): (place: PointPx) => string {
  const columns = new Int32Array(width);
  const rows = new Int32Array(height);
  for (const i of at) {
    const row = Math.floor(i / width);
    rows[row] = (rows[row] as number) + 1;
    columns[i - row * width] = (columns[i - row * width] as number) + 1;
  }
  const span = (counts: Int32Array) => {
    const low = placeOfRank(counts, Math.floor(0.01 * (at.length - 1)));
    const high = placeOfRank(counts, Math.ceil(0.99 * (at.length - 1)));
    return (value: number) => (value - low) / Math.max(1, high - low);
  };
  const [across, down] = [span(columns), span(rows)];
  return ([x, y]) => {
    const side = across(x) < 1 / 3 ? 'on the left' : across(x) > 2 / 3 ? 'on the right' : 'in the middle';
    if (down(y) > 2 / 3) return `low ${side}`;
    return down(y) < 1 / 3 ? `high ${side}` : `half-way up ${side}`;
  };
}

/** The place that holds the leaf px of a rank, counted from 0. */
function placeOfRank(counts: Int32Array, rank: number): number {
  let below = 0;
  for (let k = 0; k < counts.length; k++) {
    below += counts[k] as number;
    if (below > rank) return k;
  }
  return 0;
}
