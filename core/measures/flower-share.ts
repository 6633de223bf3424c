import { PARTS, type PartMap } from '../canopy/found-plant.ts';

/**
 * How much of the canopy is flower.
 *
 * @param parts what each pixel is
 * @returns flower px ÷ canopy px, above 0 and at most 1; `null` when no flower was told from leaf
 *
 * Notes: as seen from the camera. White and green flowers are told from leaf only by the network, so without it they are
 * missing from the share.
 *
 * Reference: a plain share of area, our own; bias as of the cut-out's parts.
 *
 * Example: 30 px of flower and 70 px of leaf give 0.3.
 */
export function flowerShare({ data }: PartMap): number | null {
  const [leaf, flower] = [PARTS.indexOf('leaf'), PARTS.indexOf('flower')];
  let [leafPx, flowerPx] = [0, 0];
  for (let i = 0; i < data.length; i++) {
    const part = data[i];
    if (part === leaf) leafPx++;
    else if (part === flower) flowerPx++;
  }
  return flowerPx === 0 ? null : flowerPx / (leafPx + flowerPx);
}
