import type { PartMap } from '../canopy/found-plant.ts';
import type { Raster } from '../raster/raster.ts';
import { IDENTITY } from '../stand/frame/similarity.ts';
import type { StandReading } from '../stand/read-stand.ts';
import { balanceByBackdrop } from './balance-by-backdrop.ts';
import { balanceByGreys } from './balance-by-greys.ts';
import { AS_PHOTOGRAPHED, type ColourBalance } from './colour-balance.ts';

/** What a photo's white and exposure are told by. */
export interface BalanceClues {
  /** The stand's reference picture, of any size; `null` when there is none. */
  readonly reference: Raster | null;
  /** What the stand tells about the photo; `null` when nothing is known of it. */
  readonly stand: Pick<StandReading, 'frame' | 'isElsewhere' | 'greys'> | null;
}

/** A balance, with a plain sentence on why the colours are compared with no other photo's; `null` when they are. */
export interface PhotoBalance {
  readonly balance: ColourBalance;
  readonly why: string | null;
}

const WHY = {
  noStand:
    'White and exposure of this photo could not be told, so its colours are compared with no other photo’s. Set up the stand: an empty photo of it or the printed sheet is enough.',
  notSeen:
    'White and exposure of this photo could not be told from the stand’s backdrop, so its colours are compared with no other photo’s. Leave some backdrop in sight, neither black nor burnt out, or put up the printed sheet.',
} as const;

/**
 * Balances a photo's white and exposure: by the stand sheet's grey patches, else by the stand's backdrop against its
 * reference picture, else not at all.
 *
 * @param photo the upright raster
 * @param parts what each of its pixels is
 */
export function balancePhoto(
  photo: Raster,
  parts: PartMap,
  { reference, stand }: BalanceClues,
): PhotoBalance {
  const isComparable =
    reference !== null &&
    stand !== null &&
    !stand.isElsewhere &&
    reference.width === photo.width &&
    reference.height === photo.height;
  // A backdrop with nothing on it to lay pictures over one another by looks the same a little aside.
  const byBackdrop = isComparable
    ? balanceByBackdrop(photo, reference, stand.frame?.move ?? IDENTITY, parts)
    : null;
  const byGreys = stand?.greys == null ? null : balanceByGreys(stand.greys, byBackdrop);
  const balance = byGreys ?? byBackdrop;
  if (balance !== null) return { balance, why: null };
  return { balance: AS_PHOTOGRAPHED, why: reference === null ? WHY.noStand : WHY.notSeen };
}
