import { describe, expect, it } from 'vitest';
import type { HullSolid } from '../../../server/schemas/turned.ts';
import { lookWords } from '../../../web/src/hull/hull-words.ts';
import { solidScene } from '../../../web/src/hull/solid-scene.ts';
import { dimmed, paintedFaces } from '../../../web/src/hull/still-picture.ts';
import { between, eyeAxes, seen, turnedBy } from '../../../web/src/hull/turning.ts';

/** A cube of side 2 on the rim plane, its triangles anticlockwise seen from outside. */
const CUBE: HullSolid = {
  unit: 'mm',
  corners: [
    [-1, -1, 0],
    [1, -1, 0],
    [1, 1, 0],
    [-1, 1, 0],
    [-1, -1, 2],
    [1, -1, 2],
    [1, 1, 2],
    [-1, 1, 2],
  ].flat(),
  triangles: [
    [0, 2, 1, 0, 3, 2],
    [4, 5, 6, 4, 6, 7],
    [0, 1, 5, 0, 5, 4],
    [1, 2, 6, 1, 6, 5],
    [2, 3, 7, 2, 7, 6],
    [3, 0, 4, 3, 4, 7],
  ].flat(),
  heightOfRim: 0,
  weakAzimuthDeg: 45,
  heavyAzimuthDeg: 225,
  rimRadius: null,
};
const FRONT = { turnDeg: 0, tiltDeg: 0 };

describe('a solid that is looked at', () => {
  it('has azimuth 90 at the eye’s right and the top on top', () => {
    const axes = eyeAxes(FRONT);
    expect(seen([0, 5, 0], axes)[0]).toBeCloseTo(5);
    expect(seen([0, 0, 5], axes)[1]).toBeCloseTo(-5);
    expect(seen([5, 0, 0], axes)[2]).toBeCloseTo(5);
  });

  it('seen from above has the facing side at the foot, as the plan has', () => {
    const axes = eyeAxes({ turnDeg: 0, tiltDeg: 90 });
    const [x, y] = seen([5, 0, 0], axes);
    expect([x, y].map((one) => Math.round(one))).toEqual([0, 5]);
  });

  it('turns round without end and tilts between level and straight above', () => {
    expect(turnedBy(FRONT, -15, -20)).toEqual({ turnDeg: 345, tiltDeg: 0 });
    expect(turnedBy({ turnDeg: 350, tiltDeg: 85 }, 20, 20)).toEqual({ turnDeg: 10, tiltDeg: 90 });
  });

  it('goes to another look by the shorter way', () => {
    expect(between({ turnDeg: 350, tiltDeg: 0 }, { turnDeg: 10, tiltDeg: 40 }, 0.5)).toEqual({
      turnDeg: 0,
      tiltDeg: 20,
    });
  });

  it('says how it is seen', () => {
    expect(lookWords({ turnDeg: 90, tiltDeg: 18 })).toBe(
      'The 3 o’clock side is in front, seen from 18° above the level.',
    );
    expect(lookWords({ turnDeg: 0, tiltDeg: 90 })).toContain('Seen from above');
  });
});

describe('the scene of a solid', () => {
  it('marks the corners on the weak and on the heavy side', () => {
    const { tones } = solidScene(CUBE);
    // Corner 2 is at azimuth 45, corner 0 at 225.
    expect(tones[2]).toBe('weak');
    expect(tones[0]).toBe('heavy');
    expect(tones.filter((tone) => tone === 'even')).toHaveLength(4);
  });

  it('stands on a pot as wide as the rim when that is known', () => {
    const potted = solidScene({ ...CUBE, rimRadius: 0.6 });
    expect(solidScene(CUBE).tones).not.toContain('pot');
    expect(potted.tones).toContain('pot');
    expect(potted.footH).toBeLessThan(0);
  });
});

describe('the picture where there is no WebGL', () => {
  const look = { turning: FRONT, sidePx: 100, lamp: [1, 0, 0] as const };

  it('paints the faces that look at the eye, the farthest first', () => {
    const faces = paintedFaces(solidScene(CUBE), look);
    expect(faces).toHaveLength(2);
    const above = paintedFaces(solidScene(CUBE), { ...look, turning: { turnDeg: 30, tiltDeg: 30 } });
    expect(above).toHaveLength(6);
    const depths = above.map(({ depth }) => depth);
    expect(depths).toEqual([...depths].sort((a, b) => a - b));
  });

  it('lights a face by how squarely it faces the lamp, never to nothing', () => {
    const lit = paintedFaces(solidScene(CUBE), look).map(({ light }) => light);
    const dark = paintedFaces(solidScene(CUBE), { ...look, lamp: [-1, 0, 0] }).map(({ light }) => light);
    expect(Math.min(...lit)).toBeGreaterThan(Math.max(...dark));
    // Half of the light from everywhere, as bright as a screen shows it.
    for (const light of dark) expect(light).toBeCloseTo(0.5 ** (1 / 2.2));
  });

  it('dims a colour', () => {
    expect(dimmed('#ff8040', 0.5)).toBe('rgb(128 64 32)');
    expect(dimmed('#ff8040', 2)).toBe('rgb(255 128 64)');
  });
});
