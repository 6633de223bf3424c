/**
 * Measurements of turned sittings on simulated plants of known shape, printed as a table.
 *
 * `node --import tsx tests/core/turned/figures.ts [PLANTS] [FIRST]`: PLANTS simulated plants a row (default 40), seeds from FIRST
 * (default 9000, seeds that nothing was chosen on).
 */

import { fitBall } from '../../../core/measures/ball.ts';
import { seededNoise } from '../../../core/measures/seeded-noise.ts';
import { readSilhouette } from '../../../core/silhouette/silhouette.ts';
import { turnBetween } from '../../../core/turned/circular-statistics.ts';
import type { TurnedFault } from '../../../core/turned/fault-words.ts';
import { fitLopsidedness } from '../../../core/turned/lopsidedness-vector.ts';
import { measureTurned } from '../../../core/turned/measure-turned.ts';
import type { NearCamera } from '../../../core/turned/turned-view.ts';
import { ball, leafyPlant, type Plant, photograph, reachOf, roughCutOut, sitting } from './leafy-plant.ts';

const plants = Number(process.argv[2] ?? 40);
const first = Number(process.argv[3] ?? 9000);
const MM_PER_PX = 1.5;
const EIGHTHS = [0, 45, 90, 135, 180, 225, 270, 315];
const TURNS: Record<string, number[]> = {
  '2': [0, 90],
  '4': [0, 45, 90, 135],
  '6': [0, 60, 120, 180, 240, 300],
  '8': EIGHTHS,
};
const AXIS_MISREAD_MM = 1.3;

interface Case {
  readonly plant: Plant;
  readonly camera: NearCamera;
  readonly seed: number;
}

/** Plants of three sizes, few and many leaves, with and without shoulders, upright and leaning, before three cameras. */
function caseOf(seed: number, lean: number): Case {
  const radiusMm = [110, 150, 190][seed % 3] as number;
  return {
    seed,
    camera: {
      distanceMm: [1200, 1500, 2500][Math.floor(seed / 4) % 3] as number,
      heightMm: [0, 150, 300][Math.floor(seed / 2) % 3] as number,
    },
    plant: leafyPlant({
      seed,
      radiusMm,
      lean,
      leanAzimuthDeg: seed * 67,
      leaves: [60, 120, 200, 300][seed % 4] as number,
      lobes: [0, 4, 8, 14][Math.floor(seed / 2) % 4] as number,
    }),
  };
}

/** Views as a cut-out gives them: bits missed and added, the axis misread. */
function roughSitting({ plant, camera, seed }: Case, turns: readonly number[]) {
  const noise = seededNoise(seed);
  return sitting(plant, turns, { camera, mmPerPx: MM_PER_PX, plusMinus: 2 }).map((view, k) =>
    roughCutOut(view, { seed: 100 * seed + k, bits: 14, bitMm: 4, axisMm: AXIS_MISREAD_MM * noise.normal() }),
  );
}

const OPTIONS = { light: null, fixedCamera: false };
const samples = new Map<string, number[]>();
function note(name: string, value: number): void {
  samples.set(name, [...(samples.get(name) ?? []), value]);
}

function directionsAndReach(): void {
  for (let k = 0; k < plants; k++) {
    const one = caseOf(first + k, [0, 0.02, 0.1, 0.14][k % 4] as number);
    const all = sitting(
      one.plant,
      Array.from({ length: 24 }, (_, n) => 15 * n),
      { camera: one.camera, mmPerPx: 2 },
    );
    const truth = fitLopsidedness(
      all.map((view) => ({ turnDeg: view.turnDeg, percent: view.lopsidednessPercent, plusMinus: 1 })),
    );
    if (!truth.ok) throw new Error(truth.hint);
    const ballMm = meanBallMm(all);
    for (const count of ['2', '4', '8']) {
      const turns = TURNS[count] as number[];
      const { plan, faults } = measureTurned(roughSitting(one, turns), { ...OPTIONS, camera: one.camera });
      const vector = plan.lopsidedness;
      if (vector === null) continue;
      if (truth.vector.percent >= 6) {
        const off = Math.abs(turnBetween(vector.azimuthDeg, truth.vector.azimuthDeg));
        note(`direction off, ${count} views, deg`, off);
        note(`direction inside its plus-minus, ${count} views, share`, off <= vector.plusMinusDeg ? 1 : 0);
        note(`6 % and more called lopsided, ${count} views, share`, vector.even ? 0 : 1);
      }
      if (truth.vector.percent <= 2)
        note(`2 % and less called even, ${count} views, share`, vector.even ? 1 : 0);
      const squared = plan.reach.map(
        ({ azimuthDeg, mm }) => ((mm ?? 0) - reachOf(one.plant, azimuthDeg)) ** 2,
      );
      note(`reach RMS, ${count} views, % of ball`, (100 * Math.sqrt(mean(squared))) / ballMm);
      note(
        `reach inside its plus-minus, ${count} views, share`,
        mean(
          plan.reach.map(({ azimuthDeg, mm, plusMinusMm }) =>
            Math.abs((mm ?? 0) - reachOf(one.plant, azimuthDeg)) <= (plusMinusMm ?? 0) ? 1 : 0,
          ),
        ),
      );
      const radius = plan.hull?.radiusMm ?? Number.NaN;
      note(`ball radius off the 24 views' mean, ${count} views, %`, Math.abs(100 * (radius / ballMm - 1)));
      if (count !== '2') note(`false alarms, ${count} views, share`, faults.length);
    }
  }
}

