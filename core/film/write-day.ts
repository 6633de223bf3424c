import type { Day } from '../day/day.ts';
import type { Raster } from '../raster/raster.ts';

/** Digits on a grid of 5 × 7, a row a line. */
const DIGITS: Readonly<Record<string, string>> = {
  '0': ' ### #   ##  ### # ###  ##   # ### ',
  '1': '  #   ##    #    #    #    #   ### ',
  '2': ' ### #   #    #   #   #   #   #####',
  '3': '#####   #   #     #     ##   # ### ',
  '4': '   #   ##  # # #  # #####   #    # ',
  '5': '######    ####     #    ##   # ### ',
  '6': '  ##  #   #    #### #   ##   # ### ',
  '7': '#####    #   #   #   #    #    #   ',
  '8': ' ### #   ##   # ### #   ##   # ### ',
  '9': ' ### #   ##   # ####    #   #  ##  ',
  '-': '               #####               ',
};
const GRID = { across: 5, down: 7, pitch: 6 };
const INK = [255, 255, 255] as const;
const PLATE = [42, 20, 48] as const;

/**
 * Writes a day into the lower left corner of a picture, light on a dark plate: 2026-10-18.
 *
 * Notes: digits are drawn here because a font is not at hand on every machine.
 */
export function writeDay(picture: Raster, day: Day): void {
  const size = Math.max(1, Math.round(picture.width / 220));
  const margin = 2 * size;
  const wide = (day.length * GRID.pitch - 1) * size + 2 * margin;
  const high = GRID.down * size + 2 * margin;
  const [left, top] = [2 * margin, picture.height - 2 * margin - high];
  fill(picture, left, top, wide, high, PLATE);
  [...day].forEach((letter, place) => {
    const form = DIGITS[letter] ?? '';
    [...form].forEach((dot, k) => {
      if (dot !== '#') return;
      const x = left + margin + (place * GRID.pitch + (k % GRID.across)) * size;
      const y = top + margin + Math.floor(k / GRID.across) * size;
      fill(picture, x, y, size, size, INK);
    });
  });
}

function fill(
  { width, height, data }: Raster,
  left: number,
  top: number,
  wide: number,
  high: number,
  colour: readonly [number, number, number],
): void {
  for (let y = Math.max(top, 0); y < Math.min(top + high, height); y++) {
    for (let x = Math.max(left, 0); x < Math.min(left + wide, width); x++) {
      data.set(colour, 3 * (y * width + x));
    }
  }
}
