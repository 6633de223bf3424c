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

const leafShare = z.object({
  share: z.number().min(0).max(1),
  plusMinus: z.number().nonnegative(),
  offBy: z.number().nonnegative(),
});

/** Shares of the leaf by colour, and where yellow leaf stands. */
const foliageSchema = z.object({
  green: leafShare,
  yellow: leafShare,
  brown: leafShare,
  /** Why its shares are compared with no other photo's; `null` when they may be. */
  notCompared: z.string().nullable(),
  /** What counts as green: the plant's own first sittings, or what is usual. */
  against: z.enum(['own', 'usual']),
  where: z
    .array(
      z.object({
        place: z.string(),
        centrePx: pointPx,
        areaShare: z.number().min(0).max(1),
        outlinePx: z.array(pointPx).readonly(),
      }),
    )
    .readonly(),
  /** Middle colour of the leaf, CIE L*a*b* under D65, balanced. */
  leafColour: z.object({ l: z.number(), a: z.number(), b: z.number() }),
  /** CIEDE2000 between it and the plant's normal leaf; `null` without one. */
  departure: z.number().nonnegative().nullable(),
});

/** Share in flower, and the areas that hang together, by which heads are counted. */
const flowerSchema = z.object({
  share: z.number().min(0).max(1),
  plusMinus: z.number().nonnegative(),
  patchesMm2: z.array(z.number().positive()).readonly().nullable(),
});

/** Where light falls through the canopy. */
const gapsSchema = z.object({
  sectors: z
    .array(
      z.object({
        clock: z.int().min(1).max(12),
        gapFraction: z.number().min(0).max(1),
        plusMinus: z.number().nonnegative(),
        isThin: z.boolean(),
      }),
    )
    .readonly(),
  openBase: z.number().min(0).max(1),
  openBasePlusMinus: z.number().nonnegative(),
  tightness: z.number().min(0).max(1),
  tightnessPlusMinus: z.number().nonnegative(),
});

/** How high and wide the canopy stands over its rim. */
const statureSchema = z.object({
  heightPx: z.number().positive(),
  spreadPx: z.number().nonnegative(),
  middlePx: z.number().positive(),
  areaPx: z.number().positive(),
  reachPx: z.array(z.number().nonnegative()).readonly(),
  heightMm: z.number().positive().nullable(),
  spreadMm: z.number().nonnegative().nullable(),
  middleMm: z.number().positive().nullable(),
  areaMm2: z.number().positive().nullable(),
  reachMm: z.array(z.number().nonnegative()).readonly().nullable(),
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
  /** Green, yellow and brown leaf; `null` when it cannot be told, then `notes` says why. */
  foliage: foliageSchema.nullable(),
  /** Share in flower with its plus-minus; `null` when not measured. */
  flower: flowerSchema.nullable(),
  /** Gaps by hour of the clock, the open base and tightness; `null` without a ball. */
  gaps: gapsSchema.nullable(),
  /** Stature above the rim, by which a limp plant is told; `null` without a pot. */
  stature: statureSchema.nullable(),
  confidence: z.number().min(0).max(1).nullable(),
  unsure: z.array(unsureSchema).readonly(),
  /** `null` when the stand has no reference picture, or none could be fitted; then `notes` says why. */
  frame: frameSchema.nullable(),
  /** Why its scores are compared with no other photo's and enter no trend; `null` when they may be. */
  notCompared: z.string().nullable(),
  maskFile: z.string().nullable(),
  notes: z.array(z.string()).readonly(),
}) satisfies z.ZodType<PhotoReport>;