/** Mean radius of the single views' balls, each set right for what a near camera enlarges. */
function meanBallMm(views: ReturnType<typeof sitting>): number {
  return mean(
    views.flatMap((view) => {
      const silhouette = readSilhouette(view.canopy);
      const fitted = silhouette === null ? null : fitBall(silhouette, null);
      return fitted === null || view.mmPerPx === null ? [] : [fitted.radiusPx * view.mmPerPx];
    }),
  );
}

function faults(): void {
  for (const count of ['4', '6', '8']) {
    const turns = TURNS[count] as number[];
    for (let k = 0; k < plants; k++) {
      const one = caseOf(first + 500 + k, 0.03 * (k % 5));
      const good = roughSitting(one, turns);
      const i = k % turns.length;
      const j = (i + 1 + (k % (turns.length - 1))) % turns.length;
      const measured = (views: typeof good) =>
        measureTurned(views, { ...OPTIONS, camera: one.camera }).faults[0] ?? null;
      const judge = (name: string, views: typeof good, right: (fault: TurnedFault) => boolean) => {
        const fault = measured(views);
        note(`${name}, ${count} views: found, share`, fault === null ? 0 : 1);
        note(`${name}, ${count} views: named, share`, fault !== null && right(fault) ? 1 : 0);
      };
      note(`good sitting, ${count} views: false alarm, share`, measured(good) === null ? 0 : 1);
      judge(
        'turn 45° off',
        good.map((view, n) =>
          n === i ? { ...view, turnDeg: view.turnDeg + (k % 2 === 0 ? 45 : -45) } : view,
        ),
        (fault) => fault.kind === 'turn-wrong' && fault.view === i,
      );
      judge(
        'two swapped',
        good.map((view, n) => {
          const from = n === i ? j : n === j ? i : n;
          return { ...view, turnDeg: turns[from] as number };
        }),
        (fault) =>
          fault.kind === 'views-swapped' &&
          fault.view === Math.min(i, j) &&
          fault.otherView === Math.max(i, j),
      );
      const moved = photograph(one.plant, {
        turnDeg: turns[i] as number,
        camera: one.camera,
        mmPerPx: MM_PER_PX,
        plusMinus: 2,
        asideMm: k % 2 === 0 ? 15 : -15,
      });
      judge(
        'pot moved 15 mm',
        good.map((view, n) =>
          n === i ? roughCutOut(moved, { seed: one.seed * 7 + n, bits: 14, bitMm: 4, axisMm: 0 }) : view,
        ),
        (fault) => fault.kind === 'pot-moved' && fault.view === i,
      );
    }
  }
}

function spheres(): void {
  for (const camera of [null, { distanceMm: 1200, heightMm: 200 }]) {
    for (const count of [2, 3, 4, 6, 8]) {
      const turns = Array.from({ length: count }, (_, k) => (180 * k) / count);
      const { plan } = measureTurned(sitting(ball(120, [0, 0, 130]), turns, { camera, mmPerPx: 0.7 }), {
        ...OPTIONS,
        camera,
      });
      const truth = (4 / 3) * Math.PI * 0.12 ** 3 * 1000 * 1000;
      const where = camera === null ? 'from far' : 'at 1.2 m';
      note(
        `ball ${where}, ${count} views: volume ÷ (ball × bias) − 1, %`,
        100 * ((plan.hull?.volumeMl ?? 0) / truth / (plan.hull?.bias ?? 1) - 1),
      );
      note(
        `ball ${where}, ${count} views: sphericity less closed form`,
        (plan.hull?.sphericity ?? 0) - (plan.hull?.sphericityOfABall ?? 0),
      );
      note(`ball ${where}, ${count} views: radius, %`, 100 * ((plan.hull?.radiusMm ?? 0) / 120 - 1));
    }
  }
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

spheres();
directionsAndReach();
faults();
for (const [name, values] of samples) {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (share: number) =>
    (sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] as number).toFixed(2);
  const tail = values.length > 1 && !name.endsWith('share') ? ` median ${at(0.5)}, 90th ${at(0.9)}` : '';
  process.stdout.write(`${name}: mean ${mean(values).toFixed(3)}${tail} (n ${values.length})\n`);
}
