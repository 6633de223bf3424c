import { sheetDrawing } from '../../../core/stand/sheet/sheet-drawing.ts';
import { SHEET_WORDS } from '../../../core/stand/sheet/sheet-words.ts';

/** Px of the drawn sheet per mm. */
export const FINE_PER_MM = 6;

/** The stand sheet, A4, row by row: 0 ink, 1 paper. */
export interface DrawnSheet {
  readonly width: number;
  readonly height: number;
  readonly grey: Float32Array;
}

/** The sheet's rings and grey patches as greys, `FINE_PER_MM` px a mm; words and lines are left out. */
export function drawnSheet(): DrawnSheet {
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
