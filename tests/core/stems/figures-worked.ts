import { afterCuts, type BareScores, bareScores } from '../../../core/cut/after-cuts.ts';
import type { Cut } from '../../../core/cut/cut.ts';
import { cutList } from '../../../core/cut/cut-list.ts';
import { cutsInView } from '../../../core/cut/cuts-in-view.ts';
import { matchStems, type StemsOfSitting } from '../../../core/stems/match-stems.ts';
import { degOf, radOf } from '../../../core/turned/circular-statistics.ts';
import { seenAt, type ViewSight } from '../../../core/turned/sight-lines.ts';
import { ballsOfViews } from '../../../core/turned/sphere-of-views.ts';
import { type SceneView, type TurnedScene, turnedScene } from '../../../core/turned/turned-scene.ts';
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
/** An hour of the clock, as seen from the ball's middle. */
const HOUR_DEG = 30;
/** The eye sees a tip stand out by so much. */
const STANDS_OUT_MM = 15;
/** The hand takes a tip within this of the one named, or of its mark on a photo. */
const WITHIN_MM = 60;

type Score = keyof BareScores;

/** A view's scores before, as foretold, and after the work. */
interface WorkedView {
  readonly before: BareScores;
  readonly foretold: BareScores;
  readonly worked: BareScores;
}

interface WorkedPlant {
  readonly cuts: number;
  readonly views: readonly WorkedView[];
}

/**
 * Leafy plants with one to five known long stems: the whole cut list from four views, evened up, is carried out on the plant, and the same four views are
 * rendered anew. Roundness of a plant is the mean of its four views'.
 */
export function workedFigures(plants: number, first: number): string[] {
  const all: WorkedPlant[] = [];
  for (let seed = first; all.length < plants; seed++) {
    // The same plants as in the leafy figures, whose every third is even.
    const one = seed % 3 === 0 ? null : workedPlant(seed);
    if (one === null) continue;
    all.push(one);
    const [before, foretold, worked] = (['before', 'foretold', 'worked'] as const).map((when) =>
      meanOf(one, when, 'roundness').toFixed(1),
    );
    process.stderr.write(
      `worked ${seed}: ${one.cuts} cuts, ${before} → foretold ${foretold}, came out ${worked}\n`,
    );
  }
  const misses = all.map((one) => meanOf(one, 'foretold', 'roundness') - meanOf(one, 'worked', 'roundness'));
  const within = misses.filter((miss) => Math.abs(miss) <= TWO_POINTS).length;
  const rose = all.map((one) => meanOf(one, 'worked', 'roundness') - meanOf(one, 'before', 'roundness'));
  return [
    `cut list worked, 4 views, exact masks, mean roundness of the views: foretold within ${TWO_POINTS} points in ${within} of ${all.length} plants (${((100 * within) / all.length).toFixed(0)} %); it rose by median ${quantile(rose, 0.5)}, in ${rose.filter((rise) => rise > 0).length} of ${all.length}`,
    ...(['roundness', 'symmetry'] as const).map((score) =>
      missLine(
        `  mean ${score}`,
        all.map((one) => meanOf(one, 'foretold', score) - meanOf(one, 'worked', score)),
      ),
    ),
    ...(['roundness', 'symmetry', 'lopsidedness'] as const).map((score) =>
      missLine(
        `  ${score} of one view`,
        all.flatMap(({ views }) =>
          views.map(({ foretold, worked }) => known(foretold, score) - known(worked, score)),
        ),
      ),
    ),
  ];
}

function missLine(name: string, misses: readonly number[]): string {
  const size = misses.map(Math.abs);
  return `${name}, foretold less worked: middle ${quantile(misses, 0.5)}, off by median ${quantile(size, 0.5)}, 80th ${quantile(size, 0.8)}, 95th ${quantile(size, 0.95)}`;
}

function meanOf({ views }: WorkedPlant, when: keyof WorkedView, score: Score): number {
  return views.reduce((sum, view) => sum + known(view[when], score), 0) / views.length;
}

function known(scores: BareScores, score: Score): number {
  const value = scores[score];
  if (value === null) throw new Error(`A rendered plant has no ${score}.`);
  return value;
}

