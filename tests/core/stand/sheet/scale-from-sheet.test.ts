import { describe, expect, it } from 'vitest';
import {
  mmPerPxAtPlant,
  type PlantBeforeSheet,
  readsLargerBy,
} from '../../../../core/stand/sheet/scale-from-sheet.ts';
import { sheetGeometry } from '../../../../core/stand/sheet/sheet-geometry.ts';
import type { SheetPose, SheetReading } from '../../../../core/stand/sheet/sheet-reading.ts';
import { mapOfScene, SCENE, type SheetScene } from './photographed-sheet.ts';

/** What a flawless reading of a scene gives. */
function flawless(changes: Partial<SheetScene>, withPose = true): SheetReading {
  const scene = { ...SCENE, ...changes };
  const [tilt, about] = [(scene.tiltDeg * Math.PI) / 180, (scene.tiltAboutDeg * Math.PI) / 180];
  const pose: SheetPose = {
    focalLengthPx: scene.focalPx,
    focalLengthFrom: 'given',
    distanceMm: scene.distanceMm,
    distanceDoubtMm: 5,
    tiltDeg: scene.tiltDeg,
    principalPx: [scene.widthPx / 2, scene.heightPx / 2],
    normal: [-Math.sin(about) * Math.sin(tilt), Math.cos(about) * Math.sin(tilt), -Math.cos(tilt)],
  };
  return {
    ok: true,
    marks: [],
    fit: 'perspective',
    paperToPhoto: mapOfScene(scene, sheetGeometry(scene.paper)),
    residualPx: 0,
    mmPerPxAtSheet: scene.distanceMm / scene.focalPx,
    mmPerPxDoubt: 0.003 * (scene.distanceMm / scene.focalPx),
    pose: withPose ? pose : null,
    greys: { state: 'not-seen', gains: null, spread: null },
    arrowTurnDeg: 0,
    lightSide: 'above',
    notes: [],
  };
}

const PLANT: PlantBeforeSheet = {
  paper: 'A4',
  place: 'backdrop',
  plantInFrontMm: 150,
  plantPx: null,
  aboveBenchMm: 0,
  cameraDistanceMm: null,
};

describe('a thing nearer than the sheet', () => {
  it.each([
    [1000, 11.11],
    [1500, 7.14],
    [2000, 5.26],
    [3000, 3.45],
  ])(
    'reads larger by Z ÷ (Z − d): 100 mm before %i mm by %f %% (pinhole camera, worked figures)',
    (distance, percent) => {
      expect(100 * (readsLargerBy(distance, 100) - 1)).toBeCloseTo(percent, 2);
    },
  );

  it.each([
    [1000, 23.46],
    [1500, 14.8],
    [2000, 10.8],
    [3000, 7.02],
  ])('and its area by the square: before %i mm by %f %%', (distance, percent) => {
    expect(Math.abs(100 * (readsLargerBy(distance, 100) ** 2 - 1) - percent)).toBeLessThan(0.006);
  });

  it('cannot stand at the camera or behind it', () => {
    expect(() => readsLargerBy(100, 100)).toThrow(
      'Expected a positive number for distanceMm - nearerMm but received 0',
    );
    expect(() => readsLargerBy(Number.NaN, 1)).toThrow(
      'Expected a positive number for distanceMm but received NaN',
    );
  });
});

describe('millimetres a px at the plant', () => {
  it('are the depth of the plant’s axis ÷ focal length', () => {
    const scale = mmPerPxAtPlant(flawless({ distanceMm: 1500 }), PLANT);
    expect(scale.mmPerPx).toBeCloseTo(1350 / 1200, 9);
  });

  it('follow the plane before a tilted backdrop to where the plant is seen', () => {
    // Tilted about the upright by 20°: 300 mm along the backdrop, 150 mm out along its normal.
    const [tilt, along] = [(20 * Math.PI) / 180, 300];
    const reading = flawless({ distanceMm: 1500, tiltDeg: 20, tiltAboutDeg: 90 });
    const x = along * Math.cos(tilt) - 150 * Math.sin(tilt);
    const z = 1500 - along * Math.sin(tilt) - 150 * Math.cos(tilt);
    const scale = mmPerPxAtPlant(reading, { ...PLANT, plantPx: [800 + (1200 * x) / z, 600] });
    expect(scale.mmPerPx).toBeCloseTo(z / 1200, 9);
  });

  it('come from the measured distance where the photo tells none', () => {
    const reading = flawless({ distanceMm: 1500 }, false);
    expect(mmPerPxAtPlant(reading, { ...PLANT, cameraDistanceMm: 1350 }).mmPerPx).toBeCloseTo(1350 / 1200, 9);
  });

  it('are not guessed when neither is known', () => {
    const scale = mmPerPxAtPlant(flawless({ distanceMm: 1500 }, false), PLANT);
    expect(scale.mmPerPx).toBeNull();
    expect(scale).toHaveProperty(
      'reason',
      expect.stringContaining('say how far the camera stands from the pot'),
    );
  });

  it('are surer far away, where 8 mm of the plant’s place weigh less', () => {
    const [near, far] = [800, 3000].map((distanceMm) => {
      const scale = mmPerPxAtPlant(flawless({ distanceMm }), PLANT);
      if (scale.mmPerPx === null) throw new Error(scale.reason);
      return scale.doubt / scale.mmPerPx;
    }) as [number, number];
    // √(0.3 %² + (8 ÷ 650)² + (150 × 5 ÷ (800 × 650))²)
    expect(near).toBeCloseTo(Math.hypot(0.003, 8 / 650, (150 * 5) / (800 * 650)), 9);
    expect(far).toBeLessThan(near / 2);
  });

  it('follow the bench to the pot’s foot, with and without a focal length', () => {
    // A bench seen 40° from above: the sheet is tilted by 50° about the level line; the foot lies 200 mm nearer.
    const tilt = (50 * Math.PI) / 180;
    const scene = { distanceMm: 1200, tiltDeg: -50, tiltAboutDeg: 0 };
    const depth = 1200 - 200 * Math.sin(tilt);
    const foot = [800, 600 + (1200 * 200 * Math.cos(tilt)) / depth] as const;
    const bench: PlantBeforeSheet = { ...PLANT, place: 'bench', plantPx: foot };
    expect(mmPerPxAtPlant(flawless(scene), bench).mmPerPx).toBeCloseTo(depth / 1200, 6);
    expect(mmPerPxAtPlant(flawless(scene, false), bench).mmPerPx).toBeCloseTo(depth / 1200, 6);
    // What stands 150 mm above the bench is nearer by 150 mm × cos 50°.
    const upper = mmPerPxAtPlant(flawless(scene), { ...bench, aboveBenchMm: 150 });
    expect(upper.mmPerPx).toBeCloseTo((depth - 150 * Math.cos(tilt)) / 1200, 6);
  });
});
