import { describe, expect, it } from 'vitest';
import { readCollar } from '../../../../core/turned/collar/read-collar.ts';
import { type CollarPhotoScene, PLAIN_STRIP, photographCollar } from './photographed-collar.ts';

function read(changes: Partial<CollarPhotoScene>) {
  const { raster, rim } = photographCollar(changes);
  return readCollar(raster, rim);
}

function apart(one: number, other: number): number {
  return Math.abs(((((one - other + 180) % 360) + 360) % 360) - 180);
}

describe('reading the turn collar', () => {
  it.each([0, 33, 90, 147, 180, 213, 270, 320])('reads a pot turned to %d°', (turnDeg) => {
    const reading = read({ turnDeg });
    if (!reading.ok) throw new Error(reading.reason);
    // On 114 drawn pots the readings' standard deviation was 0.8°; this one is drawn without faults.
    expect(apart(reading.turnDeg, turnDeg)).toBeLessThan(1.5);
    expect(apart(reading.turnDeg, turnDeg)).toBeLessThan(reading.plusMinusDeg + 0.5);
    expect(reading.marksRead).toBeGreaterThanOrEqual(20);
    // Where the strip closes, at 180°, its ends meet to half a millimetre.
    expect(reading.agreement).toBeGreaterThan(0.9);
  });

  it.each<[string, Partial<CollarPhotoScene>]>([
    ['in little light, soft and grainy', { exposure: 0.3, blurPx: 1.8, noiseSteps: 6 }],
    ['overexposed', { exposure: 2 }],
    [
      'on a small pot far from the camera',
      {
        rimMm: 90,
        distanceMm: 3000,
        pxPerMm: 1.5,
        collar: { ...PLAIN_STRIP, printedForMm: 90, radiusMm: 45.3 },
      },
    ],
    ['near, from high above', { distanceMm: 800, heightMm: 400 }],
    ['from the height of the rim', { heightMm: 0 }],
    ['by a camera that leans 2°', { rollDeg: 2 }],
    ['on a cone, hanging aslant', { collar: { ...PLAIN_STRIP, taperDeg: 7, sagMm: 2, sagAzimuthDeg: 60 } }],
    ['lit from one side', { lightDeg: -90, lightShare: 0.85 }],
    ['with leaves over some of it', { leaves: { count: 16, lowest: 0.12, size: 0.2 }, seed: 5 }],
  ])('reads it %s', (_, changes) => {
    const reading = read({ turnDeg: 75, ...changes });
    if (!reading.ok) throw new Error(reading.reason);
    expect(apart(reading.turnDeg, 75)).toBeLessThan(3);
  });

  it('reads it where the rim was found 5 % aside and too wide', () => {
    const { raster, rim } = photographCollar({ turnDeg: 200 });
    const half = rim.halfWidthPx;
    const centrePx = [rim.centrePx[0] + 0.05 * half, rim.centrePx[1] - 0.05 * half] as const;
    const reading = readCollar(raster, { centrePx, halfWidthPx: 1.05 * half });
    if (!reading.ok) throw new Error(reading.reason);
    expect(apart(reading.turnDeg, 200)).toBeLessThan(3);
  });

  it('tells a strip that is upside down, and reads no turn from it', () => {
    const reading = read({ turnDeg: 75, collar: { ...PLAIN_STRIP, upsideDown: true } });
    expect(reading).toMatchObject({ ok: false, reason: 'upside-down' });
    expect(!reading.ok && reading.hint).toContain('hours at the bottom');
  });

  it('tells a mirrored photo, and reads no turn from it', () => {
    expect(read({ turnDeg: 75, mirrored: true })).toMatchObject({ ok: false, reason: 'mirrored' });
  });

  it('reads nothing where leaves hide nearly all of it', () => {
    const { raster, rim, stepsSeen } = photographCollar({
      turnDeg: 75,
      leaves: { count: 90, lowest: 0.35, size: 0.3 },
      seed: 3,
    });
    expect(stepsSeen).toBeLessThan(6);
    expect(readCollar(raster, rim).ok).toBe(false);
  });

  it('reads nothing from a pot without one, in leaf or bare', () => {
    for (const seed of [1, 2, 3]) {
      expect(read({ collar: null, seed, leaves: { count: 12 * seed, lowest: 0.15, size: 0.25 } })).toEqual({
        ok: false,
        reason: 'none',
        hint: null,
      });
    }
  });

  it('reads nothing from an even picture or beside it', () => {
    const raster = { width: 200, height: 160, data: new Uint8Array(3 * 200 * 160).fill(90) };
    expect(readCollar(raster, { centrePx: [100, 60], halfWidthPx: 60 })).toMatchObject({ reason: 'none' });
    expect(readCollar(raster, { centrePx: [900, 60], halfWidthPx: 60 })).toMatchObject({ reason: 'none' });
    expect(readCollar(raster, { centrePx: [100, 60], halfWidthPx: 2 })).toMatchObject({ reason: 'none' });
  });

  it('reads the same from the same photo', () => {
    const { raster, rim } = photographCollar({ turnDeg: 42 });
    expect(readCollar(raster, rim)).toEqual(readCollar(raster, rim));
  });
});