function workedPlant(seed: number): WorkedPlant | null {
  const plant = stemPlant({ seed, longStems: 1 + (seed % 5), bare: false });
  const shots = renderedSitting(plant, EIGHTHS).slice(0, FOUR.length);
  const [shot] = shots;
  if (shot === undefined) return null;
  const measured = shots.map(measuredRender);
  const scene = turnedScene(
    measured.map(({ view }) => view),
    cameraOf(shot),
  );
  const start = { centre: [0, 0, scene.usualRadius] as const, radius: scene.usualRadius };
  const present = ballsOfViews(scene.views, start)?.free;
  const found = matchStems(scene);
  if (present === undefined || found.stems.length === 0) return null;
  const ofList = { centreMm: present.centre, radiusMm: present.radius };
  const cuts = cutList({ from: 'turned', stems: found.stems, present: ofList, ball: null });
  const done = carriedOut(cuts, shot.truth.stems, scene, found, present.centre);
  const again = renderedSitting(plant, FOUR, done).map(measuredRender);
  return {
    cuts: cuts.length,
    views: measured.map((view, place) => {
      const before = bareScores(view.silhouette, view.rim);
      const { silhouette, rim } = again[place] as MeasuredRender;
      return {
        before,
        foretold: foretold(before, view, scene.views[place] as SceneView, cuts, present.centre),
        worked: bareScores(silhouette, rim),
      };
    }),
  };
}

function foretold(
  before: BareScores,
  { silhouette, rim }: MeasuredRender,
  scene: SceneView,
  cuts: readonly Cut[],
  centreMm: PlantPoint,
): BareScores {
  const placed = cuts.flatMap(({ id, tipMm, cutMm }) =>
    tipMm === null || cutMm === null ? [] : [{ id, tipMm, cutMm }],
  );
  const chosen = new Set(placed.map(({ id }) => id));
  const { change } = afterCuts({ silhouette, rim }, cutsInView(scene, placed, centreMm), chosen);
  const after = (score: Score) => known(before, score) + known(change, score);
  return {
    roundness: after('roundness'),
    symmetry: after('symmetry'),
    lopsidedness: after('lopsidedness'),
  };
}

/**
 * Which shoots the hand shortens. At each cut it looks for a shoot that stands out: within an hour of the one named, or where a photo that shows the tip has its mark; where there is
 * none, the nearest tip. A stem is cut once: a second cut at it finds the next one, or nothing when no other tip is near.
 */
function carriedOut(
  cuts: readonly Cut[],
  shoots: PlantTruth['stems'],
  { views }: TurnedScene,
  { stems }: StemsOfSitting,
  centreMm: PlantPoint,
): CarriedOut[] {
  const pairs = cuts
    .flatMap(({ tipMm, takeOffMm }, cut) => {
      if (tipMm === null || takeOffMm === null) return [];
      const seenIn = stems.find((stem) => stem.tipMm === tipMm)?.seenIn ?? [];
      const sights = views.filter(({ index }) => seenIn.includes(index)).map(({ sight }) => sight);
      return shoots.map((shoot) => {
        const tip = placeOf(shoot);
        const aside = Math.min(...sights.map((sight) => seenApartMm(sight, tipMm, tip)));
        const near = angleDeg(tipMm, tip, centreMm) <= HOUR_DEG || aside <= WITHIN_MM;
        const standsOut = shoot.excessMm >= STANDS_OUT_MM && near;
        return { cut, shoot: shoot.shoot, takeOffMm, standsOut, apart: apartMm(tipMm, tip) };
      });
    })
    .filter(({ standsOut, apart }) => standsOut || apart <= WITHIN_MM)
    .sort((a, b) => Number(b.standsOut) - Number(a.standsOut) || a.apart - b.apart);
  const done = new Map<number, CarriedOut>();
  const shortened = new Set<number>();
  for (const { cut, shoot, takeOffMm } of pairs) {
    if (done.has(cut) || shortened.has(shoot)) continue;
    done.set(cut, { shoot, shortenMm: Math.round(takeOffMm) });
    shortened.add(shoot);
  }
  return [...done.values()];
}

function placeOf({ tipMm: [x, y, z], azimuthDeg }: PlantTruth['stems'][number]): PlantPoint {
  const out = Math.hypot(x, y);
  return [out * Math.cos(radOf(azimuthDeg)), out * Math.sin(radOf(azimuthDeg)), z];
}

/** How far apart two places show in a view, at the plane of the axis. */
function seenApartMm(sight: ViewSight, one: PlantPoint, other: PlantPoint): number {
  const [a, b] = [seenAt(sight, one), seenAt(sight, other)];
  return Math.hypot(a.x - b.x, a.y - b.y);
}

/** Between two places as seen from a third. */
function angleDeg(one: PlantPoint, other: PlantPoint, from: PlantPoint): number {
  const outwards = (place: PlantPoint) => place.map((at, k) => at - (from[k] as number));
  const [a, b] = [outwards(one), outwards(other)];
  const dot = a.reduce((sum, at, k) => sum + at * (b[k] as number), 0);
  return degOf(Math.acos(Math.max(-1, Math.min(1, dot / (Math.hypot(...a) * Math.hypot(...b))))));
}

function apartMm(one: PlantPoint, other: PlantPoint): number {
  return Math.hypot(...one.map((at, k) => at - (other[k] as number)));
}
