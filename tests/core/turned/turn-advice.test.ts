import { describe, expect, it } from 'vitest';
import { clockOfAzimuth } from '../../../core/turned/clock-of-azimuth.ts';
import { fitLopsidedness } from '../../../core/turned/lopsidedness-vector.ts';
import type { Reach } from '../../../core/turned/reach.ts';
import { adviseTurn } from '../../../core/turned/turn-advice.ts';

function heavyAt(azimuthDeg: number, percent = 10, plusMinus = 1) {
  const fit = fitLopsidedness(
    [0, 45, 90, 135].map((turnDeg) => ({
      turnDeg,
      percent: percent * Math.sin(((azimuthDeg - turnDeg) * Math.PI) / 180),
      plusMinus,
    })),
  );
  if (!fit.ok) throw new Error(fit.reason);
  return fit.vector;
}

const BEHIND = { fromCameraDeg: 180, standsAtTurnDeg: 0 };

describe('turning to the light', () => {
  it.each([
    [0, 6],
    [90, 3],
    [180, 12],
    [270, 9],
    [359, 6],
    [30, 5],
  ])('azimuth %d is %d o’clock', (azimuth, hour) => {
    expect(clockOfAzimuth(azimuth)).toBe(hour);
  });

  // The light stands behind the plant (12 o'clock); the weak side is opposite the heavy one.
  it.each([
    [90, 270, 'A quarter turn clockwise: bring the 9 o’clock side to the light.'],
    [270, 90, 'A quarter turn anticlockwise: bring the 3 o’clock side to the light.'],
    [180, 0, 'Half a turn: bring the 6 o’clock side to the light.'],
    [0, 180, 'Leave it as it stands: the 12 o’clock side already faces the light.'],
    [45, 225, 'An eighth of a turn clockwise: bring the side at half past 10 to the light.'],
  ])('heavy at %d with the light behind: azimuth %d to the light', (heavy, weak, words) => {
    const advice = adviseTurn(heavyAt(heavy), [], BEHIND);
    expect(advice?.toLightAzimuthDeg).toBe(weak);
    expect(advice?.words).toBe(words);
  });

  it('counts from how the pot stands', () => {
    // Azimuth 270 faces the camera, so 90 faces the light behind already.
    const advice = adviseTurn(heavyAt(270), [], { fromCameraDeg: 180, standsAtTurnDeg: 270 });
    expect(advice?.turnByDeg).toBe(0);
  });

  it('names the side without the amount when the light’s side is not set', () => {
    expect(adviseTurn(heavyAt(90), [], null)).toMatchObject({
      turnByDeg: null,
      words: 'Bring the 9 o’clock side to the light.',
    });
  });

  it('says nothing of a plant that is even or whose middle is unknown', () => {
    expect(adviseTurn(heavyAt(90, 1.5), [], BEHIND)).toBeNull();
    expect(adviseTurn(null, [], BEHIND)).toBeNull();
  });

  it('leans towards the azimuth of least reach by its weight', () => {
    const reach = Array.from({ length: 72 }, (_, k): Reach => {
      const azimuthDeg = 5 * k;
      return { azimuthDeg, reach: 150 - (azimuthDeg === 330 ? 40 : 0), plusMinus: 4, measured: true };
    });
    const advice = adviseTurn(heavyAt(90), reach, BEHIND);
    expect(advice?.toLightAzimuthDeg).toBeGreaterThan(275);
    expect(advice?.toLightAzimuthDeg).toBeLessThan(300);
  });

  it('is surer the further the lean exceeds its plus-minus', () => {
    expect(adviseTurn(heavyAt(90, 20), [], null)?.sure).toBe('sure');
    expect(adviseTurn(heavyAt(90, 20, 11), [], null)?.sure).toBe('likely');
    expect(adviseTurn(heavyAt(90, 20, 18), [], null)?.sure).toBe('unsure');
  });
});
