import { describe, expect, it } from 'vitest';
import { PARTS, type PartMap } from '../../../core/canopy/found-plant.ts';
import { balanceByBackdrop } from '../../../core/colour/balance-by-backdrop.ts';
import { balanceByGreys } from '../../../core/colour/balance-by-greys.ts';
import { balancePhoto } from '../../../core/colour/balance-photo.ts';
import { balancedLab } from '../../../core/colour/colour-balance.ts';
import { colourDifference } from '../../../core/colour/colour-difference.ts';
import { LINEAR_OF_BYTE, labOfRaster } from '../../../core/raster/lab.ts';
import type { Raster } from '../../../core/raster/raster.ts';
import type { FittedFrame } from '../../../core/stand/frame/fit-frame.ts';
import { IDENTITY } from '../../../core/stand/frame/similarity.ts';

const [WIDTH, HEIGHT] = [120, 90];

/** A cloth of several greys and browns with a leaf-green square, in a light of these strengths. */
function scene(light: readonly number[]): Raster {
  const data = new Uint8Array(3 * WIDTH * HEIGHT);
  for (let i = 0; i < WIDTH * HEIGHT; i++) {
    const [x, y] = [i % WIDTH, Math.floor(i / WIDTH)];
    const cloth = 0.12 + 0.1 * ((x * 7 + y * 3) % 10) * 0.1;
    const colour = isPlant(x, y) ? [0.07, 0.13, 0.03] : [cloth, 0.97 * cloth, 0.9 * cloth];
    colour.forEach((value, c) => {
      data[3 * i + c] = byteOf(value * (light[c] as number));
    });
  }
  return { width: WIDTH, height: HEIGHT, data };
}

function isPlant(x: number, y: number): boolean {
  return x > 40 && x < 80 && y > 30 && y < 70;
}

function byteOf(linear: number): number {
  const coded = linear <= 0.0031308 ? 12.92 * linear : 1.055 * linear ** (1 / 2.4) - 0.055;
  return Math.round(255 * Math.min(1, coded));
}

const LEAF = PARTS.indexOf('leaf');
const PARTS_MAP: PartMap = {
  width: WIDTH,
  height: HEIGHT,
  data: Uint8Array.from({ length: WIDTH * HEIGHT }, (_, i) =>
    isPlant(i % WIDTH, Math.floor(i / WIDTH)) ? LEAF : 0,
  ),
};
const LEAF_AT = 50 * WIDTH + 60;

function leafOf(picture: ReturnType<typeof labOfRaster>) {
  return {
    l: picture.l[LEAF_AT] as number,
    a: picture.a[LEAF_AT] as number,
    b: picture.b[LEAF_AT] as number,
  };
}

describe('a photo balanced by its backdrop', () => {
  it.each([
    ['half the light', [0.5, 0.5, 0.5]],
    ['twice the light', [2, 2, 2]],
    ['lamp light', [1.25, 1, 0.6]],
    ['blue shade', [0.8, 1, 1.3]],
  ])('shows a leaf in %s as in the reference', (_, light) => {
    const reference = scene([1, 1, 1]);
    const photo = scene(light);
    const balance = balanceByBackdrop(photo, reference, IDENTITY, PARTS_MAP);
    if (balance === null) throw new Error('not balanced');
    const before = colourDifference(leafOf(labOfRaster(photo)), leafOf(labOfRaster(reference)));
    const after = colourDifference(leafOf(balancedLab(photo, balance)), leafOf(labOfRaster(reference)));
    expect(before).toBeGreaterThan(3);
    // Bytes are rounded: a leaf in half the light is good to about one step.
    expect(after).toBeLessThan(1);
    balance.gains.forEach((gain, c) => {
      expect(Math.abs(Math.log(gain * (light[c] as number)))).toBeLessThan(0.02);
    });
  });

  it('is more in doubt the more the light has changed', () => {
    const reference = scene([1, 1, 1]);
    const doubts = [1, 1.3, 2].map((light) => {
      const balance = balanceByBackdrop(scene([light, light, light]), reference, IDENTITY, PARTS_MAP);
      return balance?.doubt.stops ?? Number.NaN;
    });
    expect(doubts[0]).toBeLessThan(doubts[1] as number);
    expect(doubts[1]).toBeLessThan(doubts[2] as number);
  });

  it('cannot be told from a backdrop that is burnt out or black', () => {
    expect(balanceByBackdrop(scene([20, 20, 20]), scene([1, 1, 1]), IDENTITY, PARTS_MAP)).toBeNull();
    expect(balanceByBackdrop(scene([0.005, 0.005, 0.005]), scene([1, 1, 1]), IDENTITY, PARTS_MAP)).toBeNull();
  });
});

