import { describe, expect, it } from 'vitest';
import type { Mask } from '../../../core/raster/raster.ts';
import type { PhotoReport } from '../../../core/report.ts';
import { reportWithoutMeasures } from '../../../core/report-of-measures.ts';
import { turnBetween } from '../../../core/turned/circular-statistics.ts';
import { hullOfViews, joinViews } from '../../../core/turned/join-views.ts';
import { sittingCamera } from '../../../core/turned/sitting-camera.ts';
import type { TakenView } from '../../../core/turned/taken-view.ts';
import { type CameraSpec, pinhole, project } from '../../../sample-images/render/view/camera.ts';

const [WIDTH, HEIGHT] = [800, 600];
const RIM_MM = 130;
const BALL = { radiusMm: 120, heightMm: 110, asideMm: 15, azimuthDeg: 200 };
const CAMERA: CameraSpec = { distanceMm: 900, heightMm: 180, aimMm: [0, 80], fieldMm: 560, rollDeg: 0 };
const ELEVATION_DEG = (Math.atan2(CAMERA.heightMm, CAMERA.distanceMm) * 180) / Math.PI;
const NOTHING = { cameraHeightMm: null, light: null };

interface Told {
  readonly rimMm?: number | null;
  readonly focalLength?: boolean;
  readonly cameraDistanceMm?: number | null;
  readonly camera?: CameraSpec;
  readonly rimSeen?: boolean;
}

/** A photo of a ball beside its axis, taken from above by the renderer's pinhole camera, as it would be measured. */
function taken(turnDeg: number, told: Told = {}): TakenView {
  const camera = told.camera ?? CAMERA;
  const eye = pinhole(camera, WIDTH, HEIGHT);
  const rad = ((BALL.azimuthDeg - turnDeg) * Math.PI) / 180;
  const [right, towards] = [BALL.asideMm * Math.sin(rad), BALL.asideMm * Math.cos(rad)];
  const middle = [right - eye.eye[0], -towards - eye.eye[1], BALL.heightMm - eye.eye[2]] as const;
  const far = Math.hypot(...middle);
  const canopy: Mask = { width: WIDTH, height: HEIGHT, data: new Uint8Array(WIDTH * HEIGHT) };
  const cosine = Math.sqrt(1 - (BALL.radiusMm / far) ** 2);
  let [sumX, count] = [0, 0];
  for (let y = 0; y < HEIGHT; y++) {
    for (let x = 0; x < WIDTH; x++) {
      const [u, v] = [(x + 0.5 - WIDTH / 2) / eye.focalPx, (HEIGHT / 2 - y - 0.5) / eye.focalPx];
      const ray = [0, 1, 2].map(
        (k) => (eye.ahead[k] ?? 0) + u * (eye.right[k] ?? 0) + v * (eye.up[k] ?? 0),
      ) as [number, number, number];
      const along = (ray[0] * middle[0] + ray[1] * middle[1] + ray[2] * middle[2]) / Math.hypot(...ray) / far;
      if (along < cosine) continue;
      canopy.data[y * WIDTH + x] = 1;
      sumX += x + 0.5;
      count++;
    }
  }
  const rim = project(eye, [0, 0, 0]);
  const mmPerPx = rim.depthMm / eye.focalPx;
  const halfPx = RIM_MM / 2 / mmPerPx;
  const radiusPx = BALL.radiusMm / mmPerPx;
  const report: PhotoReport = {
    ...reportWithoutMeasures(
      {
        name: 'a.jpg',
        widthPx: WIDTH,
        heightPx: HEIGHT,
        rasterWidthPx: WIDTH,
        rasterHeightPx: HEIGHT,
        rimMm: RIM_MM,
        turnDeg,
        notes: [],
      },
      'no-canopy',
      '',
    ),
    status: 'measured',
    hint: null,
    scale: told.rimMm === null ? null : { mmPerPx, from: 'rim' },
    axis: {
      xPx: rim.xPx,
      rimLeftPx: [rim.xPx - halfPx, rim.yPx],
      rimRightPx: [rim.xPx + halfPx, rim.yPx],
      rimEllipse:
        told.rimSeen === false
          ? null
          : {
              centrePx: [rim.xPx, rim.yPx],
              halfWidthPx: halfPx,
              halfHeightPx: halfPx * Math.sin((ELEVATION_DEG * Math.PI) / 180),
            },
    },
    ball: {
      centrePx: [rim.xPx, rim.yPx],
      radiusPx,
      radiusMm: null,
      radiusPlusMinusPx: 1,
      radiusPlusMinusMm: null,
      outOfRoundPx: 0,
      outOfRoundMm: null,
      openArcDeg: 300,
    },
    lopsidedness: { percent: (100 * (sumX / count - rim.xPx)) / radiusPx, plusMinus: 1, side: 'even' },
  };
  return {
    report,
    canopy,
    focalLengthPx: told.focalLength === false ? null : eye.focalPx,
    cameraDistanceMm: told.cameraDistanceMm ?? null,
  };
}

const FOUR = [0, 45, 90, 135];
const sitting = (told: Told = {}) => FOUR.map((turn) => taken(turn, told));

