import type { FoundPlant } from '../canopy/found-plant.ts';
import { flowerShare } from '../measures/flower-share.ts';
import { flowerPatches } from './flower-heads.ts';
import { flowerSharePlusMinus } from './flower-share-doubt.ts';

/** Flower as one photo shows it. */
export interface Flower {
  /** Flower ÷ canopy, 0–1; 0 where none was told from leaf. */
  readonly share: number;
  /** 95 % repeatability. */
  readonly plusMinus: number;
  /** Areas of flower that hang together, largest first, mm²; `null` without a scale. Heads are counted by them (`flowerHeads`). */
  readonly patchesMm2: readonly number[] | null;
}

/** Smaller patches are specks, mm². */
const LEAST_PATCH_MM2 = 20;
const MOST_PATCHES = 200;

/** Flower of a cut-out; `mmPerPx` of its raster, `null` without a scale. `null` without canopy. */
export function flowerInReport(
  { parts, edgeUncertaintyPx }: Pick<FoundPlant, 'parts' | 'edgeUncertaintyPx'>,
  mmPerPx: number | null,
): Flower | null {
  const plusMinus = flowerSharePlusMinus(parts, edgeUncertaintyPx);
  if (plusMinus === null) return null;
  const patches = () =>
    flowerPatches(parts)
      .slice(0, MOST_PATCHES)
      .map((px) => px * (mmPerPx as number) ** 2)
      .filter((mm2) => mm2 >= LEAST_PATCH_MM2);
  return { share: flowerShare(parts) ?? 0, plusMinus, patchesMm2: mmPerPx === null ? null : patches() };
}
