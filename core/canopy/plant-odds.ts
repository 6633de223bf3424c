import { type Evidence, joinEvidence, voiced } from './evidence.ts';
import type { EvidenceSource } from './evidence-sources.ts';
import type { PixelShares } from './model/pixel-shares.ts';
import { networkOnPlant } from './network-voice.ts';
import { LEAF_ROUGHNESS } from './pot-clues.ts';
import { type PotShape, potZone } from './pot-shape.ts';

/** What tells plant from pot, soil and support; all of one size. */
export interface PlantClues {
  readonly pot: PotShape | null;
  /** Opinion by colour: leaf and petal in general, and as met in this photo's canopy and pot. */
  readonly plant: Evidence;
  /** Mean change of colour from pixel to pixel nearby, ΔE. */
  readonly roughness: Float32Array;
  readonly shares: PixelShares | null;
}

/** How loud colour is beside the network, and how sure it may be there. */
const COLOUR_BESIDE_NETWORK = { weight: 0.5, most: 1.5 };
/** How loud place and texture are beside the network, which sees both itself. */
const PLACE_BESIDE_NETWORK = 0.4;

/** A surface on the pot that is smoother than this share of a leaf's roughness is pot, and how surely. */
const SMOOTH_SHARE = 0.45;
const SMOOTH_ODDS = 1.5;
const FULLY_SMOOTH_SHARE = 0.3;

/** Log odds of canopy by where a pixel lies: above the rim, in its opening, before the pot's body, and beside it. */
const ABOVE_ODDS = 2.5;
const OPENING_ODDS = -1;
const BODY_ODDS = -1;
const BESIDE_ODDS = -0.3;
/** Without a pot in view most of what stands there is canopy. */
const NO_POT_ODDS = 0.5;

/**
 * Log odds that what stands at a pixel is canopy rather than pot, soil, label or support: colour, texture, place over
 * the pot and the network's opinion, added. Each can be left out.
 */
export function plantOdds(clues: PlantClues, without: ReadonlySet<EvidenceSource> = new Set()): Evidence {
  const { pot, plant, roughness, shares } = clues;
  const hearsNetwork = shares !== null && !without.has('network');
  const loud = hearsNetwork ? PLACE_BESIDE_NETWORK : 1;
  const voices: Evidence[] = [];
  if (!without.has('plant-colour')) {
    const { weight, most } = COLOUR_BESIDE_NETWORK;
    voices.push(hearsNetwork ? voiced(plant, weight, most) : plant);
  }
  if (!without.has('texture') && pot !== null) voices.push(voiced(smoothPot(pot, plant, roughness), loud));
  if (!without.has('over-pot')) voices.push(voiced(overPot(pot, plant), loud));
  if (hearsNetwork) voices.push(networkOnPlant(shares));
  const silence: Evidence = { ...plant, logOdds: new Float32Array(plant.logOdds.length) };
  return joinEvidence(silence, ...voices);
}

function overPot(pot: PotShape | null, { width, height }: Evidence): Evidence {
  if (pot === null) return { width, height, logOdds: new Float32Array(width * height).fill(NO_POT_ODDS) };
  const worth = { above: ABOVE_ODDS, opening: OPENING_ODDS, body: BODY_ODDS, beside: BESIDE_ODDS };
  const logOdds = new Float32Array(width * height);
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) logOdds[i] = worth[potZone(pot, x + 0.5, y + 0.5)];
  }
  return { width, height, logOdds };
}

/** Before the pot's body a smooth surface is the pot itself, whatever its colour. */
function smoothPot(pot: PotShape, { width, height }: Evidence, roughness: Float32Array): Evidence {
  const logOdds = new Float32Array(width * height);
  for (let y = Math.max(0, Math.floor(pot.topY)); y < Math.min(height, pot.bottomY); y++) {
    for (let x = 0; x < width; x++) {
      if (potZone(pot, x + 0.5, y + 0.5) !== 'body') continue;
      const rough = (roughness[y * width + x] as number) / LEAF_ROUGHNESS;
      const smooth = (SMOOTH_SHARE - rough) / (SMOOTH_SHARE - FULLY_SMOOTH_SHARE);
      logOdds[y * width + x] = -SMOOTH_ODDS * Math.max(0, Math.min(1, smooth));
    }
  }
  return { width, height, logOdds };
}
