import type { PointPx, Raster } from '../../../core/raster/raster.ts';
import { moved, type Similarity } from '../../../core/stand/frame/similarity.ts';
import { drawnSheet, FINE_PER_MM } from './drawn-sheet.ts';

/** How large the pasted sheet is, px of the sample per mm, and where its corner lies, shares of the sample's sides. */
const PX_PER_MM = 1.4;
const CORNER: PointPx = [0.085, 0.085];
/** Samples a px along each side. */
const SAMPLES = 3;
/** Paper in the stand's light, and black ink on it, of 255. */
const [WHITE, BLACK] = [205, 22];

/** Hangs the stand sheet, A4, in the upper left corner of sample photos, each time at the same place of the stand. */
export function sheetPaster(): (raster: Raster, isReference: boolean, toReference: Similarity) => Raster {
  const sheet = drawnSheet();
  return (raster, _isReference, toReference) => {
    const { width, height } = raster;
    const data = raster.data.slice();
    const perPx = FINE_PER_MM / PX_PER_MM;
    for (let row = 0; row < height; row++) {
      for (let column = 0; column < width; column++) {
        let [light, covered] = [0, 0];
        for (let sample = 0; sample < SAMPLES * SAMPLES; sample++) {
          const within: PointPx = [
            column + ((sample % SAMPLES) + 0.5) / SAMPLES,
            row + (Math.floor(sample / SAMPLES) + 0.5) / SAMPLES,
          ];
          const [x, y] = moved(toReference, within);
          const across = Math.floor((x - CORNER[0] * width) * perPx);
          const down = Math.floor((y - CORNER[1] * height) * perPx);
          if (across < 0 || down < 0 || across >= sheet.width || down >= sheet.height) continue;
          covered++;
          light += BLACK + (WHITE - BLACK) * (sheet.grey[down * sheet.width + across] as number);
        }
        if (covered === 0) continue;
        const rest = 1 - covered / SAMPLES ** 2;
        for (let channel = 0; channel < 3; channel++) {
          const at = 3 * (row * width + column) + channel;
          data[at] = Math.round(rest * (data[at] as number) + light / SAMPLES ** 2);
        }
      }
    }
    return { width, height, data };
  };
}
