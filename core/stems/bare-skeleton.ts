import type { Mask, PointPx } from '../raster/raster.ts';
import { signedDistance } from '../turned/signed-distance.ts';
import { followStems } from './follow-stem.ts';
import { prunedGraph } from './prune-spurs.ts';
import { skeletonOf } from './skeleton.ts';
import { polylineLength, smoothedPath } from './stem-length.ts';

/** A stem of a bare plant as one silhouette shows it. Px. */
export interface BareStem {
  /** Its very end: the skeleton's end and the stem's own radius beyond it. */
  readonly tipPx: PointPx;
  /** Middle of the stem from its tip down to the rim plane. */
  readonly pathPx: readonly PointPx[];
  /** Along the stem from the rim plane to the tip. */
  readonly lengthPx: number;
  /** Bends sharply somewhere, as stems do not: its lower part may be another stem's. */
  readonly bendsSharply: boolean;
}

/** What the skeleton of a bare plant tells. */
export interface BareSkeleton {
  readonly stems: readonly BareStem[];
  /** Ends that no way leads down from: pieces that hang free in the silhouette. */
  readonly loose: number;
}

/** A plant is bare when nothing of its silhouette is thicker than this, share of half its larger side. */
export const MOST_DEPTH = 0.2;
/**
 * In a bare silhouette hardly an end hangs free (none on 48 photos of 24 rendered bare plants); where more than this share does, they are leaves of an open plant, cut
 * apart (a third and more on photos of such).
 */
const MOST_LOOSE = 0.1;
/** Below this a stem bends, above it two stems are taken for one, rad. */
const SHARP_RAD = (75 * Math.PI) / 180;
/** The stem's direction at its tip is read off so many px. */
const TIP_LOOK_PX = 8;
const FOOT_LOOK_PX = 20;

/**
 * Reads the stems of a bare plant off its silhouette.
 *
 * @param mask canopy, px
 * @param rimYPx height of the rim plane; `null`: the lowest place of the canopy
 * @returns stems in no order, or `null` when the plant is in leaf
 *
 * Notes: a tip that lies before or behind another stem ends in it and is not seen; nor is what leaves hide.
 */
export function bareSkeleton(mask: Mask, rimYPx: number | null): BareSkeleton | null {
  const crop = cropped(mask);
  if (crop === null) return null;
  const { left, top, part } = crop;
  const depths = signedDistance(part);
  const depthAt = ([x, y]: PointPx) => depths[Math.floor(y) * part.width + Math.floor(x)] as number;
  const deepest = depths.reduce((most, depth) => Math.max(most, depth), 0);
  if (deepest > (MOST_DEPTH * Math.max(part.width, part.height)) / 2) return null;

  const graph = prunedGraph(skeletonOf(part), depthAt);
  const lowest = Math.max(...graph.nodes.map(({ placePx }) => placePx[1]));
  const footY = rimYPx === null ? lowest : Math.min(rimYPx - top, lowest);
  const isFoot = ([, y]: PointPx) => y >= footY;
  const ends = graph.nodes.flatMap(({ kind, placePx }, node) =>
    kind === 'end' && !isFoot(placePx) ? [node] : [],
  );
  const followed = followStems(graph, ends, isFoot);
  const stems = followed.flatMap((stem): BareStem[] => {
    if (stem === null) return [];
    const path = toRim(smoothedPath(stem.pathPx), rimYPx === null ? null : rimYPx - top);
    const end = path[0] as PointPx;
    const endDepth = depthAt(end);
    const [bx, by] = path[Math.min(TIP_LOOK_PX, path.length - 1)] as PointPx;
    const apart = Math.hypot(end[0] - bx, end[1] - by) || 1;
    const beyond = endDepth / apart;
    const tip: PointPx = [end[0] + beyond * (end[0] - bx), end[1] + beyond * (end[1] - by)];
    const inPhoto = ([x, y]: PointPx): PointPx => [x + left, y + top];
    return [
      {
        tipPx: inPhoto(tip),
        pathPx: [tip, ...path].map(inPhoto),
        lengthPx: polylineLength(path) + endDepth,
        bendsSharply: stem.sharpestRad > SHARP_RAD,
      },
    ];
  });
  const loose = followed.length - stems.length;
  return loose > MOST_LOOSE * followed.length ? null : { stems, loose };
}

/** The path led straight on to the rim plane: in the thick foot of a plant the skeleton ends above it. */
function toRim(path: readonly PointPx[], rimY: number | null): readonly PointPx[] {
  const last = path.length - 1;
  const [x, y] = path[last] as PointPx;
  const [bx, by] = path[Math.max(0, last - FOOT_LOOK_PX)] as PointPx;
  if (rimY === null || y >= rimY || y <= by) return path;
  return [...path, [x + ((rimY - y) * (x - bx)) / (y - by), rimY]];
}

/** The part of a mask that holds the canopy, with a pixel's margin. */
function cropped({ width, height, data }: Mask): { left: number; top: number; part: Mask } | null {
  let [left, right, top, bottom] = [width, -1, height, -1];
  for (let at = 0; at < data.length; at++) {
    if (data[at] === 0) continue;
    const [x, y] = [at % width, Math.floor(at / width)];
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  }
  if (right < 0) return null;
  const [w, h] = [right - left + 3, bottom - top + 3];
  const part = new Uint8Array(w * h);
  for (let y = top; y <= bottom; y++)
    part.set(data.subarray(y * width + left, y * width + right + 1), (y - top + 1) * w + 1);
  return { left: left - 1, top: top - 1, part: { width: w, height: h, data: part } };
}
