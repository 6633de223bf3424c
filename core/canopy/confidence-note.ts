import { maskArea } from '../raster/raster.ts';
import type { FoundPlant } from './found-plant.ts';
import { NOTES } from './hints.ts';

/** Below this the outline is called doubtful. */
export const DOUBTFUL_CONFIDENCE = 0.9;
/** Zones that hold less of the canopy than this are not what makes an outline doubtful. */
const TOLD_SHARE = 0.02;

/**
 * Why an outline is doubtful and what would help, in one note; none when it is sure enough.
 *
 * Example: confidence 0.84 before a busy backdrop gives "The outline is doubtful, about 84 % sure: … A plain cloth
 * behind the plant, or a photo of the empty stand from the same place, would make it surer. …"
 */
export function confidenceNote(
  found: Pick<FoundPlant, 'canopy' | 'confidence' | 'unsureZones' | 'notes'>,
): string[] {
  if (!(found.confidence < DOUBTFUL_CONFIDENCE)) return [];
  const sure = Math.round(100 * found.confidence);
  const why = reasons(found);
  const because = why.length === 0 ? 'plant and surroundings look alike' : why.join(', and ');
  return [
    `The outline is doubtful, about ${sure} % sure: ${because}. ${help(found.notes)} Until then mend the outline where it is wrong.`,
  ];
}

function reasons({
  canopy,
  unsureZones,
  notes,
}: Pick<FoundPlant, 'canopy' | 'unsureZones' | 'notes'>): string[] {
  const why: string[] = [];
  const unsurePx = unsureZones.reduce((sum, { areaPx }) => sum + areaPx, 0);
  const share = unsurePx / Math.max(1, maskArea(canopy));
  if (share >= TOLD_SHARE)
    why.push(`zones as large as ${Math.round(100 * share)} % of the canopy may or may not be plant`);
  if (notes.includes(NOTES.busyPlace)) why.push('things behind the plant look like it');
  if (notes.includes(NOTES.faintEdge)) why.push('parts of the plant are coloured like the backdrop');
  if (notes.includes(NOTES.unsharp)) why.push('the photo is a little unsharp');
  return why;
}

/** What the grower can change, going by what is known to be amiss. */
function help(notes: readonly string[]): string {
  if (notes.includes(NOTES.emptyMoved))
    return 'A new photo of the empty stand, from the same place and in the same light, would make it surer.';
  if (notes.includes(NOTES.busyPlace))
    return 'A plain cloth behind the plant, or a photo of the empty stand from the same place, would make it surer.';
  if (notes.includes(NOTES.faintEdge))
    return 'A backdrop of another colour than leaf and flower, or a photo of the empty stand, would make it surer.';
  if (notes.includes(NOTES.unsharp)) return 'More light and a camera that stands still would make it surer.';
  return 'A plain cloth behind the plant, a photo of the empty stand and more light would make it surer.';
}
