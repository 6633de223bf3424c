import type { GreyReading } from '../stand/sheet/sheet-reading.ts';
import { AS_PHOTOGRAPHED, type ColourBalance, tintOfLogGain } from './colour-balance.ts';

/** Least doubt of a gain's logarithm: printed greys are not quite grey. A guess. */
const PRINT_DOUBT = 0.015;

/**
 * Balances a photo's white by the stand sheet's grey patches, and its exposure by the backdrop where that is known.
 *
 * @param byBackdrop the balance against the stand's reference picture; `null` when there is none: then the exposure stays
 *   as photographed, in full doubt
 * @returns `null` when the patches cannot be read
 *
 * Notes: patches tell the colour of the light, not its strength, which hangs on the printer's ink.
 */
export function balanceByGreys(greys: GreyReading, byBackdrop: ColourBalance | null): ColourBalance | null {
  if (greys.gains === null) return null;
  const exposure = byBackdrop?.gains[1] ?? 1;
  const [red, green, blue] = greys.gains;
  const apart = greys.spread ?? 0;
  return {
    from: 'sheet',
    gains: [red * exposure, green * exposure, blue * exposure],
    doubt: {
      stops: (byBackdrop ?? AS_PHOTOGRAPHED).doubt.stops,
      tint: tintOfLogGain(Math.hypot(PRINT_DOUBT, apart / 2)),
    },
  };
}
