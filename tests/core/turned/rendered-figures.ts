/**
 * Turned sittings of rendered plants, from photo to plan, against what is known because the plants were built; printed as a table.
 *
 * `node --import tsx tests/core/turned/rendered-figures.ts [PLANTS] [FIRST]`: PLANTS plants (default 7), from number FIRST (default 0).
 * Renders are kept in the system's temporary folder; the first run takes some seconds a photo, nine photos a plant.
 */
import { readFileSync } from 'node:fs';
import { NOTHING_KNOWN } from '../../../core/canopy/known.ts';
import { type Network, openNetwork } from '../../../core/canopy/model/onnx-door.ts';
import { measurePhoto } from '../../../core/measure-photo.ts';
import { turnBetween } from '../../../core/turned/circular-statistics.ts';
import { joinViews } from '../../../core/turned/join-views.ts';
import type { TurnedReport } from '../../../core/turned/measure-turned.ts';
import type { TakenView } from '../../../core/turned/taken-view.ts';
import { azimuthOf } from '../../../sample-images/render/geometry/vector.ts';
import { readUprightPhoto } from '../../../server/intake/read-upright-photo.ts';
import { shotFile } from '../../reshot/shots.ts';
import { quantile } from '../../score/quantile.ts';
import { builtTruth } from './built-truth.ts';
import { type RenderedPlant, renderedPlants } from './rendered-sittings.ts';

const SIZE = { size: 1, samplesPerSide: 2 };
/** Places in the list of eight views. */
const SITTINGS: Readonly<Record<string, readonly number[]>> = {
  '2': [0, 2],
  '4': [0, 1, 2, 3],
  '8': [0, 1, 2, 3, 4, 5, 6, 7],
};
/** Direction counts where the ball stands off the axis by this much, % of its radius. */
const LOPSIDED_PERCENT = 6;
const EVEN_PERCENT = 2;
const WRONG_DEG = 45;

const samples = new Map<string, number[]>();
function note(name: string, value: number): void {
  samples.set(name, [...(samples.get(name) ?? []), value]);
}

async function takenViews(plant: RenderedPlant, network: Network): Promise<TakenView[]> {
  const views: TakenView[] = [];
  for (const view of [...plant.views, plant.movedView]) {
    const photo = await readUprightPhoto(new Uint8Array(readFileSync(await shotFile(view))));
    const { report, canopy } = await measurePhoto(photo, {
      ...NOTHING_KNOWN,
      network,
      stand: null,
      photoName: plant.name,
      rimMm: plant.rimMm,
      turnDeg: null,
    });
    views.push({ report, canopy, focalLengthPx: null, cameraDistanceMm: null });
  }
  return views;
}

type Lens = 'focal length known' | 'nothing known';

function joined(
  plant: RenderedPlant,
  views: readonly TakenView[],
  turns: readonly number[],
  lens: Lens,
): TurnedReport {
  const taken = views.map((view, k) => ({
    ...view,
    focalLengthPx: lens === 'nothing known' ? null : plant.focalLengthPx,
    report: { ...view.report, turnDeg: turns[k] ?? null },
  }));
  return joinViews(taken, { cameraHeightMm: null, light: null });
}

function figuresOf(plant: RenderedPlant, all: readonly TakenView[], lens: Lens): void {
  const { ball, supports } = builtTruth(plant.views[0] as RenderedPlant['movedView']);
  const offPercent = (100 * Math.hypot(ball.centreMm[0], ball.centreMm[1])) / ball.radiusMm;
  const moved = all.at(-1) as TakenView;
  for (const [count, places] of Object.entries(SITTINGS)) {
    const name = (what: string) => `${lens}, ${count} views: ${what}`;
    const views = places.map((k) => all[k] as TakenView);
    const turns = places.map((k) => plant.turnsDeg[k] as number);
    const { plan, faults } = joined(plant, views, turns, lens);
    const lean = plan.lopsidedness;
    if (lean !== null && offPercent >= LOPSIDED_PERCENT)
      note(name('direction off, °'), Math.abs(turnBetween(azimuthOf(ball.centreMm), lean.azimuthDeg)));
    if (lean !== null && offPercent <= EVEN_PERCENT) note(name('even called even, share'), lean.even ? 1 : 0);
    const misses = plan.reach.map(
      ({ azimuthDeg, mm }) => (100 * ((mm ?? Number.NaN) - supports(azimuthDeg))) / ball.radiusMm,
    );
    const squares = misses.reduce((sum, miss) => sum + miss * miss, 0);
    note(name('reach off, % of the ball’s radius (rms)'), Math.sqrt(squares / misses.length));
    note(name('no false fault, share'), faults.length === 0 ? 1 : 0);
    if (places.length < 4) continue;
    const one = turns.with(1, (turns[1] as number) + WRONG_DEG);
    const swapped = turns.with(1, turns[2] as number).with(2, turns[1] as number);
    const named = (report: TurnedReport, kind: string, view: number) =>
      report.faults.some((fault) => fault.kind === kind && fault.view === view) ? 1 : 0;
    note(name('turn 45° wrong named, share'), named(joined(plant, views, one, lens), 'turn-wrong', 1));
    note(name('swapped views named, share'), named(joined(plant, views, swapped, lens), 'views-swapped', 1));
    note(
      name('pot moved by 15 mm named, share'),
      named(joined(plant, views.with(2, moved), turns, lens), 'pot-moved', 2),
    );
  }
}

const network = await openNetwork(readFileSync('core/canopy/model/first-guess.onnx'));
for (const plant of renderedPlants(SIZE, Number(process.argv[3] ?? 0), Number(process.argv[2] ?? 7))) {
  const views = await takenViews(plant, network);
  for (const lens of ['focal length known', 'nothing known'] as const) figuresOf(plant, views, lens);
  process.stderr.write(`${plant.name}\n`);
}
for (const [name, values] of samples) {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  console.log(
    `${name.padEnd(74)} n ${String(values.length).padStart(3)}  mean ${mean.toFixed(2)}  median ${quantile(values, 0.5).toFixed(2)}  90 % ${quantile(values, 0.9).toFixed(2)}`,
  );
}
