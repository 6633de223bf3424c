import { afterCuts } from '../../../core/cut/after-cuts.ts';
import type { Cut } from '../../../core/cut/cut.ts';
import { cutList } from '../../../core/cut/cut-list.ts';
import { cutsInView } from '../../../core/cut/cuts-in-view.ts';
import { roundnessOf } from '../../../core/measures/roundness.ts';
import { matchStems } from '../../../core/stems/match-stems.ts';
import { radOf } from '../../../core/turned/circular-statistics.ts';
import { ballsOfViews } from '../../../core/turned/sphere-of-views.ts';
import { type TurnedScene, turnedScene } from '../../../core/turned/turned-scene.ts';
import type { PlantPoint } from '../../../core/turned/turned-view.ts';
import type { Cut as CarriedOut } from '../../../sample-images/render/plant/plant-spec.ts';
import type { PlantTruth } from '../../../sample-images/render/render-silhouette.ts';
import { EIGHTHS } from './figures-leafy.ts';
import { renderedSitting } from './rendered-sitting.ts';
import { cameraOf, type MeasuredRender, measuredRender } from './sitting-of-plant.ts';
import { stemPlant } from './stem-plants.ts';
import { quantile } from './tally.ts';

/** The views that are measured before and after. */
const FOUR = EIGHTHS.slice(0, 4);
const TWO_POINTS = 2;
/** The hand at a cut finds a tip within this of the one that the list names. */
const WITHIN_MM = 60;
/** The eye sees a tip stand out by so much. */
const STANDS_OUT_MM = 15;

/** How a plant's mean roundness over its four views was foretold and came out. */
interface Worked {
  readonly seed: number;
  readonly cuts: number;
  readonly before: number;
  readonly foretold: number;
  readonly worked: number;
}

/**
 * Leafy plants with one to five known long stems: the whole cut list from four views, evened up, is carried out on the plant, and the same four views are
 * rendered anew. Roundness is the mean of the four views'.
 */
export function workedFigures(plants: number, first: number): string[] {
  const all: Worked[] = [];
  for (let seed = first; all.length < plants; seed++) {
    // The same plants as in the leafy figures, whose every third is even.
    if (seed % 3 === 0) continue;
    const one = workedPlant(seed);
    if (one === null) continue;
    all.push(one);
    const [before, foretold, worked] = [one.before, one.foretold, one.worked].map((value) =>
      value.toFixed(1),
    );
    process.stderr.write(
      `worked ${seed}: ${one.cuts} cuts, ${before} → foretold ${foretold}, came out ${worked}\n`,
    );
  }
  const off = all.map(({ foretold, worked }) => foretold - worked);
  const within = off.filter((miss) => Math.abs(miss) <= TWO_POINTS).length;
  const size = off.map(Math.abs);
  const rose = all.map(({ before, worked }) => worked - before);
  return [
    `cut list worked, 4 views, exact masks, mean roundness of the views: foretold within ${TWO_POINTS} points in ${within} of ${all.length} plants (${((100 * within) / all.length).toFixed(0)} %)`,
    `  foretold less worked: middle ${quantile(off, 0.5)}, off by median ${quantile(size, 0.5)}, 80th ${quantile(size, 0.8)}, 95th ${quantile(size, 0.95)}; roundness rose by median ${quantile(rose, 0.5)}, in ${rose.filter((rise) => rise > 0).length} of ${all.length}`,
  ];
}

function workedPlant(seed: number): Worked | null {
  const plant = stemPlant({ seed, longStems: 1 + (seed % 5), bare: false });
  const shots = renderedSitting(plant, EIGHTHS).slice(0, FOUR.length);
  const measured = shots.map(measuredRender);
  const [shot] = shots;
  if (shot === undefined) return null;
  const scene = turnedScene(
    measured.map(({ view }) => view),
    cameraOf(shot),
  );
  const present = ballsOfViews(scene.views, {
    centre: [0, 0, scene.usualRadius],
    radius: scene.usualRadius,
  })?.free;
  if (present === undefined) return null;
  const { stems } = matchStems(scene);
  const ofList = { centreMm: present.centre, radiusMm: present.radius };
  const cuts = cutList({ from: 'turned', stems, present: ofList, ball: null });
  if (cuts.length === 0) return null;
  const before = mean(measured.map(roundness));
  const rises = measured.map((_, k) => rise(scene, k, measured[k] as MeasuredRender, cuts, present.centre));
  const again = renderedSitting(plant, FOUR, carriedOut(cuts, shot.truth.stems)).map(measuredRender);
  return {
    seed,
    cuts: cuts.length,
    before,
    foretold: before + mean(rises),
    worked: mean(again.map(roundness)),
  };
}

function rise(
  { views }: TurnedScene,
  place: number,
  { silhouette, rim }: MeasuredRender,
  cuts: readonly Cut[],
  centreMm: PlantPoint,
): number {
  const scene = views[place];
  if (scene === undefined) throw new Error('A rendered view is missing.');
  const placed = cuts.flatMap(({ id, tipMm, cutMm }) =>
    tipMm === null || cutMm === null ? [] : [{ id, tipMm, cutMm }],
  );
  const chosen = new Set(placed.map(({ id }) => id));
  const { change } = afterCuts({ silhouette, rim }, cutsInView(scene, placed, centreMm), chosen);
  if (change.roundness === null) throw new Error('A rendered plant has no ball after its cuts.');
  return change.roundness;
}

/**
 * Which shoots the hand shortens: at each cut the shoot whose tip is nearest to the one named, those that stand out first. A stem is cut once: a second cut at it finds the next one, or
 * nothing when no other tip is near.
 */
export function carriedOut(cuts: readonly Cut[], stems: PlantTruth['stems']): CarriedOut[] {
  const pairs = cuts
    .flatMap(({ tipMm, takeOffMm }, cut) =>
      tipMm === null || takeOffMm === null
        ? []
        : stems.map((stem) => ({ cut, stem, takeOffMm, apart: apartMm(tipMm, stem) })),
    )
    .filter(({ apart }) => apart <= WITHIN_MM)
    .sort((a, b) => Number(standsOut(b.stem)) - Number(standsOut(a.stem)) || a.apart - b.apart);
  const done = new Map<number, CarriedOut>();
  const shortened = new Set<number>();
  for (const { cut, stem, takeOffMm } of pairs) {
    if (done.has(cut) || shortened.has(stem.shoot)) continue;
    done.set(cut, { shoot: stem.shoot, shortenMm: Math.round(takeOffMm) });
    shortened.add(stem.shoot);
  }
  return [...done.values()];
}

function standsOut({ excessMm }: PlantTruth['stems'][number]): boolean {
  return excessMm >= STANDS_OUT_MM;
}

function apartMm(
  [u, v, h]: PlantPoint,
  { tipMm: [x, y, z], azimuthDeg }: PlantTruth['stems'][number],
): number {
  const out = Math.hypot(x, y);
  return Math.hypot(u - out * Math.cos(radOf(azimuthDeg)), v - out * Math.sin(radOf(azimuthDeg)), h - z);
}

function roundness({ ball }: MeasuredRender): number {
  const found = roundnessOf(ball.form);
  if (found === null) throw new Error('A rendered plant has no roundness.');
  return found.score;
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
