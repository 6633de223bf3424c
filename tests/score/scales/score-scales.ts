// How true the scale is: `npm run --silent score-scales`. Rendered plants 15 cm before a stand sheet, read as the product reads them.
import { readFileSync } from 'node:fs';
import { NOTHING_KNOWN } from '../../../core/canopy/known.ts';
import { openNetwork } from '../../../core/canopy/model/onnx-door.ts';
import { type GatheredPhoto, gatherPhoto, measureGathered } from '../../../core/measure-photo.ts';
import type { Raster } from '../../../core/raster/raster.ts';
import type { KnownStand } from '../../../core/stand/known-stand.ts';
import { drawnSheet } from '../frames/drawn-sheet.ts';
import { quantile } from '../quantile.ts';
import { hangSheet } from './hang-sheet.ts';
import { BEHIND_MM, DISTANCES_MM, type ScaleScene, scaleScenes } from './scenes.ts';
import { trueMmPerPx } from './true-size.ts';

/** How the report comes to its scale. */
const WAYS = [
  'sheet, focal length told',
  'sheet, distance told',
  'rim, focal length and distance told',
  'rim alone',
] as const;
type Way = (typeof WAYS)[number];

interface Row {
  readonly way: Way;
  readonly distanceMm: number;
  /** Read ÷ true − 1, %: of mm a px at the plant's axis, and of the ball's mm a px; `null` when no scale was given. */
  readonly atAxis: number | null;
  readonly atBall: number | null;
}

const network = await openNetwork(readFileSync('core/canopy/model/first-guess.onnx'));
const sheet = drawnSheet();
const rows: Row[] = [];
for (const scene of await scaleScenes()) {
  const photo = hangSheet(scene.photo, scene.camera, sheet, scene.hung, scene.seed);
  for (const [way, gathered] of Object.entries(await gatheredBy(scene, photo)) as [Way, GatheredPhoto][]) {
    const row = rowOf(scene, way, gathered);
    rows.push(row);
    const told = (percent: number | null) => (percent === null ? '-' : `${percent.toFixed(2)} %`);
    console.error(
      `${scene.name} at ${scene.distanceMm} mm, ${way}: at the axis ${told(row.atAxis)}, the ball ${told(row.atBall)}`,
    );
  }
}
console.log(tableOf(rows));

/** The photo read with what each way is told of the stand. */
async function gatheredBy(
  { name, rimMm, distanceMm, camera }: ScaleScene,
  photo: Raster,
): Promise<Record<Way, GatheredPhoto>> {
  const upright = { raster: photo, widthPx: photo.width, heightPx: photo.height };
  const gatheredWith = (told: Pick<KnownStand, 'cameraDistanceMm' | 'focalLengthPx'>) => {
    const standSheet = { paper: 'A4', place: 'backdrop', plantInFrontMm: BEHIND_MM } as const;
    const stand: KnownStand = { reference: null, sheet: standSheet, ...told };
    return gatherPhoto(upright, { ...NOTHING_KNOWN, network, photoName: name, turnDeg: null, rimMm, stand });
  };
  const byFocal = await gatheredWith({ cameraDistanceMm: null, focalLengthPx: camera.focalPx });
  const byDistance = await gatheredWith({ cameraDistanceMm: distanceMm, focalLengthPx: null });
  const withoutSheet = byFocal.stand && {
    ...byFocal.stand,
    sheetScale: null,
    focalLengthPx: camera.focalPx,
    cameraDistanceMm: distanceMm,
  };
  return {
    'sheet, focal length told': byFocal,
    'sheet, distance told': byDistance,
    'rim, focal length and distance told': { ...byFocal, stand: withoutSheet },
    'rim alone': { ...byFocal, stand: null },
  };
}

function rowOf(scene: ScaleScene, way: Way, gathered: GatheredPhoto): Row {
  const looks = (gathered.stand?.focalLengthPx ?? null) !== null;
  const { scale, ball } = measureGathered(gathered, []).report;
  const off = (read: number, truth: number) => 100 * (read / truth - 1);
  const truth = ball && trueMmPerPx(scene, ball, looks);
  return {
    way,
    distanceMm: scene.distanceMm,
    atAxis: scale && truth && off(scale.mmPerPx, truth.atAxis),
    atBall: ball?.radiusMm && truth ? off(ball.radiusMm / ball.radiusPx, truth.atBall) : null,
  };
}

function tableOf(all: readonly Row[]): string {
  const head = `${'way'.padEnd(38)}distance  photos  at the axis: mean, worst %  the ball: mean, worst %`;
  const lines = WAYS.flatMap((way) =>
    [...DISTANCES_MM, null].map((distanceMm) => {
      const of = all.filter(
        (row) => row.way === way && (distanceMm === null || row.distanceMm === distanceMm),
      );
      const cell = (values: readonly (number | null)[]) => {
        const known = values.filter((value) => value !== null);
        if (known.length === 0) return 'none';
        const mean = known.reduce((sum, value) => sum + value, 0) / known.length;
        return `${mean.toFixed(2)}, ${quantile(known.map(Math.abs), 1).toFixed(2)}`;
      };
      return [
        way.padEnd(38),
        (distanceMm === null ? 'all' : `${distanceMm} mm`).padEnd(10),
        String(of.length).padEnd(8),
        cell(of.map(({ atAxis }) => atAxis)).padEnd(27),
        cell(of.map(({ atBall }) => atBall)),
      ].join('');
    }),
  );
  return [head, ...lines].join('\n');
}
