import type { PointPx, Raster } from '../../../core/raster/raster.ts';
import { moved, type Similarity } from '../../../core/stand/frame/similarity.ts';
import { sheetDrawing } from '../../../core/stand/sheet/sheet-drawing.ts';
import { SHEET_WORDS } from '../../../core/stand/sheet/sheet-words.ts';

/** How large the pasted sheet is, px of the sample per mm, and where its corner lies, shares of the sample's sides. */
const PX_PER_MM = 1.4;
const CORNER: PointPx = [0.085, 0.085];
/** Px of the drawn sheet per mm. */
const FINE_PER_MM = 6;
/** Samples a px along each side. */
const SAMPLES = 3;
/** Paper in the stand's light, and black ink on it, of 255. */
const [WHITE, BLACK] = [205, 22];

/** The sheet's rings and grey patches as greys, `FINE_PER_MM` px a mm; words and lines are left out. */
function drawnSheet(): { readonly width: number; readonly height: number; readonly grey: Float32Array } {
  const { widthMm, heightMm, shapes } = sheetDrawing('A4', SHEET_WORDS);
  const [width, height] = [Math.round(widthMm * FINE_PER_MM), Math.round(heightMm * FINE_PER_MM)];
  const grey = new Float32Array(width * height).fill(1);
  for (const shape of shapes) {
    if (shape.kind !== 'circle' && shape.kind !== 'rect') continue;
    for (let row = 0, i = 0; row < height; row++) {
      for (let column = 0; column < width; column++, i++) {
        const [x, y] = [(column + 0.5) / FINE_PER_MM, (row + 0.5) / FINE_PER_MM];
        const isInside =
          shape.kind === 'circle'
            ? Math.hypot(x - shape.centreMm[0], y - shape.centreMm[1]) <= shape.radiusMm
            : x >= shape.leftMm &&
              y >= shape.topMm &&
              x <= shape.leftMm + shape.widthMm &&
              y <= shape.topMm + shape.heightMm;
        if (isInside) grey[i] = shape.fill;
      }
    }
  }
  return { width, height, grey };
}

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
