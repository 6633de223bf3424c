import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { firstGuess } from '../../../core/canopy/model/first-guess.ts';
import { type Network, openNetwork } from '../../../core/canopy/model/onnx-door.ts';
import { PIXEL_KINDS, type PixelKind, type PixelShares } from '../../../core/canopy/model/pixel-shares.ts';
import type { Raster } from '../../../core/raster/raster.ts';
import { disc } from '../drawn-shapes.ts';

const WEIGHTS = new URL('../../../core/canopy/model/first-guess.onnx', import.meta.url);
const [WIDTH, HEIGHT] = [480, 600];

/** A round crown of overlapping leaves over a terracotta pot, before a plain wall above a table. */
function drawnPlant(left = 240, scale = 1): Raster {
  const top = 600 - 240 * scale;
  const leaves = Array.from({ length: 260 }, (_, k) => {
    const turn = k * 2.39996; // the golden angle spreads them evenly
    const out = 125 * scale * Math.sqrt((k * 0.618) % 1);
    return {
      inside: disc([left + out * Math.cos(turn), top - 105 * scale + out * Math.sin(turn)], 20 * scale),
      shade: 0.7 + 0.6 * ((k * 0.381) % 1),
    };
  });
  const data = new Uint8Array(3 * WIDTH * HEIGHT);
  for (let y = 0; y < HEIGHT; y++) {
    for (let x = 0; x < WIDTH; x++) data.set(colourAt(x + 0.5, y + 0.5), 3 * (y * WIDTH + x));
  }
  return { width: WIDTH, height: HEIGHT, data };

  function colourAt(x: number, y: number): number[] {
    const leaf = leaves.findLast(({ inside }) => inside(x, y));
    if (leaf !== undefined) return [70, 120, 50].map((value) => value * leaf.shade);
    const down = (y - top) / scale;
    const halfWidth = down < 25 ? 75 : 68 - 0.15 * down;
    const across = (x - left) / scale / halfWidth;
    if (down > 0 && down < 150 && Math.abs(across) < 1) {
      return [180, 95, 60].map((value) => value * (1 - 0.35 * across ** 2 - 0.2 * (across + 1) * 0.5));
    }
    return y > 500 ? [150, 140, 128] : [205, 203, 198];
  }
}

/** Mean share of a kind over the pixels within `radius` of a point. */
function meanShare(shares: PixelShares, kind: PixelKind, x: number, y: number, radius: number): number {
  const inside = disc([x, y], radius);
  let [sum, count] = [0, 0];
  for (let i = 0; i < shares[kind].length; i++) {
    if (!inside((i % shares.width) + 0.5, Math.floor(i / shares.width) + 0.5)) continue;
    sum += shares[kind][i] as number;
    count++;
  }
  return sum / count;
}

describe('the first guess', () => {
  let network: Network;
  let shares: PixelShares;
  beforeAll(async () => {
    network = await openNetwork(new Uint8Array(readFileSync(WEIGHTS)));
    shares = await firstGuess(drawnPlant(), network);
  });

  it('knows crown, pot and wall of a drawn plant that it never saw', () => {
    // discs are poor leaves: the network is sure of the crown, less sure that it is no flower
    expect(meanShare(shares, 'foliage', 240, 255, 90)).toBeGreaterThan(0.75);
    expect(meanShare(shares, 'pot', 240, 440, 35)).toBeGreaterThan(0.85);
    expect(meanShare(shares, 'background', 50, 80, 40)).toBeGreaterThan(0.95);
    expect(meanShare(shares, 'background', 430, 560, 40)).toBeGreaterThan(0.95);
  });

  it('sees a small plant off the middle of the picture too, through its second look', async () => {
    const small = await firstGuess(drawnPlant(140, 0.4), network);
    expect(meanShare(small, 'foliage', 140, 462, 34)).toBeGreaterThan(0.75);
    expect(meanShare(small, 'pot', 140, 536, 12)).toBeGreaterThan(0.6);
    expect(meanShare(small, 'background', 380, 200, 90)).toBeGreaterThan(0.95);
  });

  it('finds neither plant nor pot on an empty wall', async () => {
    const wall = { width: WIDTH, height: HEIGHT, data: new Uint8Array(3 * WIDTH * HEIGHT).fill(190) };
    const empty = await firstGuess(wall, network);
    expect(empty.background.every((share) => share > 0.5)).toBe(true);
  });

  it('gives shares that sum to 1 at every pixel, at the size of the raster', () => {
    expect([shares.width, shares.height]).toEqual([WIDTH, HEIGHT]);
    let worst = 0;
    for (let i = 0; i < WIDTH * HEIGHT; i++) {
      const sum = PIXEL_KINDS.reduce((all, kind) => all + (shares[kind][i] as number), 0);
      worst = Math.max(worst, Math.abs(sum - 1));
    }
    expect(worst).toBeLessThan(1e-5);
  });

  it('says the same of the same picture', async () => {
    const again = await firstGuess(drawnPlant(), network);
    for (const kind of PIXEL_KINDS) {
      expect(again[kind].every((share, i) => share === shares[kind][i])).toBe(true);
    }
  });

  it('refuses bytes that are no network', async () => {
    await expect(openNetwork(new Uint8Array([1, 2, 3]))).rejects.toThrow();
  });
});
