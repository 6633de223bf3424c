import { describe, expect, it } from 'vitest';
import { FORM_UPR, SHOOT_UPR, smoothProfile } from '../../../core/measures/gaussian-profile-filter.ts';
import { WHOLE_CIRCLE } from '../../../core/silhouette/open-arc.ts';
import type { RadialProfile } from '../../../core/silhouette/radial-profile.ts';

const DIRECTIONS = 720;

function closedProfile(radius: (angle: number) => number): RadialProfile {
  const stepRad = (2 * Math.PI) / DIRECTIONS;
  const radiiPx = Float64Array.from({ length: DIRECTIONS }, (_, index) => radius(index * stepRad));
  return { centre: [0, 0], arc: WHOLE_CIRCLE, stepRad, closed: true, radiiPx };
}

function openProfile(radius: (angle: number) => number): RadialProfile {
  const whole = closedProfile(radius);
  const radiiPx = whole.radiiPx.slice(0, 481);
  return { ...whole, arc: { startRad: 0, sweepRad: 480 * whole.stepRad }, closed: false, radiiPx };
}

function amplitude(radii: Float64Array): number {
  return (Math.max(...radii) - Math.min(...radii)) / 2;
}

describe('the Gaussian profile filter', () => {
  // Source: ISO 16610-21: transmission exp(−π (α λc ÷ λ)²) = 2^−(f ÷ fc)². Tolerance: the bell is cut at ±λc.
  it.each([
    [FORM_UPR, 15],
    [SHOOT_UPR, 50],
    [FORM_UPR, 2],
    [FORM_UPR, 5],
    [FORM_UPR, 30],
    [SHOOT_UPR, 15],
  ])('with cut-off %d passes of %d undulations what the standard says', (cutoff, undulations) => {
    const smoothed = smoothProfile(
      closedProfile((angle) => 100 + Math.cos(undulations * angle)),
      cutoff,
    );
    expect(amplitude(smoothed.radiiPx)).toBeCloseTo(2 ** -((undulations / cutoff) ** 2), 3);
  });

  it('leaves a circle alone', () => {
    const smoothed = smoothProfile(
      closedProfile(() => 100),
      FORM_UPR,
    );
    for (const radius of smoothed.radiiPx) expect(radius).toBeCloseTo(100, 10);
  });

  it('keeps a slope right up to the ends of an open arc', () => {
    const sloping = openProfile((angle) => 100 + 3 * angle);
    const smoothed = smoothProfile(sloping, FORM_UPR);
    smoothed.radiiPx.forEach((radius, index) => {
      expect(radius).toBeCloseTo(sloping.radiiPx[index] as number, 9);
    });
  });

  // ISO 16610-28 calls for it: what a filter of the first order must keep at an end is the profile's level and its slope.
  it.each([FORM_UPR, SHOOT_UPR])(
    'keeps a circle about its centre to the last digit at the ends, cut-off %d',
    (cutoff) => {
      const smoothed = smoothProfile(
        openProfile(() => 250),
        cutoff,
      ).radiiPx;
      expect(smoothed[0]).toBeCloseTo(250, 10);
      expect(smoothed.at(-1)).toBeCloseTo(250, 10);
    },
  );

  it('keeps a circle that stands off centre to 0.25 % of the distance at the ends', () => {
    // Radius 100, 20 off: r(θ) about the centre of the profile, at several turns of the arc's start.
    for (const turn of [0, 1, 2, 3, 4, 5]) {
      const circle = openProfile((angle) => {
        const along = 20 * Math.cos(angle + turn);
        return along + Math.sqrt(100 ** 2 - 20 ** 2 + along ** 2);
      });
      const smoothed = smoothProfile(circle, FORM_UPR).radiiPx;
      for (const end of [0, 480]) {
        expect(Math.abs((smoothed[end] as number) - (circle.radiiPx[end] as number))).toBeLessThan(
          0.0025 * 20 * 1.5,
        );
      }
    }
  });

  it('keeps a straight edge that runs into the end of the arc as well as one inside it', () => {
    // A flat 100 px from the centre, seen up to 20° beside its middle at either end of the arc.
    const flat = openProfile((angle) => {
      const beside = ((angle * 180) / Math.PI) % 240;
      const off = Math.min(beside, 240 - beside) - 20;
      return 100 / Math.cos((off * Math.PI) / 180);
    });
    const smoothed = smoothProfile(flat, FORM_UPR).radiiPx;
    // r'' = r (1 + 2 tan²) = 135 at 20°: 0.0023 × 135 = 0.31 px at the end, 0.0031 × 100 = 0.31 px at the flat's middle.
    expect(Math.abs((smoothed[0] as number) - (flat.radiiPx[0] as number))).toBeLessThan(0.35);
    expect(Math.abs((smoothed[40] as number) - (flat.radiiPx[40] as number))).toBeLessThan(0.35);
  });

  it('has no bias at the ends of a noisy circle, on average', () => {
    let [atEnds, inside] = [0, 0];
    const repeats = 400;
    for (let repeat = 0; repeat < repeats; repeat++) {
      const noisy = openProfile(
        (angle) => 100 + Math.sqrt(2) * Math.sin(12.9898 * (repeat + 1) * (angle * 97 + 1)),
      );
      const smoothed = smoothProfile(noisy, FORM_UPR).radiiPx;
      atEnds += ((smoothed[0] as number) + (smoothed[480] as number) - 200) / (2 * repeats);
      inside += ((smoothed[240] as number) - 100) / repeats;
    }
    expect(Math.abs(atEnds)).toBeLessThan(0.05);
    expect(Math.abs(inside)).toBeLessThan(0.05);
  });

  it('is the same inside an open arc as on the whole circle', () => {
    const wavy = (angle: number) => 100 + Math.cos(4 * angle);
    const open = smoothProfile(openProfile(wavy), FORM_UPR).radiiPx;
    const closed = smoothProfile(closedProfile(wavy), FORM_UPR).radiiPx;
    expect(open[240]).toBeCloseTo(closed[240] as number, 9);
  });

  it('turns with the profile', () => {
    const ragged = closedProfile((angle) => 100 + 7 * Math.sin(3 * angle) ** 3 + 2 * Math.cos(11 * angle));
    const turned = {
      ...ragged,
      radiiPx: ragged.radiiPx.map((_, index, all) => all[(index + 100) % DIRECTIONS] as number),
    };
    const smoothed = smoothProfile(ragged, FORM_UPR).radiiPx;
    const smoothedTurned = smoothProfile(turned, FORM_UPR).radiiPx;
    expect(smoothedTurned[0]).toBeCloseTo(smoothed[100] as number, 10);
  });

  it('refuses a cut-off that is no number', () => {
    expect(() =>
      smoothProfile(
        closedProfile(() => 1),
        Number.NaN,
      ),
    ).toThrow(new RangeError('Expected a positive number for cutoffUpr but received NaN'));
  });
});
