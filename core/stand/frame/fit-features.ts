import type { OpenCvDoor } from '../../opencv/door.ts';
import { shrinkRaster } from '../../opencv/pictures.ts';
import type { Mask, PointPx, Raster } from '../../raster/raster.ts';
import { detailPicture } from './detail-picture.ts';
import { frameDoubt, type PlaceDoubt } from './frame-doubt.ts';
import { countRealCorners } from './real-corners.ts';
import { type RobustFit, reweighted, robustSimilarity } from './robust-similarity.ts';
import { IDENTITY, type Similarity, scaledUp, similarityAbout } from './similarity.ts';
import { cornersOf, followFromReference, type Seen } from './track-stand.ts';

/** A similarity fitted to what is seen of the stand, px of the raster. */
export interface FeatureFit {
  readonly ok: true;
  /** Photo px to reference px. */
  readonly move: Similarity;
  /** Standard deviation of one coordinate of a corner, px. */
  readonly spreadPx: number;
  /** How many corners agree. */
  readonly corners: number;
  readonly doubt: PlaceDoubt;
}

/** `plain`: nothing to go by on the stand itself. `unlike`: there is, but it does not fit. */
export interface NoFeatureFit {
  readonly ok: false;
  readonly reason: 'plain' | 'unlike';
}

/** Longer sides on which the fit is made, px, coarse first, and how far a corner may be off, px of that copy. */
const STEPS = [
  { sidePx: 200, withinPx: 1.25 },
  { sidePx: 400, withinPx: 1.5 },
] as const;
/** So many corners must agree, and this share of those that look alike. */
const LEAST_AGREED = 8;
const LEAST_SHARE = 0.3;
/** A start from which so many corners agree needs no other. */
const PLENTY = 15;
/** A frame less sure than this share of the longer side is not given: 1 px of 1600. */
const MOST_DOUBT_SHARE = 1 / 1600;
/** Fewer corners than this that are more than noise on the reference: there is nothing to go by. */
const LEAST_CORNERS = 20;

/**
 * How the camera may have been moved, tried in turn when the photo does not fit as it stands: turned, nearer or further,
 * aside. Each reaches about 10 % of the picture, 4° and 6 % around it.
 */
const STARTS: readonly { readonly aside: PointPx; readonly turnDeg: number; readonly zoom: number }[] = [
  ...[-4, 4, -9, 9, -15, 15].map((turnDeg) => ({ aside: [0, 0] as PointPx, turnDeg, zoom: 1 })),
  ...[0.93, 1.07, 0.85, 1.17].map((zoom) => ({ aside: [0, 0] as PointPx, turnDeg: 0, zoom })),
  ...(
    [
      [1, 0],
      [-1, 0],
      [0, 1],
      [0, -1],
    ] as const
  ).map(([x, y]) => ({
    aside: [0.14 * x, 0.14 * y] as PointPx,
    turnDeg: 0,
    zoom: 1,
  })),
];

/**
 * Fits the photo onto the reference by what is seen of the stand itself: corners of the reference are followed into the
 * photo on copies of two sizes, and the similarity that most agree on is fitted robustly.
 *
 * @param photo of the reference's size
 * @param moving plant and pot in each picture, of any size; `null` when not known: what moved is then an outlier
 *
 * Notes: on copies this small grain and noise are gone and folds, seams and edges remain, so that even a cloth has
 * something to go by; what a camera's noise alone shows never looks alike twice.
 *
 * Reference: Lucas, Kanade (1981), An iterative image registration technique; Shi, Tomasi (1994), Good features to track.
 */
