import { requireFinite } from '../errors/expect.ts';
import { type Mask, maskArea, type PointPx } from '../raster/raster.ts';

/** A line through the rim's middle. */
export interface BestAxis {
  /** Lean from the upright, degrees, right positive, −30 to 30. */
  readonly tiltDeg: number;
  /** Mirror symmetry about it, 0–100. */
  readonly symmetry: number;
}

const FARTHEST_DEG = 30;
const COARSE_STEP_DEG = 2;
/** Pixels looked at for each lean, first and last: more would move the symmetry by less than a tenth of a point. */
const MOST_SAMPLES = { coarse: 6_000, fine: 40_000 };
/** Where a lean gains less than this over the upright, it is no lean. */
const LEAST_GAIN = 0.05;
/** The search ends here. */
const FINEST_DEG = 0.04;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * Best axis: the line through the middle of the pot rim about which the canopy is most symmetric.
 *
 * @param mask canopy, px
 * @param foot the rim's middle, px
 * @returns lean and symmetry, or `null` when nothing of the canopy stands above the rim
 *
 * How: for each lean the canopy above the foot, across the line, is mirrored in the line, pixel by pixel; every second degree from
 * −30 to 30 first, then the best of them narrowed down to 0.04°.
 *
 * Notes: at lean 0 it is the mirror symmetry of the score. A ball whose middle stands d beside the foot and h above it has
 * atan(d ÷ h). It never makes the symmetry worse, so compare it with itself only. Where the canopy is a half ball about the
 * rim's middle every line is as good, and the upright is given. A lean past 30° reads 30.
 *
 * Reference: axiality, the largest mirror overlap over all lines: de Valcourt (1966), Measures of axial symmetry for
 * ovals; here over the lines through one point.
 *
 * Example: a ball of any size, its middle 10 beside and 100 above the foot, leans by 5.7° and has 100 about that line.
 */
export function bestAxis(mask: Mask, foot: PointPx): BestAxis | null {
  requireFinite(foot[0], 'foot[0]');
  requireFinite(foot[1], 'foot[1]');
  const few = samplesOf(mask, foot, MOST_SAMPLES.coarse);
  const many = samplesOf(mask, foot, MOST_SAMPLES.fine);
  const upright = symmetryAbout(mask, foot, many, 0);
  if (upright === null) return null;

  let coarse: BestAxis = { tiltDeg: 0, symmetry: symmetryAbout(mask, foot, few, 0) ?? -1 };
  for (let tiltDeg = -FARTHEST_DEG; tiltDeg <= FARTHEST_DEG; tiltDeg += COARSE_STEP_DEG) {
    const symmetry = symmetryAbout(mask, foot, few, tiltDeg) ?? -1;
    if (symmetry > coarse.symmetry) coarse = { tiltDeg, symmetry };
  }

  // Golden section: within one coarse step of the best there is one hill.
  const symmetryAt = (tiltDeg: number) => symmetryAbout(mask, foot, many, tiltDeg) ?? -1;
  let [low, high] = [
    Math.max(-FARTHEST_DEG, coarse.tiltDeg - COARSE_STEP_DEG),
    Math.min(FARTHEST_DEG, coarse.tiltDeg + COARSE_STEP_DEG),
  ];
  let left = high - GOLDEN * (high - low);
  let right = low + GOLDEN * (high - low);
  let [atLeft, atRight] = [symmetryAt(left), symmetryAt(right)];
  while (high - low > FINEST_DEG) {
    if (atLeft >= atRight) {
      [high, right, atRight] = [right, left, atLeft];
      left = high - GOLDEN * (high - low);
      atLeft = symmetryAt(left);
    } else {
      [low, left, atLeft] = [left, right, atRight];
      right = low + GOLDEN * (high - low);
      atRight = symmetryAt(right);
    }
  }
  const tiltDeg = (low + high) / 2;
  const symmetry = symmetryAt(tiltDeg);
  return symmetry - upright < LEAST_GAIN ? { tiltDeg: 0, symmetry: upright } : { tiltDeg, symmetry };
}

/** Middles of canopy pixels on an even grid, from the foot: right and up, in turns. */
function samplesOf({ width, height, data }: Mask, [footX, footY]: PointPx, most: number): Float64Array {
  const stride = Math.max(1, Math.ceil(Math.sqrt(maskArea({ width, height, data }) / most)));
  const samples = new Float64Array(2 * Math.ceil(width / stride) * Math.ceil(height / stride));
  let end = 0;
  for (let y = 0; y < height; y += stride) {
    for (let x = 0; x < width; x += stride) {
      if (data[y * width + x] !== 1) continue;
      samples[end++] = x + 0.5 - footX;
      samples[end++] = footY - (y + 0.5);
    }
  }
  return samples.subarray(0, end);
}

/** 100 × the share of the samples above the foot whose mirror image is canopy above it too. */
function symmetryAbout(
  { width, height, data }: Mask,
  [footX, footY]: PointPx,
  samples: Float64Array,
  tiltDeg: number,
): number | null {
  const lean = (tiltDeg * Math.PI) / 180;
  const [sin, cos] = [Math.sin(lean), Math.cos(lean)];
  const [sinTwice, cosTwice] = [Math.sin(2 * lean), Math.cos(2 * lean)];
  let above = 0;
  let shared = 0;
  for (let k = 0; k < samples.length; k += 2) {
    const right = samples[k] as number;
    const up = samples[k + 1] as number;
    if (right * sin + up * cos <= 0) continue;
    above++;
    // A mirror image lies as high along the line, so it is above the foot as well.
    const x = Math.floor(footX - right * cosTwice + up * sinTwice);
    const y = Math.floor(footY - (right * sinTwice + up * cosTwice));
    if (x >= 0 && y >= 0 && x < width && y < height) shared += data[y * width + x] as number;
  }
  return above === 0 ? null : (100 * shared) / above;
}
