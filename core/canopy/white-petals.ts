import type { LabPicture } from '../raster/lab.ts';
import type { Evidence } from './evidence.ts';
import type { PixelShares } from './model/pixel-shares.ts';

/** From which L* a backdrop may be, and at which it surely is, as light as white petal in its own shade or in light. */
const PETAL_L = { from: 45, full: 65 };
/** Chroma at which a backdrop is too coloured for white petal. */
const PETAL_CHROMA = 12;
/** Below this chance of white petal colour is taken at its word. */
const LEAST_CHANCE = 0.01;

/**
 * White petal before a white or grey backdrop looks like the backdrop. There its likeness says nothing against a
 * flower, so it is heard no louder than the network doubts the flower: log odds are at least those of the share of
 * flower, less where the backdrop is darker or more coloured than petal.
 *
 * @param byColour whether something stands before the backdrop, by its distance from it
 * @param colour the backdrop expected
 */
export function allowingPetals(
  byColour: Evidence,
  colour: LabPicture,
  { flower }: Pick<PixelShares, 'flower'>,
): Evidence {
  const logOdds = byColour.logOdds.slice();
  for (let i = 0; i < logOdds.length; i++) {
    const odds = logOdds[i] as number;
    if (odds > 0) continue;
    const light = ((colour.l[i] as number) - PETAL_L.from) / (PETAL_L.full - PETAL_L.from);
    const a = colour.a[i] as number;
    const b = colour.b[i] as number;
    const white = Math.max(0, Math.min(1, light)) * Math.max(0, 1 - Math.sqrt(a * a + b * b) / PETAL_CHROMA);
    const chance = white * (flower[i] as number);
    if (chance >= LEAST_CHANCE) logOdds[i] = Math.max(odds, Math.log(chance));
  }
  return { ...byColour, logOdds };
}
