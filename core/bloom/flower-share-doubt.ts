import { PARTS, type PartMap } from '../canopy/found-plant.ts';
import { requireFinite } from '../errors/expect.ts';
import { NORMAL_95 } from '../measures/plus-minus.ts';

/**
 * Of the share itself, one standard deviation: light, and petals that lie a little otherwise. Wide on purpose: five rendered plants photographed
 * again scattered by 0.1 to 0.35 of what is stated (`tests/core/bloom/reshot-figures.ts`), but real petals move and drop, and renders' do not.
 */
const OF_SHARE = 0.03;
/** Where hardly any flower stands, one standard deviation: a few px of leaf taken for petal. */
const LEAST = 0.004;
/** How many of the edges between petal and leaf move alike from one photo to the next. */
const ALIKE = 0.35;

/**
 * Plus-minus of the flower share: how far it differs from photo to photo of the same plant on one day.
 *
 * @param parts what each pixel is
 * @param edgePx one standard deviation of an edge's place, px
 * @returns 95 % repeatability as a share of the canopy, 0–1; `null` without canopy
 *
 * How: each edge between petal and leaf may lie the cut-out's doubt farther in or out, part of it alike on all of them; with it the share's own
 * scatter and a floor, in quadrature.
 *
 * Notes: how well the share repeats, not how true it is: petals that are always taken for leaf move no curve. Truth: `tests/core/bloom/flower-figures.ts`.
 *
 * Reference: ISO/IEC Guide 98-3:2008, 5.1 (combined standard uncertainty).
 *
 * Example: without any flower 0.8 points.
 */
export function flowerSharePlusMinus(parts: PartMap, edgePx: number): number | null {
  requireFinite(edgePx, 'edgePx');
  const { width, data } = parts;
  const [leaf, flower] = [PARTS.indexOf('leaf'), PARTS.indexOf('flower')];
  let [leafPx, flowerPx, edges] = [0, 0, 0];
  data.forEach((part, at) => {
    if (part !== leaf && part !== flower) return;
    if (part === leaf) leafPx++;
    else flowerPx++;
    const other = part === leaf ? flower : leaf;
    if ((at + 1) % width !== 0 && data[at + 1] === other) edges++;
    if (data[at + width] === other) edges++;
  });
  const canopyPx = leafPx + flowerPx;
  if (canopyPx === 0) return null;
  const byEdges = (ALIKE * edgePx * edges) / canopyPx;
  return NORMAL_95 * Math.hypot(LEAST, OF_SHARE * (flowerPx / canopyPx), byEdges);
}
