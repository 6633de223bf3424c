import { beforeAll, describe, expect, it } from 'vitest';
import { edgeContact, showsTwoPlants } from '../../../core/canopy/framing.ts';
import { fillSmallHoles } from '../../../core/canopy/small-holes.ts';
import { type OpenCvDoor, openOpenCv } from '../../../core/opencv/door.ts';
import type { Mask } from '../../../core/raster/raster.ts';
import { disc, drawMask } from '../drawn-shapes.ts';

describe('edgeContact', () => {
  it('is clear with space all round', () => {
    const canopy = drawMask(100, 100, disc([50, 50], 30));
    expect(edgeContact(canopy, true)).toEqual({ cut: false, tip: false, foot: false });
  });

  it.each([
    ['left', [10, 50]],
    ['right', [90, 50]],
    ['top', [50, 10]],
  ] as const)('is cut by the %s edge', (_, middle) => {
    expect(edgeContact(drawMask(100, 100, disc(middle, 30)), true).cut).toBe(true);
  });

  it('tells a tip that touches from a crown that runs out', () => {
    const ball = disc([50, 50], 30);
    const leaf = (x: number, y: number) => y > 49 && y < 51 && x < 50;
    const canopy = drawMask(100, 100, (x, y) => ball(x, y) || leaf(x, y));
    expect(edgeContact(canopy, true)).toEqual({ cut: false, tip: true, foot: false });
  });

  it('bears a foot below the photo, but not a plant cut through its middle', () => {
    const foot = drawMask(100, 100, disc([50, 73], 30));
    expect(edgeContact(foot, false)).toEqual({ cut: false, tip: false, foot: true });
    expect(edgeContact(drawMask(100, 100, disc([50, 100], 30)), false).cut).toBe(true);
  });
});

describe('showsTwoPlants', () => {
  let door: OpenCvDoor;
  beforeAll(async () => {
    door = await openOpenCv();
  });
  const leafy = (mask: Mask) => ({ ...mask, logOdds: Float32Array.from(mask.data, (inside) => 2 * inside) });
  const [one, other, small] = [disc([60, 60], 30), disc([150, 62], 28), disc([150, 62], 9)];

  it('sees two of similar size side by side', () => {
    const both = drawMask(200, 100, (x, y) => one(x, y) || other(x, y));
    expect(showsTwoPlants(door, both, leafy(both))).toBe(true);
  });

  it('lets a small thing beside the plant be', () => {
    const both = drawMask(200, 100, (x, y) => one(x, y) || small(x, y));
    expect(showsTwoPlants(door, both, leafy(both))).toBe(false);
  });

  it('does not take a second thing without leaf colour for a plant', () => {
    const both = drawMask(200, 100, (x, y) => one(x, y) || other(x, y));
    expect(showsTwoPlants(door, both, leafy(drawMask(200, 100, one)))).toBe(false);
  });

  it('does not take one plant in two parts above each other for two', () => {
    const upper = disc([60, 30], 20);
    const lower = disc([66, 75], 18);
    const both = drawMask(200, 100, (x, y) => upper(x, y) || lower(x, y));
    expect(showsTwoPlants(door, both, leafy(both))).toBe(false);
  });
});

describe('fillSmallHoles', () => {
  it('fills a speck and keeps a gap', async () => {
    const ball = disc([100, 100], 80);
    const speck = disc([60, 100], 1.5);
    const gap = disc([130, 100], 12);
    const holed = drawMask(200, 200, (x, y) => ball(x, y) && !speck(x, y) && !gap(x, y));
    const filled = fillSmallHoles(await openOpenCv(), holed);
    expect(filled.data[100 * 200 + 60]).toBe(1);
    expect(filled.data[100 * 200 + 130]).toBe(0);
    expect(filled.data[0]).toBe(0);
  });
});
