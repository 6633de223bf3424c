import type { Raster } from '../raster/raster.ts';
import { inverseOf, type Similarity } from '../stand/frame/similarity.ts';
import type { FilmWindow } from './cast-film.ts';

/** What is shown where a photo does not reach, red, green, blue. */
const BESIDE = [34, 24, 38] as const;

/**
 * Draws one photo of a film as its stage shows it.
 *
 * @param photo the photo or a reduced copy
 * @param photoSize size of the photo whose px `toStage` speaks of
 * @param toStage photo px to stage px
 * @param window the part of the stage to draw, stage px
 * @param into picture to draw into, of any size; its px are square in the window
 *
 * Notes: bilinear. A copy about as fine as the picture gives the clearest result: a finer one flickers.
 */
export function drawOnStage(
  photo: Raster,
  photoSize: { readonly widthPx: number; readonly heightPx: number },
  toStage: Similarity,
  window: FilmWindow,
  into: Raster,
): void {
  const back = inverseOf(toStage);
  const unit = window.width / into.width;
  const [across, down] = [photo.width / photoSize.widthPx, photo.height / photoSize.heightPx];
  const { width, height, data } = photo;
  let at = 0;
  for (let row = 0; row < into.height; row++) {
    const stageY = window.y + (row + 0.5) * unit;
    for (let column = 0; column < into.width; column++, at += 3) {
      const stageX = window.x + (column + 0.5) * unit;
      // Pixel centres lie at +0.5.
      const x = (back.a * stageX - back.b * stageY + back.shiftX) * across - 0.5;
      const y = (back.b * stageX + back.a * stageY + back.shiftY) * down - 0.5;
      if (x < -0.5 || y < -0.5 || x > width - 0.5 || y > height - 0.5) {
        into.data[at] = BESIDE[0];
        into.data[at + 1] = BESIDE[1];
        into.data[at + 2] = BESIDE[2];
        continue;
      }
      const left = Math.min(Math.max(Math.floor(x), 0), width - 1);
      const top = Math.min(Math.max(Math.floor(y), 0), height - 1);
      const right = Math.min(left + 1, width - 1);
      const bottom = Math.min(top + 1, height - 1);
      const [u, v] = [Math.min(Math.max(x - left, 0), 1), Math.min(Math.max(y - top, 0), 1)];
      const [a, b] = [3 * (top * width + left), 3 * (top * width + right)];
      const [c, d] = [3 * (bottom * width + left), 3 * (bottom * width + right)];
      for (let channel = 0; channel < 3; channel++) {
        const above = (data[a + channel] as number) * (1 - u) + (data[b + channel] as number) * u;
        const below = (data[c + channel] as number) * (1 - u) + (data[d + channel] as number) * u;
        into.data[at + channel] = Math.round(above * (1 - v) + below * v);
      }
    }
  }
}
