import type { Raster } from '../raster/raster.ts';
import { decidePlant } from './decide-plant.ts';
import type { FoundPlant, NoPlant } from './found-plant.ts';
import { gatherEvidence } from './gather-evidence.ts';
import type { KnownOfPlant } from './known.ts';
import type { Stroke } from './stroke.ts';

/**
 * Cuts the plant's canopy and finds the pot's rim: hears every voice, then decides.
 *
 * @param raster the upright photo, at most about 1600 px on its longer side
 * @param known what is known beside the photo
 * @param strokes the grower's strokes, px of the raster
 * @returns the canopy's mask, parts, rim and doubts in px of the raster; or the reason why none is given
 *
 * Example: `await findPlant(raster, NOTHING_KNOWN)`
 */
export async function findPlant(
  raster: Raster,
  known: KnownOfPlant,
  strokes: readonly Stroke[] = [],
): Promise<FoundPlant | NoPlant> {
  const gathered = await gatherEvidence(raster, known);
  return gathered.ok ? decidePlant(gathered, strokes) : gathered;
}
