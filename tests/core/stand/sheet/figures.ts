/**
 * Measures how well the stand sheet is read, on renders with known truth, and prints a table.
 * Run: node --import tsx tests/core/stand/sheet/figures.ts
 */
import { mean, quantile } from 'simple-statistics';
import { openOpenCv } from '../../../../core/opencv/door.ts';
import { findRingMarks } from '../../../../core/stand/sheet/find-ring-marks.ts';
import { readSheetMarks } from '../../../../core/stand/sheet/read-sheet.ts';
import { mmPerPxAtPlant } from '../../../../core/stand/sheet/scale-from-sheet.ts';
import { missesOfMarks } from './misses-of-marks.ts';
import { mapped, photographSheet, SCENE, type SheetScene } from './photographed-sheet.ts';

const PLANT_BEFORE_MM = 150;
const SCENES_EACH = 6;

const WAYS: Record<string, Partial<SheetScene>> = {
  clean: {},
  'noise 4 steps': { noiseSteps: 4 },
  'noise 4, light falls 60 %': { noiseSteps: 4, lightFall: 0.6 },
  'blur 2 px, noise 2': { blurPx: 2, noiseSteps: 2 },
  'leaves over two marks, noise 2': {
    noiseSteps: 2,
    leaves: [
      { centreMm: [30, 260], radiusMm: 45 },
      { centreMm: [20, 60], radiusMm: 35 },
    ],
  },
};

const door = await openOpenCv();
console.log(
  'way | marks found, strays | centre px: median, 95 % | plant scale %: mean, worst | without focal %: worst',
);
for (const [name, way] of Object.entries(WAYS)) {
  const misses: number[] = [];
  const errors: number[] = [];
  const blindErrors: number[] = [];
  let [strays, unread] = [0, 0];
  for (let k = 0; k < SCENES_EACH; k++) {
    const scene = sceneOf(k, way);
    const photo = photographSheet(scene);
    const found = findRingMarks(door, photo.raster);
    const told = missesOfMarks(photo, found);
    misses.push(...told.misses);
    strays += told.strays;
    for (const focalLengthPx of [scene.focalPx, null]) {
      const reading = readSheetMarks(found, photo.raster, scene.paper, { focalLengthPx, place: 'backdrop' });
      if (!reading.ok) {
        unread++;
        continue;
      }
      const { px, depthMm } = plantIn(scene);
      const scale = mmPerPxAtPlant(reading, {
        paper: scene.paper,
        place: 'backdrop',
        plantInFrontMm: PLANT_BEFORE_MM,
        plantPx: px,
        aboveBenchMm: 0,
        cameraDistanceMm: depthMm,
      });
      if (scale.mmPerPx === null) throw new Error(scale.reason);
      const error = 100 * Math.abs((scale.mmPerPx * scene.focalPx) / depthMm - 1);
      (focalLengthPx === null ? blindErrors : errors).push(error);
    }
  }
  console.log(
    [
      name,
      `${misses.length} of ${5 * SCENES_EACH}, ${strays}${unread > 0 ? `, ${unread} unread` : ''}`,
      `${quantile(misses, 0.5).toFixed(3)}, ${quantile(misses, 0.95).toFixed(3)}`,
      `${mean(errors).toFixed(2)}, ${Math.max(...errors).toFixed(2)}`,
      Math.max(...blindErrors).toFixed(2),
    ].join(' | '),
  );
}
process.exit(0);

/** Distances 0.8 to 3 m, tilts up to 40°, all turns, both papers. */
function sceneOf(k: number, way: Partial<SheetScene>): SheetScene {
  const share = k / (SCENES_EACH - 1);
  return {
    ...SCENE,
    paper: k % 2 === 0 ? 'A4' : 'Letter',
    distanceMm: 800 + 2200 * share,
    tiltDeg: [0, 10, 40, 20, 30, 0][k % 6] as number,
    tiltAboutDeg: 67 * k,
    turnDeg: 73 * k,
    asideMm: [(k % 3) * 60 - 60, (k % 2) * 80 - 40],
    seed: k + 1,
    ...way,
  };
}

/** A plant's axis 150 mm before the sheet's middle, along its normal: where it is seen, and how far along the axis. */
function plantIn(scene: SheetScene): { px: readonly [number, number]; depthMm: number } {
  const [tilt, about] = [(scene.tiltDeg * Math.PI) / 180, (scene.tiltAboutDeg * Math.PI) / 180];
  const normal = [
    -Math.sin(about) * Math.sin(tilt),
    Math.cos(about) * Math.sin(tilt),
    -Math.cos(tilt),
  ] as const;
  const x = scene.asideMm[0] + PLANT_BEFORE_MM * normal[0];
  const y = scene.asideMm[1] + PLANT_BEFORE_MM * normal[1];
  const depthMm = scene.distanceMm + PLANT_BEFORE_MM * normal[2];
  const camera = [
    scene.focalPx,
    0,
    scene.widthPx / 2,
    0,
    scene.focalPx,
    scene.heightPx / 2,
    0,
    0,
    1,
  ] as const;
  return { px: mapped(camera, [x / depthMm, y / depthMm]), depthMm };
}
