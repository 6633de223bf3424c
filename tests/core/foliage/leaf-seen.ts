import { day } from '../../../core/day/day.ts';
import type { LeafSeen } from '../../../core/foliage/leaf-change.ts';
import type { FoliageShares } from '../../../core/report.ts';

/** Shares that a test looks at; the rest of the leaf is green. */
interface Shares {
  readonly yellow?: number;
  readonly brown?: number;
  readonly where?: readonly { readonly place: string; readonly areaShare: number }[];
}

/** Foliage with ± 2 points on each share. */
export function foliage(
  { yellow = 0, brown = 0, where = [] }: Shares,
  changes: Partial<Pick<FoliageShares, 'against' | 'notCompared'>> = {},
): FoliageShares {
  const share = (value: number) => ({ share: value, plusMinus: 0.02, offBy: 0.02 });
  return {
    green: share(1 - yellow - brown),
    yellow: share(yellow),
    brown: share(brown),
    notCompared: null,
    against: 'own',
    where: where.map((zone) => ({ ...zone, centrePx: [50, 50], outlinePx: [] })),
    leafColour: { l: 45, a: -20, b: 25 },
    departure: 1,
    ...changes,
  };
}

/** A photo's leaf, by default judged by a normal of its own. */
export function leafSeen(
  on: string,
  shares: Shares,
  changes: Partial<
    Pick<LeafSeen, 'turnDeg' | 'normalFrom'> & Pick<FoliageShares, 'against' | 'notCompared'>
  > = {},
): LeafSeen {
  const { turnDeg = 0, normalFrom = [day('2026-04-01')], ...rest } = changes;
  return { day: day(on), turnDeg, normalFrom, foliage: foliage(shares, rest) };
}
