import { describe, expect, it } from 'vitest';
import { day } from '../../../core/day/day.ts';
import {
  bearingFromCameraDeg,
  lightFromCameraDeg,
  seasonOfLight,
  sunSide,
} from '../../../core/light/light-side.ts';
import { daylight, sunInSky } from '../../../core/light/sun.ts';

const WINTER = day('2026-12-21');
const SUMMER = day('2026-06-21');
const SOUTH_WINDOW = { bearingDeg: 180, halfWidthDeg: 60 };

describe('the side the sun comes from', () => {
  it('is south on the whole in the north, north in the south, on every day', () => {
    for (const on of [WINTER, SUMMER, day('2026-03-20'), day('2026-09-01')]) {
      expect(sunSide({ latitudeDeg: 52, opening: null, day: on }).meanBearingDeg).toBeCloseTo(180, 6);
      expect(sunSide({ latitudeDeg: -34, opening: null, day: on }).meanBearingDeg ?? 0).toBeCloseTo(0, 6);
    }
  });

  it('counts the hours from rise to set of the sun’s middle under an open sky', () => {
    const { hours } = sunSide({ latitudeDeg: 52, opening: null, day: WINTER });
    // In steps of two minutes, so to within two of them.
    expect(Math.abs(hours - daylight(52, -23.436, 0).dayLengthHours)).toBeLessThan(4 / 60);
  });

  it('through a window is the window’s own side where the sun passes it evenly', () => {
    const { meanBearingDeg, hours } = sunSide({ latitudeDeg: 52, opening: SOUTH_WINDOW, day: SUMMER });
    expect(meanBearingDeg).toBeCloseTo(180, 6);
    expect(hours).toBeLessThan(sunSide({ latitudeDeg: 52, opening: null, day: SUMMER }).hours);
  });

  it('through an east window lies further south in winter', () => {
    const opening = { bearingDeg: 90, halfWidthDeg: 60 };
    const [summer, winter] = seasonOfLight({ latitudeDeg: 52, opening }, [SUMMER, WINTER]);
    expect(summer?.meanBearingDeg).toBeLessThan(105);
    expect(winter?.meanBearingDeg).toBeGreaterThan(130);
    expect([summer?.day, winter?.day]).toEqual([SUMMER, WINTER]);
    expect(winter?.hours).toBeLessThan(3);
  });

  it('is the mirror image through a west window', () => {
    const east = sunSide({ latitudeDeg: 52, opening: { bearingDeg: 90, halfWidthDeg: 60 }, day: SUMMER });
    const west = sunSide({ latitudeDeg: 52, opening: { bearingDeg: 270, halfWidthDeg: 60 }, day: SUMMER });
    expect(360 - (west.meanBearingDeg ?? 0)).toBeCloseTo(east.meanBearingDeg ?? 0, 6);
  });

  it('is nowhere through a north window in winter, nor in polar night', () => {
    const north = { bearingDeg: 0, halfWidthDeg: 45 };
    expect(sunSide({ latitudeDeg: 52, opening: north, day: WINTER })).toMatchObject({
      meanBearingDeg: null,
      hours: 0,
    });
    expect(sunSide({ latitudeDeg: 75, opening: null, day: WINTER })).toMatchObject({
      meanBearingDeg: null,
      dayLengthHours: 0,
      sunriseBearingDeg: null,
    });
    expect(sunSide({ latitudeDeg: 75, opening: null, day: SUMMER }).dayLengthHours).toBe(24);
  });

  it('opens across north without a seam', () => {
    const north = { bearingDeg: 350, halfWidthDeg: 60 };
    const { meanBearingDeg } = sunSide({ latitudeDeg: 60, opening: north, day: SUMMER });
    expect(Number.isFinite(meanBearingDeg)).toBe(true);
  });

  it('says what is wrong with a latitude that cannot be', () => {
    expect(() => sunInSky(91, 0, 12)).toThrow('Expected −90 to 90 for latitudeDeg but received 91');
    expect(() => sunSide({ latitudeDeg: Number.NaN, opening: null, day: SUMMER })).toThrow('received NaN');
  });
});

describe('the light as seen from the camera', () => {
  it('runs anticlockwise from the camera, seen from above', () => {
    expect(lightFromCameraDeg('behind-camera')).toBe(0);
    expect(lightFromCameraDeg('right')).toBe(90);
    expect(lightFromCameraDeg('behind-plant')).toBe(180);
    expect(lightFromCameraDeg('left')).toBe(270);
    expect(lightFromCameraDeg('above')).toBeNull();
    expect(lightFromCameraDeg(null)).toBeNull();
  });

  it('turns compass bearings, which run clockwise', () => {
    // The window is south (180) and at the camera's right (90): the camera looks east, so east lies behind the plant.
    const window = { bearingDeg: 180, fromCameraDeg: 90 };
    expect(bearingFromCameraDeg(180, window)).toBe(90);
    expect(bearingFromCameraDeg(90, window)).toBe(180);
    expect(bearingFromCameraDeg(270, window)).toBe(0);
    expect(bearingFromCameraDeg(0, window)).toBe(270);
  });
});