describe('the camera of a sitting', () => {
  it('is as far as the focal length and the scale say, and as high as the rim’s ellipse says', () => {
    const { camera, slantMm } = sittingCamera(sitting(), null);
    expect(camera).toMatchObject({ distanceMm: expect.closeTo(900, -1), heightMm: expect.closeTo(180, -1) });
    expect(slantMm).toBeNull();
  });

  it('is as far as was told, without a focal length', () => {
    const { camera, slantMm } = sittingCamera(sitting({ focalLength: false, cameraDistanceMm: 900 }), null);
    expect(camera).toMatchObject({ distanceMm: 900, heightMm: expect.closeTo(180, 0) });
    expect(slantMm).toBeCloseTo(Math.hypot(900, 180), 0);
  });

  it('counts as standing where cameras usually do when nothing tells how far it is, and still looks down', () => {
    const { camera } = sittingCamera(sitting({ focalLength: false }), null);
    expect(camera).toEqual({ distanceInRadii: 10, elevationDeg: expect.closeTo(ELEVATION_DEG, 6) });
  });

  it('is as high as the stand says where leaves hide the rim, less a usual pot', () => {
    const views = sitting({ rimSeen: false, cameraDistanceMm: 900 });
    const { camera } = sittingCamera(views, 180 + 0.88 * RIM_MM);
    expect(camera).toMatchObject({ distanceMm: 900, heightMm: expect.closeTo(180, 0) });
  });

  it('counts as level when nothing tells how high it is, and says so', () => {
    const { camera, notes } = sittingCamera(sitting({ rimSeen: false, focalLength: false }), null);
    expect(camera).toMatchObject({ elevationDeg: 0 });
    expect(notes).toEqual([
      'How high the camera stands is not known, because leaves hide the rim’s opening and the stand does not tell it; it counts as level with the rim. Tell the stand the height of the lens.',
    ]);
  });

  it('of no view is not known, without a word', () => {
    expect(sittingCamera([], 300)).toEqual({
      camera: { distanceInRadii: 10, elevationDeg: 0 },
      elevationDeg: null,
      slantMm: null,
      notes: [],
    });
  });
});

describe('the views of a sitting', () => {
  it('of a ball before a near camera looking down give its radius, place and side', () => {
    const { plan, faults } = joinViews(sitting(), NOTHING);
    // Half a px of the masks is 0.35 mm.
    expect(plan.hull?.radiusMm).toBeCloseTo(BALL.radiusMm, 0);
    expect(plan.hull?.centreMm?.[2]).toBeCloseTo(BALL.heightMm, 0);
    expect(Math.abs(turnBetween(plan.lopsidedness?.azimuthDeg ?? 0, BALL.azimuthDeg))).toBeLessThan(2);
    // 15 ÷ 120; a near camera adds a little.
    expect(plan.lopsidedness?.percent).toBeCloseTo(12.5, 0);
    expect(faults).toEqual([]);
  });

  it('come out alike when distance was told in place of the focal length', () => {
    const plain = joinViews(sitting(), NOTHING).plan.hull;
    const told = joinViews(sitting({ focalLength: false, cameraDistanceMm: 900 }), NOTHING).plan.hull;
    expect((told?.radiusMm ?? 0) / (plain?.radiusMm ?? 1)).toBeCloseTo(1, 2);
    expect((told?.volumeMl ?? 0) / (plain?.volumeMl ?? 1)).toBeCloseTo(1, 2);
  });

  it('without a distance are a little large, and say so', () => {
    const { plan, notes } = joinViews(sitting({ focalLength: false }), NOTHING);
    // Seen from 900 mm the outline of a ball of 120 mm reads 1.01 times as large.
    expect((plan.hull?.radiusMm ?? 0) / BALL.radiusMm).toBeGreaterThan(1);
    expect((plan.hull?.radiusMm ?? 0) / BALL.radiusMm).toBeLessThan(1.03);
    expect(notes.join(' ')).toContain('The camera’s distance is not known');
  });

  it('without a scale are in px, and keep their shape', () => {
    const { plan } = joinViews(sitting({ rimMm: null }), NOTHING);
    expect(plan.hull?.volumeMl).toBeNull();
    expect(plan.hull?.outOfRoundPercent).toBeLessThan(6);
    expect(plan.reach[0]?.mm).toBeNull();
    expect(hullOfViews(sitting({ rimMm: null }), NOTHING)?.unit).toBe('px');
  });

  it('close in a solid with its rim', () => {
    const solid = hullOfViews(sitting(), NOTHING);
    expect(solid?.unit).toBe('mm');
    expect(solid?.rimRadius).toBeCloseTo(RIM_MM / 2, 0);
    expect(solid?.triangles.length).toBeGreaterThan(3000);
    expect(hullOfViews([taken(0)], NOTHING)).toBeNull();
  });

  it('leave out a photo that was not measured, and count the others as they were given', () => {
    const blind = { ...taken(20), report: { ...taken(20).report, status: 'blurred' as const } };
    const { plan, notes } = joinViews([blind, ...sitting()], NOTHING);
    expect(plan.directions).toBe(4);
    expect(notes[0]).toBe('Left out because it was not measured or its axis cannot be placed: view 1.');
  });

  it('of a hand-held camera name no pot that moved', () => {
    const views = FOUR.map((turn, k) => {
      const camera = { ...CAMERA, aimMm: [25 * k - 40, 80] as const };
      return taken(turn, { camera });
    });
    const { faults, notes } = joinViews(views, NOTHING);
    expect(faults.filter(({ from }) => from === 'rim')).toEqual([]);
    expect(notes.join(' ')).toContain('the camera was moved between them');
  });

  it('of a still camera name the pot that was set down elsewhere', () => {
    const views = FOUR.map((turn, k) =>
      taken(turn, { camera: { ...CAMERA, aimMm: [k === 2 ? -15 : 0, 80] } }),
    );
    const [fault] = joinViews(views, NOTHING).faults;
    expect(fault).toMatchObject({ kind: 'pot-moved', view: 2, from: 'rim' });
    expect(fault?.asideMm).toBeCloseTo(15, 0);
  });
});
