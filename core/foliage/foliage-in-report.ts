import type { PointPx } from '../raster/raster.ts';
import type { FoliageShares } from '../report.ts';
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

/** Why the leaf's colour could not be told. */
export function foliageNotes(leaf: LeafReading | null): readonly string[] {
  return leaf === null || leaf.foliage.ok ? [] : [leaf.foliage.why];
}
