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
