import { type Gains, type LabPicture, labOfRaster, NO_GAINS } from '../raster/lab.ts';
import type { Raster } from '../raster/raster.ts';

/** Where a photo's white and exposure are known from. */
export const BALANCES = ['sheet', 'backdrop', 'none'] as const;
export type BalanceFrom = (typeof BALANCES)[number];

/** White and exposure of one photo against those that its colours are compared in. */
export interface ColourBalance {
  /**
   * `sheet`: by the stand sheet's greys, so grey is grey. `backdrop`: to the light of the stand's reference picture.
   * `none`: neither is known, so its colours are compared with no other photo's.
   */
  readonly from: BalanceFrom;
  /** What linear red, green and blue are multiplied by. */
  readonly gains: Gains;
  /** One standard deviation: of the exposure in stops, and of a* and b* of a white. */
  readonly doubt: { readonly stops: number; readonly tint: number };
}

/** A photo as its camera balanced it; how far automatic white and exposure may be off is a guess. */
export const AS_PHOTOGRAPHED: ColourBalance = {
  from: 'none',
  gains: NO_GAINS,
  doubt: { stops: 0.7, tint: 6 },
};

/** A photo in CIE L*a*b* (D65) with white and exposure balanced. */
export function balancedLab(raster: Raster, { gains }: ColourBalance): LabPicture {
  return labOfRaster(raster, gains);
}

/** a* and b* that a white gains when red or blue light changes by a factor of e against green: cube roots, so about a third of 500 × 0.43 and of 200. */
const TINT_PER_LOG_GAIN = 70;

/** The doubt of a tint, from that of a gain's logarithm. */
export function tintOfLogGain(logGain: number): number {
  return TINT_PER_LOG_GAIN * logGain;
}
