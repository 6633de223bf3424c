import type { PointPx } from '../raster/raster.ts';
import { type BandExtent, bandExtents } from './band-extents.ts';
import { radOf, turnBetween } from './circular-statistics.ts';
import { outlineMisses } from './outline-coherence.ts';
import { reachLikelihood, sidewaysGain } from './reach-likelihood.ts';
import type { ViewSight } from './sight-lines.ts';
import type { SilhouetteField } from './silhouette-field.ts';
import { movedViews, type Supposition, takingUnder, turnSuppositions } from './supposition.ts';
import type { TurnedView } from './turned-view.ts';

/** A view ready to be compared with the others. */
export interface ComparedView {
  readonly view: TurnedView & { readonly turnDeg: number };
  readonly sight: ViewSight;
  readonly field: SilhouetteField;
  /** Places on its outline; see `outlinePlaces`. */
  readonly outline: readonly PointPx[];
}

/** What the outlines say about how they were taken. */
export interface OutlineVerdict {
  /** What went wrong, if anything did. */
  readonly fault: Supposition | null;
  /** Other explanations that are nearly as good. */
  readonly orElse: readonly Supposition[];
  /** Without a fault: those swaps and turns an eighth or more off that the outlines would not give away, because the plant looks much the same so. */
  readonly hidden: readonly Supposition[];
  /** How much better the fault explains the outlines than no fault does, in natural logarithms; 0 without a fault. */
  readonly strength: number;
  /** Whether the outlines still disagree once the fault is put right. */
  readonly stillOff: boolean;
}

/**
 * The judge's rule, all in one place. Chosen on simulated leafy plants whose cut-outs were spoilt by leaf-sized bits and whose axis was misread by
 * 1.3 mm; how it does on others is printed by the figures program among the tests.
 */
const JUDGE = {
  /** Share of the bands' evidence that counts: neighbouring bands say much the same. */
  reachWeight: 0.3,
  /** One standard deviation of a miss, and the most that one may count, % of the ball's radius. */
  missPercent: 0.7,
  mostPercent: 6,
  /**
   * A fault must explain the outlines better than none by so much, and than other faults by so much to stand alone. Many views say everything more than
   * once, chance agreements too, and true faults stand far above either figure.
   */
  leastStrength: { fewViews: 14, manyViews: 30 },
  leastLead: 3,
  /** Turn suppositions that the bands find likeliest go on to the slower comparison. */
  goOn: 12,
  /** Moves tried about the likeliest one (which six and more views fix well), and the least move spoken of, % of the ball's radius. */
  moves: { fewViews: [-4, 0, 4], manyViews: [0] },
  leastMove: 5,
} as const;
const MANY_VIEWS = 6;
const LEAST_PLAIN_DEG = 45;
/** Fewer views than this cannot tell which of them is wrong. */
export const LEAST_VIEWS_TO_JUDGE = 3;

/**
 * Looks for one fault in how the views were taken, from their outlines alone.
 *
 * @param views at least three, in the order taken, their turns as told
 * @param ballRadius plan's unit
 *
 * How: each supposition (a view at another turn, two views swapped, the pot moved sideways) is weighed against none by two voices. The bands: would a
 * bushy plant show such extents? The outlines: does every sight line along one outline meet plant in all other views? The sum of both is the strength.
 *
 * Notes: a turn of the whole series, a move towards the camera and a plant as round as a ball leave no trace in the outlines. Only one fault at a time
 * is named; `stillOff` tells of more.
 */
export function findFault(views: readonly ComparedView[], ballRadius: number): OutlineVerdict {
  const turnsDeg = views.map(({ view }) => view.turnDeg);
  const extents = bandExtents(
    views.map(({ view }) => view),
    views.map(({ sight }) => ballRadius / sight.unitPerPx),
  );
  const scene: Scene = { views, ballRadius, extents, leanRad: leanOf(views, ballRadius) };
  const least = views.length < MANY_VIEWS ? JUDGE.leastStrength.fewViews : JUDGE.leastStrength.manyViews;
  const ranked = rankSuppositions(scene, turnsDeg);
  const best = ranked[0];
  if (best === undefined || best.strength < least) {
    const hidden = ranked
      // What explains the outlines no worse than this would not have been named had it happened.
      .filter(({ supposed, strength }) => strength > -least && isPlainMistake(supposed, turnsDeg))
      .map(({ supposed }) => supposed);
    return { fault: null, orElse: [], hidden, strength: 0, stillOff: false };
  }
  const rivals = ranked.filter(
    ({ supposed, strength }) =>
      strength > Math.max(least, best.strength - JUDGE.leastLead) && !sameFault(supposed, best.supposed),
  );
  const orElse = rivals
    .map(({ supposed }) => supposed)
    .filter((one, k, all) => all.findIndex((other) => sameFault(one, other)) === k);
  const mended = takingUnder(turnsDeg, best.supposed).turnsDeg;
  const stillOff =
    best.supposed.kind !== 'pot-moved' && (rankSuppositions(scene, mended)[0]?.strength ?? 0) >= least;
  return { fault: best.supposed, orElse, hidden: [], strength: best.strength, stillOff };
}

