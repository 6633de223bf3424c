import { beforeAll, describe, expect, it } from 'vitest';
import { type OpenCvDoor, openOpenCv } from '../../../core/opencv/door.ts';
import type { PointPx } from '../../../core/raster/raster.ts';
import type { KnownStand } from '../../../core/stand/known-stand.ts';
import { readStand } from '../../../core/stand/read-stand.ts';
import { photographSheet } from './sheet/photographed-sheet.ts';

/** A sheet far away on a backdrop that is turned by 8°, and a plant 150 mm before the backdrop, 350 mm right of the sheet. */
const SCENE = { widthPx: 1000, heightPx: 750, focalPx: 1400, distanceMm: 2800, noiseSteps: 2 };
const [TURN_RAD, ALONG_MM, BEFORE_MM, ASIDE_MM] = [(8 * Math.PI) / 180, 350, 150, -200];
const DEPTH_MM = SCENE.distanceMm - ALONG_MM * Math.sin(TURN_RAD) - BEFORE_MM * Math.cos(TURN_RAD);
const PLANT_PX: PointPx = [
  500 +
    (SCENE.focalPx * (ASIDE_MM + ALONG_MM * Math.cos(TURN_RAD) - BEFORE_MM * Math.sin(TURN_RAD))) / DEPTH_MM,
  375,
];

describe('the scale by a sheet whose perspective hardly shows', () => {
  let door: OpenCvDoor;
  beforeAll(async () => {
    door = await openOpenCv();
  });
  const { raster } = photographSheet({
    ...SCENE,
    tiltDeg: 8,
    tiltAboutDeg: 90,
    asideMm: [ASIDE_MM, 0],
  });
  const scaleWith = (told: Partial<KnownStand>) =>
    readStand(
      door,
      raster,
      {
        reference: null,
        sheet: { paper: 'A4', place: 'backdrop', plantInFrontMm: BEFORE_MM },
        cameraDistanceMm: null,
        focalLengthPx: null,
        ...told,
      },
      { mask: null, canopyPx: PLANT_PX, rimPx: null, footPx: null },
    );

  it.each([
    ['the focal length', { focalLengthPx: SCENE.focalPx }],
    ['the camera’s distance', { cameraDistanceMm: DEPTH_MM }],
    ['a distance 3 % off', { cameraDistanceMm: 1.03 * DEPTH_MM }],
  ])('by %s is true within a hundredth', (_, told) => {
    const { sheetScale } = scaleWith(told);
    expect(Math.abs(((sheetScale?.mmPerPx ?? 0) * SCENE.focalPx) / DEPTH_MM - 1)).toBeLessThan(0.01);
  });

  it('is not guessed from neither', () => {
    const { sheetScale, notes } = scaleWith({});
    expect(sheetScale).toBeNull();
    expect(notes.join()).toContain('say how far the camera stands from the pot');
  });
});
