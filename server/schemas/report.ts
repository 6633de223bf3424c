import { z } from 'zod';
import { PHOTO_STATUSES, type PhotoReport } from '../../core/report.ts';

export const pointPx = z.tuple([z.number(), z.number()]).readonly();
const score = z.object({ score: z.number().min(0).max(100), plusMinus: z.number().nonnegative() });

export const longStemSchema = z.object({
  tipPx: pointPx,
  cutPx: pointPx,
  excessPx: z.number(),
  excessMm: z.number().nullable(),
  clock: z.int().min(1).max(12),
  kind: z.enum(['shoot', 'shoulder']),
});

/** A zone that may lie on the other side of the outline. */
export const unsureSchema = z.object({
  outlinePx: z.array(pointPx).readonly(),
  inCanopy: z.boolean(),
  chance: z.number().min(0).max(1),
  areaPx: z.number().nonnegative(),
});

/** How the photo was brought in line with the stand's reference picture. */
export const frameSchema = z.object({
  from: z.enum(['marks', 'features']),
  shiftPx: pointPx,
  shiftMm: pointPx.nullable(),
  turnDeg: z.number(),
  zoom: z.number().positive(),
  /** `far`: past the limit; its scores are not compared. */
  standing: z.enum(['same', 'moved', 'far']),
  words: z.string(),
});

/** The report of one photo as core makes it; `satisfies` keeps the two from drifting apart. */
export const reportSchema = z.object({
  photo: z.string(),
  widthPx: z.int().nullable(),
  heightPx: z.int().nullable(),
  turnDeg: z.number().nullable(),
  collar: z
    .object({
      turnDeg: z.number().min(0).max(360),
      plusMinusDeg: z.number().nonnegative(),
      marks: z.int().nonnegative(),
    })
    .nullable(),
  status: z.enum(PHOTO_STATUSES),
  hint: z.string().nullable(),
  scale: z.object({ mmPerPx: z.number().positive(), from: z.enum(['rim', 'sheet']) }).nullable(),
  axis: z
    .object({
      xPx: z.number(),
      rimLeftPx: pointPx,
      rimRightPx: pointPx,
      rimEllipse: z
        .object({ centrePx: pointPx, halfWidthPx: z.number(), halfHeightPx: z.number() })
        .nullable(),
    })
    .nullable(),
  canopy: z
    .object({
      areaPx: z.number(),
      widthPx: z.number(),
      heightPx: z.number(),
      widthMm: z.number().nullable(),
      heightMm: z.number().nullable(),
      solidity: z.number(),
      gapFraction: z.number(),
      flowerShare: z.number().min(0).max(1).nullable(),
    })
    .nullable(),
  ball: z
    .object({
      centrePx: pointPx,
      radiusPx: z.number(),
      radiusMm: z.number().nullable(),
      radiusPlusMinusPx: z.number().nonnegative(),
      radiusPlusMinusMm: z.number().nonnegative().nullable(),
      outOfRoundPx: z.number(),
      outOfRoundMm: z.number().nullable(),
      openArcDeg: z.number(),
    })
    .nullable(),
  roundness: score.nullable(),
  symmetry: score.nullable(),
  lopsidedness: z
    .object({
      percent: z.number(),
      plusMinus: z.number().nonnegative(),
      side: z.enum(['left', 'right', 'even']),
    })
    .nullable(),
  extras: z
    .object({
      circularityCrofton: z.number().positive(),
      areaRoundness: z.number().positive(),
      circumscribedRadiusPx: z.number().positive(),
      circumscribedRadiusMm: z.number().positive().nullable(),
      inscribedRadiusPx: z.number().positive(),
      inscribedRadiusMm: z.number().positive().nullable(),
      bestAxisTiltDeg: z.number().nullable(),
      bestAxisSymmetry: z.number().min(0).max(100).nullable(),
      deviations: z
        .object({
          peakToValleyPx: z.number().nonnegative(),
          peakPx: z.number(),
          valleyPx: z.number(),
          rootMeanSquarePx: z.number().nonnegative(),
        })
        .nullable(),
    })
    .nullable(),
  longStems: z.array(longStemSchema).readonly(),
  confidence: z.number().min(0).max(1).nullable(),
  unsure: z.array(unsureSchema).readonly(),
  /** `null` when the stand has no reference picture, or none could be fitted; then `notes` says why. */
  frame: frameSchema.nullable(),
  /** Why its scores are compared with no other photo's and enter no trend; `null` when they may be. */
  notCompared: z.string().nullable(),
  maskFile: z.string().nullable(),
  notes: z.array(z.string()).readonly(),
}) satisfies z.ZodType<PhotoReport>;
