import { describe, expect, it } from 'vitest';
import { measureSilhouette } from '../../../core/measures/measure-silhouette.ts';
import { readSilhouette, type Silhouette } from '../../../core/silhouette/silhouette.ts';
import { drawMask, foundPlant } from '../drawn-shapes.ts';

const RADIUS = 100;

/** A disc with an upright bar of the given width that ends `excessPx` outside it. */
function stemsOf(excessPx: number, widthPx: number) {
  const canopy = drawMask(320, 340, (x, y) => {
    const [across, up] = [x - 160, 190 - y];
    const bar = Math.abs(across) <= widthPx / 2 && up > 0 && up <= RADIUS + excessPx;
    return Math.hypot(across, up) <= RADIUS || bar;
  });
  return measureSilhouette(readSilhouette(canopy) as Silhouette, foundPlant(canopy)).longStems;
}

describe('a stem outside the ball', () => {
  it('is left alone while it stands out by no more than a leaf may', () => {
    expect(stemsOf(8, 30)).toEqual([]);
    expect(stemsOf(14, 30)).toEqual([]);
    expect(stemsOf(22, 30)).toHaveLength(1);
  });
});
