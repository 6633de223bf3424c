import { driftFault, outlineFault, type TurnedFault } from './fault-words.ts';
import { findFault, LEAST_VIEWS_TO_JUDGE } from './find-faults.ts';
import { distinctDirections, type LopsidednessVector } from './lopsidedness-vector.ts';
import { type HullReport, measureHull } from './measure-hull.ts';
import { placeAxis } from './place-axis.ts';
import { type PlanPoint, planOutline } from './plan-outline.ts';
import { potDrifts } from './pot-drift.ts';
import { type Reach, reachAllRound } from './reach.ts';
import type { Supposition } from './supposition.ts';
import type { LightPlace, TurnAdvice } from './turn-advice.ts';
import { turnOfPlan } from './turn-of-plan.ts';
import { turnedNotes } from './turned-notes.ts';
import { type TurnedScene, turnedScene } from './turned-scene.ts';
import type { Camera, TurnedView } from './turned-view.ts';
import { countedAsGiven, turnsAsGiven } from './views-as-given.ts';

/** Reach at one azimuth as reported. */
export interface PlanReach {
  readonly azimuthDeg: number;
  /** `null` without a scale. */
  readonly mm: number | null;
  readonly plusMinusMm: number | null;
  /** % of the ball's radius, known without a scale. */
  readonly percent: number;
  readonly plusMinusPercent: number;
  /** Whether a silhouette ends there; else interpolated. */
  readonly measured: boolean;
}

/** What a turned sitting says. What cannot be known is `null` (or an empty list), with its reason in `notes`. */
export interface TurnedReport {
  readonly plan: {
    /** How many directions the views show; opposite views count once. */
    readonly directions: number;
    readonly reach: readonly PlanReach[];
    /** The plan's outer bound, mm: corners towards azimuth 0 and 90. */
    readonly outlineMm: readonly PlanPoint[] | null;
    readonly lopsidedness: LopsidednessVector | null;
    readonly hull: HullReport | null;
  };
  readonly turn: TurnAdvice | null;
  readonly faults: readonly TurnedFault[];
  readonly notes: readonly string[];
}

export interface TurnedOptions {
  /** `null`: far away and level with the rim. */
  readonly camera: Camera | null;
  /** `null` when the light's side is not set. */
  readonly light: LightPlace | null;
  /** Whether all views were taken from one fixed place, so that a rim that stands elsewhere is a moved pot. */
  readonly fixedCamera: boolean;
}

/** Azimuths of the reach as reported, degrees apart. */
const REACH_STEP_DEG = 5;
const NORMAL_95 = 1.96;

/**
 * Measures a turned sitting.
 *
 * @param views masks with their place, in the order taken; any number; `null` for one that was not measured
 * @param options camera, light, and whether the camera stood still
 * @returns plan, turn advice, faults and notes; numbers rest on the turns as told, also where a fault is named
 *
 * Example: four views at 0, 45, 90, 135 of a ball on its axis give even reach, no lopsidedness and a hull of 1.055 times its volume.
 */
export function measureTurned(views: readonly (TurnedView | null)[], options: TurnedOptions): TurnedReport {
  const { lopsided, views: placed } = placeAxis(views);
  const scene = turnedScene(placed, options.camera);
  const directions = distinctDirections(scene.views.map(({ view }) => view.turnDeg));
  const hull = directions < 2 ? null : measureHull(scene);
  const ballRadius = hull?.radiusMm ?? scene.usualRadius;
  const reach = directions < 2 ? [] : reachOfScene(scene, ballRadius);
  const lopsidedness = lopsided.ok ? lopsided.vector : null;
  const verdict = directions < LEAST_VIEWS_TO_JUDGE ? null : findFault(scene.views, ballRadius);
  const lines = scene.views.flatMap(({ supports }) => supports);
  const drifts = options.fixedCamera ? potDrifts(views) : [];
  const plan = {
    directions,
    reach: reach.map((one) => planReach(one, scene, ballRadius)),
    outlineMm: scene.unit === 'mm' && directions >= 2 ? planOutline(lines) : null,
    lopsidedness,
    hull,
  };
  return {
    plan,
    turn: turnOfPlan(plan, options.light),
    faults: [...(drifts ?? []).map(driftFault), ...outlineFaults(verdict, scene, ballRadius)],
    notes: turnedNotes({
      scene,
      directions,
      lopsided,
      hull,
      verdict,
      camera: options.camera,
      cameraMoved: drifts === null,
    }),
  };
}

function reachOfScene(scene: TurnedScene, ballRadius: number): Reach[] {
  const { views } = scene;
  const plusMinus = views.reduce((sum, { view }) => sum + view.lopsidednessPlusMinus, 0) / views.length;
  return reachAllRound(
    views.flatMap(({ supports }) => supports),
    {
      ballRadius,
      // A silhouette's end is as sure as its middle: both hang on the axis and the cut-out.
      endSd: ((plusMinus / NORMAL_95) * ballRadius) / 100,
      azimuthsDeg: Array.from({ length: 360 / REACH_STEP_DEG }, (_, k) => k * REACH_STEP_DEG),
    },
  );
}

function planReach(one: Reach, { unit }: TurnedScene, ballRadius: number): PlanReach {
  const percent = 100 / ballRadius;
  return {
    azimuthDeg: one.azimuthDeg,
    mm: unit === 'mm' ? one.reach : null,
    plusMinusMm: unit === 'mm' ? one.plusMinus : null,
    percent: one.reach * percent,
    plusMinusPercent: one.plusMinus * percent,
    measured: one.measured,
  };
}

/** The outlines' fault, with views counted as they were given. */
function outlineFaults(
  verdict: ReturnType<typeof findFault> | null,
  { views, unit }: TurnedScene,
  ballRadius: number,
): TurnedFault[] {
  if (verdict?.fault == null) return [];
  const asGiven = (supposed: Supposition) => countedAsGiven(supposed, views);
  const told = { turnsDeg: turnsAsGiven(views), ballRadius, unit };
  return [outlineFault(asGiven(verdict.fault), verdict.orElse.map(asGiven), told)];
}
