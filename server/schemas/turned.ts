import { z } from 'zod';
import { SURENESSES } from '../../core/advice/advice.ts';
import type { TurnedReport } from '../../core/turned/measure-turned.ts';
import { PLAN_UNITS } from '../../core/turned/turned-view.ts';

const planPoint = z.tuple([z.number(), z.number()]).readonly();
export const plantPoint = z.tuple([z.number(), z.number(), z.number()]).readonly();

/** Canopy half-width towards an azimuth. */
export const planReachSchema = z.object({
  azimuthDeg: z.number(),
  mm: z.number().nullable(),
  plusMinusMm: z.number().nullable(),
  /** % of the ball's radius, known without a scale. */
  percent: z.number(),
  plusMinusPercent: z.number(),
  /** Whether a silhouette ends there; else interpolated. */
  measured: z.boolean(),
});

export const lopsidednessVectorSchema = z.object({
  percent: z.number().nonnegative(),
  /** The heavy side. */
  azimuthDeg: z.number(),
  plusMinus: z.number().nonnegative(),
  plusMinusDeg: z.number().nonnegative(),
  even: z.boolean(),
  /** The views' offsets less what the vector says, %, in their order. */
  residuals: z.array(z.number()).readonly(),
  disagreement: z.number().nonnegative(),
});

export const hullReportSchema = z.object({
  volumeMl: z.number().nullable(),
  bias: z.number().positive(),
  correctedVolumeMl: z.number().nullable(),
  sphericity: z.number().positive(),
  sphericityOfABall: z.number().positive(),
  radiusMm: z.number().nullable(),
  /** u towards azimuth 0, v towards azimuth 90, h up from the rim plane. */
  centreMm: plantPoint.nullable(),
  onAxisRadiusMm: z.number().nullable(),
  outOfRoundMm: z.number().nullable(),
  outOfRoundPercent: z.number().nullable(),
});

export const turnToLightSchema = z.object({
  toLightAzimuthDeg: z.number(),
  /** Anticlockwise seen from above; `null` when the light's side is not known. */
  turnByDeg: z.number().nullable(),
  words: z.string(),
  why: z.string(),
  sure: z.enum(SURENESSES),
});

/** Something wrong with how the views were taken; views by their place in `turnedViewIds`, from 0. */
export const turnedFaultSchema = z.object({
  kind: z.enum(['turn-wrong', 'views-swapped', 'pot-moved']),
  view: z.int().nonnegative(),
  otherView: z.int().nonnegative().nullable(),
  fitsTurnDeg: z.number().nullable(),
  asideMm: z.number().nullable(),
  from: z.enum(['outlines', 'rim', 'collar']),
  words: z.string(),
});

/** What a turned sitting says; `satisfies` keeps it and core's own from drifting apart. */
export const turnedReportSchema = z.object({
  plan: z.object({
    directions: z.int().nonnegative(),
    reach: z.array(planReachSchema).readonly(),
    /** Corners towards azimuth 0 and 90. */
    outlineMm: z.array(planPoint).readonly().nullable(),
    lopsidedness: lopsidednessVectorSchema.nullable(),
    hull: hullReportSchema.nullable(),
  }),
  turn: turnToLightSchema.nullable(),
  faults: z.array(turnedFaultSchema).readonly(),
  notes: z.array(z.string()).readonly(),
}) satisfies z.ZodType<TurnedReport>;

/**
 * How far the joining of a sitting's views has come. `waiting`: a view is still to be measured, or the joining is to
 * begin; `failed`: a fault of ours.
 */
export const turnedStateSchema = z.enum(['one-view', 'waiting', 'measuring', 'ready', 'failed']);

/** The hull as a solid: corners u, v, h one after another, and three corner numbers a triangle, outside anticlockwise. */
export const hullSolidSchema = z.object({
  unit: z.enum(PLAN_UNITS),
  corners: z.array(z.number()),
  triangles: z.array(z.int().nonnegative()),
  /** Height of the rim plane. */
  heightOfRim: z.literal(0),
  weakAzimuthDeg: z.number().nullable(),
  heavyAzimuthDeg: z.number().nullable(),
  rimRadius: z.number().positive().nullable(),
});
export type HullSolid = z.infer<typeof hullSolidSchema>;
