import { describe, expect, it } from 'vitest';
import { renderView } from '../../sample-images/render/render-view.ts';
import { encodePhoto } from '../../sample-images/render/write-photo.ts';
import { smallView } from './small-view.ts';

type Rendered = ReturnType<typeof renderView>;

/** Box of the canopy mask: left and right edges, px. */
function maskSpan({ canopy }: Rendered): { leftPx: number; rightPx: number } {
  let [leftPx, rightPx] = [canopy.width, 0];
  for (let at = 0; at < canopy.data.length; at++) {
    if (canopy.data[at] !== 1) continue;
    leftPx = Math.min(leftPx, at % canopy.width);
    rightPx = Math.max(rightPx, (at % canopy.width) + 1);
  }
  return { leftPx, rightPx };
}

/** Sideways distance of the mask's centroid from the axis, % of the ball's radius. */
function lopsidedness({ canopy, truth }: Rendered): number {
  let [sum, area] = [0, 0];
  for (let at = 0; at < canopy.data.length; at++) {
    if (canopy.data[at] !== 1) continue;
    sum += (at % canopy.width) + 0.5;
    area++;
  }
  return (100 * (sum / area - truth.axis.xPx) * truth.mmPerPx) / (truth.ball?.radiusMm ?? Number.NaN);
}

describe('a rendered view', () => {
  it('is the same, byte for byte, when rendered again', async () => {
    const first = renderView(smallView('window-regal', 2, 0));
    const second = renderView(smallView('window-regal', 2, 0));
    expect(Buffer.compare(first.raster.data, second.raster.data)).toBe(0);
    expect(Buffer.compare(first.canopy.data, second.canopy.data)).toBe(0);
    expect(second.truth).toEqual(first.truth);
    const files = await Promise.all(
      [first, second].map(({ raster }) => encodePhoto(raster, '2026:09:06 10:40:12', false)),
    );
    expect(Buffer.compare(files[0] as Buffer, files[1] as Buffer)).toBe(0);
  });

  it('differs when the seed of its noise or of its plant differs', () => {
    const options = smallView('window-regal', 2, 0);
    const base = renderView(options);
    const noisy = renderView({ ...options, finish: { ...options.finish, noiseSeed: 5 } });
    expect(noisy.canopy.data).toEqual(base.canopy.data);
    expect(Buffer.compare(noisy.raster.data, base.raster.data)).not.toBe(0);
    const other = renderView({ ...options, plant: { ...options.plant, seed: 99 } });
    expect(Buffer.compare(other.canopy.data, base.canopy.data)).not.toBe(0);
  });

  it('has its rim where a hand-worked pinhole projection puts it', () => {
    // Level camera at rim height, aimed at the rim's middle: depth 1000 mm, focal length 320 × 1000 / 500 = 640 px.
    // The tangents to a circle of 65 mm from 1000 mm away touch at x/z = 65 / √(1000² − 65²).
    const options = smallView('window-regal', 0, 0);
    const camera = { distanceMm: 1000, heightMm: 0, aimMm: [0, 0] as const, fieldMm: 500, rollDeg: 0 };
    const { truth } = renderView({ ...options, camera, widthPx: 320, heightPx: 240 });
    const halfPx = (640 * 65) / Math.sqrt(1000 ** 2 - 65 ** 2);
    expect(truth.axis.xPx).toBeCloseTo(160, 2);
    expect(truth.axis.rimLeftPx[0]).toBeCloseTo(160 - halfPx, 1);
    expect(truth.axis.rimRightPx[0]).toBeCloseTo(160 + halfPx, 1);
    expect(truth.axis.rimLeftPx[1]).toBeCloseTo(120, 2);
    expect(truth.mmPerPx).toBeCloseTo(1000 / 640, 5);
  });

  it('has a mask as wide as the plant built, seen from far away', () => {
    // From 40 m away the view is nearly parallel: 0.5 % is left for depth, and 1 px for the half-covered edge.
    const options = smallView('window-regal', 6, 0);
    const camera = { distanceMm: 40_000, heightMm: 0, aimMm: [0, 60] as const, fieldMm: 420, rollDeg: 0 };
    const view = renderView({ ...options, camera, widthPx: 320, heightPx: 240 });
    const { leftPx, rightPx } = maskSpan(view);
    const widthPx = view.truth.canopy.widthMm / view.truth.mmPerPx;
    expect(Math.abs(rightPx - leftPx - widthPx)).toBeLessThan(1 + 0.005 * widthPx);
    const right = view.truth.reach.find(({ azimuthDeg }) => azimuthDeg === 90)?.mm ?? Number.NaN;
    expect(Math.abs(rightPx - view.truth.axis.xPx - right / view.truth.mmPerPx)).toBeLessThan(1.5);
  });

  it('shows azimuth 90 at the right with the mark to the camera, and at the left with the mark behind', () => {
    // The window regal leans to azimuth 90 in week 7.
    const front = lopsidedness(renderView(smallView('window-regal', 7, 0)));
    const back = lopsidedness(renderView(smallView('window-regal', 7, 180)));
    expect(front).toBeGreaterThan(8);
    expect(back).toBeLessThan(-8);
  });

  it('keeps the truth in the frame of the plant when the pot is turned', () => {
    const front = renderView(smallView('corner-angel', 6, 0)).truth;
    const turned = renderView(smallView('corner-angel', 6, 90)).truth;
    expect(turned.reach).toEqual(front.reach);
    expect(turned.stems.map(({ tipMm }) => tipMm)).toEqual(front.stems.map(({ tipMm }) => tipMm));
    expect(turned.stems.map(({ tipPx }) => tipPx)).not.toEqual(front.stems.map(({ tipPx }) => tipPx));
  });

  it('loses what a cut takes: the long stem no longer stands outside the ball', () => {
    const before = renderView(smallView('corner-angel', 6, 0)).truth;
    const longest = before.stems.filter(({ long }) => long).sort((a, b) => b.excessMm - a.excessMm)[0];
    if (!longest) throw new Error('Expected a long stem in week 6');
    const cuts = [{ shoot: longest.shoot, shortenMm: longest.excessMm + 6 }];
    const after = renderView(smallView('corner-angel', 6, 0, { cuts })).truth;
    const shortened = after.stems.find(({ shoot }) => shoot === longest.shoot);
    expect(longest.excessMm).toBeGreaterThan(30);
    expect(shortened?.excessMm).toBeLessThan(longest.excessMm - 25);
    expect(shortened?.lengthMm).toBeCloseTo(longest.lengthMm - longest.excessMm - 6, 0);
  });

  it('grows the same plant: every shoot keeps its azimuth from week to week', () => {
    const early = renderView(smallView('greenhouse-regal', 3, 0)).truth;
    const later = renderView(smallView('greenhouse-regal', 4, 0)).truth;
    for (const stem of later.stems) {
      const was = early.stems.find(({ shoot }) => shoot === stem.shoot);
      if (!was || Math.hypot(stem.tipMm[0], stem.tipMm[1]) < 30) continue;
      const movedDeg = Math.abs(((stem.azimuthDeg - was.azimuthDeg + 540) % 360) - 180);
      expect(movedDeg).toBeLessThan(12);
      expect(stem.lengthMm).toBeGreaterThan(was.lengthMm);
    }
  });
});
