import { bareLongStems } from '../../../core/stems/bare-photo.ts';
import { matchStems } from '../../../core/stems/match-stems.ts';
import { polylineLength } from '../../../core/stems/stem-length.ts';
import { turnedScene } from '../../../core/turned/turned-scene.ts';
import { elevationOf, fitBall } from '../../../sample-images/render/fit-ball.ts';
import {
  azimuthDirection,
  azimuthOf,
  length,
  subtract,
  type Vec3,
} from '../../../sample-images/render/geometry/vector.ts';
import type { PlantTruth, RenderedSilhouette } from '../../../sample-images/render/render-silhouette.ts';
import { type Pinhole, pinhole, project } from '../../../sample-images/render/view/camera.ts';
import { EIGHTHS } from './figures-leafy.ts';
import { renderedSitting } from './rendered-sitting.ts';
import { ASKED_MM, scorePhoto, scoreTurned } from './score-stems.ts';
import { cameraOf, measuredRender } from './sitting-of-plant.ts';
import { stemLines } from './stem-lines.ts';
import { SIDE_PX, stemPlant } from './stem-plants.ts';
import { emptyTally, quantile, tallyLine } from './tally.ts';

/** Tips this near are the same, px of the photo and mm of the plant. */
const SAME_TIP_PX = 6;
const SAME_TIP_MM = 15;

/** Bare plants with one to five known long stems, and even ones, from exact masks; lengths against the renderer's own lines. */
export function bareFigures(plants: number, first: number): string[] {
  const tallies = { '1': emptyTally(), '4': emptyTally(), '8': emptyTally() };
  const even = { '1': [0, 0], '4': [0, 0], '8': [0, 0] };
  const lengthOff = { '1': [] as number[], '4': [] as number[], '8': [] as number[] };
  let unfit = 0;
  for (let seed = first; seed < first + plants; seed++) {
    const count = seed % 3 === 0 ? 0 : 1 + (seed % 5);
    const plant = stemPlant({ seed, longStems: count, bare: true });
    const shots = renderedSitting(plant, EIGHTHS);
    const [shot] = shots as [RenderedSilhouette];
    const stems = bareTruth(shot.truth);
    if (stems === null) {
      unfit++;
      continue;
    }
    const lines = stemLines(
      plant.plant,
      new Map(shot.truth.stems.map((stem) => [stem.shoot, stem.lengthMm])),
    );
    const measured = shots.map(measuredRender);
    for (const views of ['4', '8'] as const) {
      const scene = turnedScene(
        measured.slice(0, Number(views)).map(({ view }) => view),
        cameraOf(shot),
      );
      const found = matchStems(scene);
      if (count === 0) countCut(even[views], found.stems.length > 0);
      else scoreTurned(found.stems, stems.all, tallies[views]);
      for (const { lengthMm, tipMm } of found.stems) {
        if (lengthMm === null) continue;
        const [u, v, h] = tipMm;
        const line = nearestLine(
          [...lines.values()],
          ([x, y, z]) => Math.hypot(x - v, y + u, z - h),
          SAME_TIP_MM,
        );
        if (line !== null) lengthOff[views].push(100 * (lengthMm / polylineLength(line) - 1));
      }
    }
    const camera = pinhole(plant.camera, SIDE_PX, SIDE_PX);
    measured.slice(0, 4).forEach(({ view, ball }, k) => {
      const { turnDeg, longShoots } = shots[k] as RenderedSilhouette;
      const place = { xPx: view.axisXPx, rimYPx: view.rimYPx };
      const photo = bareLongStems(view.canopy, place, { centre: ball.centrePx, radius: ball.radiusPx });
      if (photo === null) return;
      const shown = [...lines.values()].map((line) =>
        line.map((point) => placeInPhoto(point, turnDeg, camera)),
      );
      for (const { tipPx, lengthPx } of photo.all) {
        const line = nearestLine(shown, ([x, y]) => Math.hypot(x - tipPx[0], y - tipPx[1]), SAME_TIP_PX);
        if (line !== null) lengthOff['1'].push(100 * (lengthPx / polylineLength(line) - 1));
      }
      if (count === 0) countCut(even['1'], photo.stems.length > 0);
      else {
        const centre = placeInPhoto(stems.ball.centreMm, turnDeg, camera);
        const inPhoto = (shoot: number) => {
          const tip = (lines.get(shoot) as Vec3[]).at(-1) as Vec3;
          const outermostPx = placeInPhoto(tip, turnDeg, camera);
          const away = Math.hypot(outermostPx[0] - centre[0], outermostPx[1] - centre[1]);
          const onOutline = longShoots.some((one) => one.shoot === shoot && one.onOutline);
          return { shoot, outermostPx, onOutline, excessMm: away * shot.truth.mmPerPx - stems.ball.radiusMm };
        };
        const [long, others] = [true, false].map((isLong) =>
          stems.all.filter((stem) => stem.long === isLong).map(({ shoot }) => inPhoto(shoot)),
        ) as [ReturnType<typeof inPhoto>[], ReturnType<typeof inPhoto>[]];
        scorePhoto(photo.stems, { longShoots: long, others, mmPerPx: shot.truth.mmPerPx }, tallies['1']);
      }
    });
    process.stderr.write(`bare ${seed}\n`);
  }
  return [
    ...(['1', '4', '8'] as const).flatMap((views) => {
      const name = `${views} ${views === '1' ? 'photo' : 'views'}`;
      const off = lengthOff[views].map(Math.abs);
      return [
        tallyLine(`bare, ${name}, stems of ${ASKED_MM} mm and more`, tallies[views]),
        `even bare plants, ${name}: a cut advised on ${even[views][0]} of ${even[views][1]}`,
        `bare, ${name}: length off ${views === '1' ? 'its projection' : 'the true one'}, median ${quantile(off, 0.5)} %, 90th ${quantile(off, 0.9)}, middle ${quantile(lengthOff[views], 0.5)} (${off.length})`,
      ];
    }),
    `bare plants left out because their tips fix no ball: ${unfit}`,
  ];
}

/** Excess and elevation of each stem about the ball that the tips of the other stems fix. */
function bareTruth(truth: PlantTruth) {
  const usual = truth.stems.filter(({ long }) => !long).map(({ tipMm }) => tipMm);
  const ball = fitBall(usual, [0, 0, truth.ball?.centreMm[2] ?? 80]);
  if (ball === null) return null;
  const all = truth.stems.map((stem) => {
    const out = subtract(stem.tipMm, ball.centreMm);
    return { ...stem, excessMm: length(out) - ball.radiusMm, elevationDeg: elevationOf(out) };
  });
  return { ball, all };
}

function placeInPhoto(point: Vec3, turnDeg: number, camera: Pinhole): [number, number] {
  const level = Math.hypot(point[0], point[1]);
  const facing = azimuthDirection(azimuthOf(point) - turnDeg);
  const { xPx, yPx } = project(camera, [level * facing[0], level * facing[1], point[2]]);
  return [xPx, yPx];
}

/** The line that ends nearest, within a distance. */
function nearestLine<Place extends readonly number[]>(
  lines: readonly (readonly Place[])[],
  endApart: (end: Place) => number,
  within: number,
): readonly Place[] | null {
  let best: readonly Place[] | null = null;
  let least = within;
  for (const line of lines) {
    const apart = endApart(line.at(-1) as Place);
    if (apart >= least) continue;
    best = line;
    least = apart;
  }
  return best;
}

function countCut(counts: number[], cut: boolean): void {
  counts[0] = (counts[0] as number) + (cut ? 1 : 0);
  counts[1] = (counts[1] as number) + 1;
}
