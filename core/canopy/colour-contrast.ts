import type { LabPicture } from '../raster/lab.ts';
import { colourCells, colourShares, shareRatios, smoothShares } from './colour-table.ts';

/** Which class a pixel teaches: 1 canopy, 2 pot, 0 neither. */
export type Lessons = Uint8Array;

/** Share of a class that a colour must have before it counts as seen. */
const UNSEEN_SHARE = 0.0015;

/**
 * How much more often each pixel's colour is met in the canopy of this very photo than on its pot: logarithm of the
 * ratio, held within ±3; 0 where the colour was met in neither or alike in both, so a pot whose colour the leaves
 * share says nothing instead of something wrong.
 */
export function colourContrast(picture: LabPicture, lessons: Lessons): Float32Array {
  const cells = colourCells(picture);
  const sharesOf = (wanted: 1 | 2) => {
    const weights = new Uint8Array(lessons.length);
    for (let i = 0; i < weights.length; i++) weights[i] = lessons[i] === wanted ? 1 : 0;
    return smoothShares(colourShares(cells, weights));
  };
  const canopy = sharesOf(1);
  const pot = sharesOf(2);
  const ratios = shareRatios(canopy, pot, { unseen: UNSEEN_SHARE, most: 3 });
  const contrast = new Float32Array(cells.length);
  for (let i = 0; i < contrast.length; i++) contrast[i] = ratios[cells[i] as number] as number;
  return contrast;
}