/** A mistake that a hand makes: two views in each other's place, or an eighth turn and more missed. */
function isPlainMistake(supposed: Supposition, turnsDeg: readonly number[]): boolean {
  if (supposed.kind !== 'turn-wrong') return supposed.kind === 'views-swapped';
  return Math.abs(turnBetween(turnsDeg[supposed.view] as number, supposed.turnDeg)) >= LEAST_PLAIN_DEG;
}

interface Scene {
  readonly views: readonly ComparedView[];
  readonly ballRadius: number;
  readonly extents: readonly (readonly (BandExtent | null)[])[];
  readonly leanRad: number;
}

interface Weighed {
  readonly supposed: Supposition;
  readonly strength: number;
}

/** All suppositions that are worth a look, the strongest first. */
function rankSuppositions(scene: Scene, turnsDeg: readonly number[]): Weighed[] {
  const { extents, leanRad } = scene;
  const asTold = reachLikelihood(extents, turnsDeg, leanRad);
  if (asTold === null) return [];
  const turned = turnSuppositions(turnsDeg)
    .map((supposed): Weighed => {
      const likelihood = reachLikelihood(extents, takingUnder(turnsDeg, supposed).turnsDeg, leanRad);
      const gain =
        likelihood === null ? Number.NEGATIVE_INFINITY : likelihood.logLikelihood - asTold.logLikelihood;
      return { supposed, strength: gain };
    })
    .sort((a, b) => b.strength - a.strength)
    .slice(0, JUDGE.goOn);
  const moved = moveSuppositions(turnsDeg.length).flatMap(({ view, fromHereOn }) => {
    const { likeliest, gainAt } = sidewaysGain(asTold, movedViews(turnsDeg.length, { view, fromHereOn }));
    const offs = turnsDeg.length < MANY_VIEWS ? JUDGE.moves.fewViews : JUDGE.moves.manyViews;
    return offs
      .map((off) => likeliest + off)
      .filter((aside) => Math.abs(aside) >= JUDGE.leastMove)
      .map(
        (aside): Weighed => ({
          supposed: { kind: 'pot-moved', view, fromHereOn, asidePercent: aside },
          strength: gainAt(aside),
        }),
      );
  });
  const none = missScore(scene, turnsDeg, null);
  return [...turned, ...moved]
    .map(({ supposed, strength }) => ({
      supposed,
      strength: JUDGE.reachWeight * strength + none - missScore(scene, turnsDeg, supposed),
    }))
    .sort((a, b) => b.strength - a.strength);
}

/** The pot moved for one view, or from one view on. From the second on is the first alone, moved the other way. */
function moveSuppositions(count: number): { view: number; fromHereOn: boolean }[] {
  const views = Array.from({ length: count }, (_, view) => view);
  return [
    ...views.map((view) => ({ view, fromHereOn: false })),
    ...views.slice(2, -1).map((view) => ({ view, fromHereOn: true })),
  ];
}

/** How badly the outlines miss each other under a supposition: half the sum of squared misses, in standard deviations. */
function missScore(
  { views, ballRadius }: Scene,
  turnsDeg: readonly number[],
  supposed: Supposition | null,
): number {
  const taking = takingUnder(turnsDeg, supposed);
  const misses = outlineMisses(
    views.map(({ sight, field, outline }, k) => {
      const turnRad = radOf(taking.turnsDeg[k] as number);
      const turned = { ...sight, turnRad, cos: Math.cos(turnRad), sin: Math.sin(turnRad) };
      return {
        field,
        outline,
        sight: turned,
        aside: ((taking.asidePercent[k] as number) * ballRadius) / 100,
      };
    }),
    1.4 * ballRadius,
  );
  let score = 0;
  for (const miss of misses.flat()) {
    score += 0.5 * (Math.min((100 * miss) / ballRadius, JUDGE.mostPercent) / JUDGE.missPercent) ** 2;
  }
  return score;
}

/** Two suppositions that a grower would call the same: one kind, one view. */
function sameFault(one: Supposition, other: Supposition): boolean {
  if (one.kind !== other.kind || one.view !== other.view) return false;
  if (one.kind === 'views-swapped') return other.kind === one.kind && one.other === other.other;
  return true;
}

function leanOf(views: readonly ComparedView[], ballRadius: number): number {
  const camera = views[0]?.sight.camera ?? null;
  return camera === null ? 0 : Math.asin(Math.min(1, ballRadius / camera.distanceMm));
}