export function fitFeatures(
  door: OpenCvDoor,
  photo: Raster,
  reference: Raster,
  moving: { readonly photo: Mask | null; readonly reference: Mask | null },
): FeatureFit | NoFeatureFit {
  let fit: Fitted | null = null;
  for (const size of STEPS) {
    const step = stepOf(door, photo, reference, moving, size);
    const found = fit === null ? search(step) : settle(step, scaledUp(fit.move, 1 / step.factor));
    if (found !== null) fit = inFull(found, step.factor);
    if (found === null && fit === null) {
      const corners = cornersOf(door, step.seen, step.before, IDENTITY);
      const real = countRealCorners(door, reference, step.before.detail, corners);
      return { ok: false, reason: real < LEAST_CORNERS ? 'plain' : 'unlike' };
    }
  }
  if (fit === null) return { ok: false, reason: 'unlike' };
  const doubt = frameDoubt(
    fit.agreed.map(({ to }) => to),
    fit.spreadPx,
    reference,
  );
  if (!(doubt.overallPx <= MOST_DOUBT_SHARE * Math.max(reference.width, reference.height))) {
    return { ok: false, reason: 'plain' };
  }
  return { ok: true, move: fit.move, spreadPx: fit.spreadPx, corners: fit.agreed.length, doubt };
}

type Fitted = Pick<RobustFit, 'move' | 'agreed' | 'spreadPx'>;

interface Step {
  readonly door: OpenCvDoor;
  readonly seen: Seen;
  readonly before: Seen;
  readonly withinPx: number;
  /** Px of the raster per px of this step's copies. */
  readonly factor: number;
}

function stepOf(
  door: OpenCvDoor,
  photo: Raster,
  reference: Raster,
  moving: { readonly photo: Mask | null; readonly reference: Mask | null },
  { sidePx, withinPx }: { readonly sidePx: number; readonly withinPx: number },
): Step {
  const [small, smallReference] = [photo, reference].map((one) => shrinkRaster(door, one, sidePx)) as [
    Raster,
    Raster,
  ];
  return {
    door,
    seen: { detail: detailPicture(door, small), moving: moving.photo },
    before: { detail: detailPicture(door, smallReference), moving: moving.reference },
    withinPx,
    factor: reference.width / smallReference.width,
  };
}

function inFull({ move, agreed, spreadPx }: RobustFit, factor: number): Fitted {
  return {
    move: scaledUp(move, factor),
    spreadPx: spreadPx * factor,
    agreed: agreed.map(({ from, to }) => ({ from: timesPx(from, factor), to: timesPx(to, factor) })),
  };
}

/** From every start until one has plenty of corners that agree; the best of all. */
function search(step: Step): RobustFit | null {
  const { width, height } = step.before.detail;
  const middle: PointPx = [width / 2, height / 2];
  let best: RobustFit | null = null;
  for (const start of [null, ...STARTS]) {
    const move =
      start === null
        ? IDENTITY
        : similarityAbout(middle, {
            shiftPx: [start.aside[0] * width, start.aside[1] * height],
            turnDeg: start.turnDeg,
            zoom: start.zoom,
          });
    const corners = cornersOf(step.door, step.seen, step.before, move);
    const pairs = followFromReference(step.door, step.seen, step.before, move, corners);
    // Bent a little between start and end, so that a coarse start is enough.
    const coarse = robustSimilarity(pairs, 2 * step.withinPx);
    const found = coarse === null ? null : settle(step, coarse.move);
    if (found !== null && found.agreed.length > (best?.agreed.length ?? 0)) best = found;
    if (best !== null && best.agreed.length >= PLENTY) break;
  }
  return best;
}

/** The fit after bringing the photo nearer by what was found, twice: what is seen at an angle is followed worse. */
function settle({ door, seen, before, withinPx }: Step, start: Similarity): RobustFit | null {
  let [fit, move] = [null as RobustFit | null, start];
  for (let round = 0; round < 2; round++) {
    const pairs = followFromReference(door, seen, before, move, cornersOf(door, seen, before, move));
    fit = reweighted(pairs, move, withinPx);
    if (fit === null || fit.agreed.length < Math.max(LEAST_AGREED, LEAST_SHARE * pairs.length)) return null;
    move = fit.move;
  }
  return fit;
}

function timesPx([x, y]: PointPx, factor: number): PointPx {
  return [x * factor, y * factor];
}
