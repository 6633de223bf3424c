import { type Evidence, MOST_SURE } from './evidence.ts';
import type { PixelShares } from './model/pixel-shares.ts';

/** Shares below this are not told apart: the network's output is rounded and its sureness not to be taken at its word. */
const LEAST_SHARE = 0.01;

/** The network's opinion on "plant or pot stands here". */
export function networkOnObject(shares: PixelShares): Evidence {
  const { width, height, background } = shares;
  const logOdds = new Float32Array(background.length);
  for (let i = 0; i < logOdds.length; i++) logOdds[i] = -logit(background[i] as number);
  return { width, height, logOdds };
}

/** The network's opinion on "plant rather than pot, soil, label or support", given that something stands here. */
export function networkOnPlant(shares: PixelShares): Evidence {
  const { width, height, background, foliage, flower } = shares;
  const logOdds = new Float32Array(foliage.length);
  for (let i = 0; i < logOdds.length; i++) {
    const plant = (foliage[i] as number) + (flower[i] as number) + LEAST_SHARE;
    const rest = Math.max(LEAST_SHARE, 1 - (background[i] as number) - plant + 2 * LEAST_SHARE);
    logOdds[i] = Math.max(-MOST_SURE, Math.min(MOST_SURE, Math.log(plant / rest)));
  }
  return { width, height, logOdds };
}

function logit(share: number): number {
  return Math.log((share + LEAST_SHARE) / (1 - share + LEAST_SHARE));
}

/** Less canopy than this share of what stands before the backdrop: the network has not understood the picture. */
const LEAST_SEEN_SHARE = 0.15;

/** Whether the network sees a plant in what stands before the backdrop; if not, it is better not heard. */
export function networkSeesPlant(shares: PixelShares | null, objectAreaPx: number): shares is PixelShares {
  if (shares === null) return false;
  let canopy = 0;
  for (let i = 0; i < shares.foliage.length; i++) {
    canopy += (shares.foliage[i] as number) + (shares.flower[i] as number);
  }
  return canopy > LEAST_SEEN_SHARE * objectAreaPx;
}
