import type { PointPx } from '../raster/raster.ts';
import type { FoliageShares } from '../report.ts';
import { mayBeFlower } from './foliage-words.ts';
import type { LeafReading } from './read-leaf.ts';

/** The report's part on leaf, in px of the photo as stored upright; `null` when it was not read or cannot be told. */
export function foliageInReport(
  leaf: LeafReading | null,
  inPhoto: (point: PointPx) => PointPx,
): FoliageShares | null {
  if (leaf === null || !leaf.foliage.ok) return null;
  const { ok: _ok, where, ...shares } = leaf.foliage;
  return {
    ...shares,
    where: where.map((zone) => ({
      ...zone,
      centrePx: inPhoto(zone.centrePx),
      outlinePx: zone.outlinePx.map(inPhoto),
    })),
  };
}

/** Why the leaf's colour could not be told, and that yellow flowers may count as yellow leaf. */
export function foliageNotes(leaf: LeafReading | null): readonly string[] {
  if (leaf === null) return [];
  if (!leaf.foliage.ok) return [leaf.foliage.why];
  return mayBeFlower(leaf.foliage) ? [YELLOW_FLOWERS] : [];
}

const YELLOW_FLOWERS =
  'Most of the yellow stands high on the plant. Should it be in yellow bloom, some of those flowers may be counted as yellow leaf: look before you clear any.';