describe('a photo balanced by grey patches', () => {
  const greys = { state: 'ok', gains: [0.8, 1, 1.6], spread: 0.04 } as const;

  it('turns a grey in lamp light grey', () => {
    const balance = balanceByGreys(greys, null);
    const grey = Uint8Array.from([0.2 / 0.8, 0.2, 0.2 / 1.6].map(byteOf));
    const lab = balance && balancedLab({ width: 1, height: 1, data: grey }, balance);
    expect(Math.hypot(lab?.a[0] ?? 99, lab?.b[0] ?? 99)).toBeLessThan(0.8);
    expect(LINEAR_OF_BYTE[grey[1] as number]).toBeCloseTo(0.2, 2);
  });

  it('leaves the exposure as it is and in doubt without a reference', () => {
    expect(balanceByGreys(greys, null)).toMatchObject({ from: 'sheet', gains: [0.8, 1, 1.6] });
    expect(balanceByGreys(greys, null)?.doubt.stops).toBeGreaterThan(0.5);
  });

  it('is not balanced by patches that cannot be read', () => {
    expect(balanceByGreys({ state: 'too-bright', gains: null, spread: null }, null)).toBeNull();
  });
});

describe('the balance of a photo', () => {
  const frame = { ok: true, move: IDENTITY, fit: {} } as unknown as FittedFrame;
  const reference = scene([1, 1, 1]);
  const greys = { state: 'ok', gains: [0.8, 1, 1.6], spread: 0.04 } as const;

  it('goes by the sheet first and takes the exposure from the backdrop', () => {
    const { balance, why } = balancePhoto(scene([0.5, 0.5, 0.5]), PARTS_MAP, {
      reference,
      stand: { frame, isElsewhere: false, greys },
    });
    expect(why).toBeNull();
    expect(balance.from).toBe('sheet');
    expect(balance.gains[1]).toBeCloseTo(2, 1);
    expect(balance.gains[2] / balance.gains[1]).toBeCloseTo(1.6, 6);
  });

  it('goes by the backdrop without a sheet', () => {
    const stand = { frame, isElsewhere: false, greys: null };
    expect(balancePhoto(scene([1, 1, 1]), PARTS_MAP, { reference, stand }).balance.from).toBe('backdrop');
    // A plain cloth gives no frame, and its light all the same.
    const plain = { ...stand, frame: null };
    expect(balancePhoto(scene([1, 1, 1]), PARTS_MAP, { reference, stand: plain }).balance.from).toBe(
      'backdrop',
    );
  });

  it('says what to do where neither is known', () => {
    const nothing = balancePhoto(reference, PARTS_MAP, { reference: null, stand: null });
    expect(nothing.balance).toMatchObject({ from: 'none', gains: [1, 1, 1] });
    expect(nothing.why).toContain('an empty photo of it or the printed sheet is enough');
    const unseen = balancePhoto(reference, PARTS_MAP, {
      reference,
      stand: { frame: null, isElsewhere: true, greys: null },
    });
    expect(unseen.why).toContain('Leave some backdrop in sight');
  });
});
