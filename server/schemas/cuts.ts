import { z } from 'zod';
import { SURENESSES } from '../../core/advice/advice.ts';
import type { BallToCutTo } from '../../core/cut/ball-to-cut-to.ts';
import { type Cut, STOP_DEPTHS } from '../../core/cut/cut.ts';
import { daySchema, idSchema } from './basics.ts';
import { pointPx, reportSchema } from './report.ts';
import { lopsidednessVectorSchema, plantPoint } from './turned.ts';

/** One stem to shorten, as core lists it. */
export const cutSchema = z.object({
  id: z.string(),
  azimuthDeg: z.number().nullable(),
  /** Hour with the mark at 6. */
  clockFromAbove: z.number().nullable(),
  clockInPhoto: z.number().nullable(),
  heightMm: z.number().nullable(),
  excessMm: z.number().nullable(),
  plusMinusMm: z.number().nullable(),
  takeOffMm: z.number().nullable(),
  /** % of the present ball's radius, known without a scale. */
  takeOffPercent: z.number(),
  stop: z.enum(STOP_DEPTHS),
  kind: z.enum(['shoot', 'shoulder']),
  tipPx: pointPx.nullable(),
  cutPx: pointPx.nullable(),
  tipMm: plantPoint.nullable(),
  cutMm: plantPoint.nullable(),
  aboveShootPx: pointPx.nullable(),
  why: z.string(),
  sure: z.enum(SURENESSES),
}) satisfies z.ZodType<Cut>;

export const CUT_STATES = ['open', 'done', 'skipped'] as const;

/** What the grower did or wrote of one cut. */
const cutMarkSchema = z.object({
  state: z.enum(CUT_STATES, 'A cut is "open", "done" or "skipped".'),
  /** Whether it counts in what the plant would look like after. */
  chosen: z.boolean('Say whether the cut is chosen: true or false.'),
  note: z.string('Write the note as text.').trim().max(500, 'Keep the note to 500 letters or fewer.'),
});
export type CutMark = z.infer<typeof cutMarkSchema>;

/** `PATCH /api/sittings/:id/cuts/:cutId`: only what is sent changes. */
export const cutChangeSchema = cutMarkSchema.partial();

export const ballToCutToSchema = z.object({
  way: z.enum(['even-up', 'width', 'show']),
  radiusMm: z.number().positive(),
  range: z.tuple([z.number(), z.number()]).readonly().nullable(),
  words: z.string(),
  why: z.string(),
  /** More must come off all round than a tip stop takes. */
  needsDeepStops: z.boolean(),
  dateEffectWords: z.string().nullable(),
}) satisfies z.ZodType<Omit<BallToCutTo, 'ok'>>;

const range = z.tuple([z.number(), z.number()]).readonly();

/** How the ball has grown since the last stop, and how large it will be if it is left alone. */
export const plantGrowthSchema = z.object({
  since: daySchema,
  begunBy: z.enum(['stop', 'first-sitting']),
  sittings: z.int().positive(),
  /** What counted beside the sittings. */
  restsOn: z.enum(['plant', 'variety', 'guess']),
  words: z.string(),
  why: z.string(),
  sureness: z.enum(SURENESSES),
  notes: z.array(z.string()).readonly(),
  /** Week by week, the last on the day of the show where there is one ahead; ranges 90 %. */
  forecast: z.array(
    z.object({
      day: daySchema,
      radiusMm: z.number(),
      curveRange90Mm: range,
      readingRange90Mm: range,
    }),
  ),
});
export type PlantGrowth = z.infer<typeof plantGrowthSchema>;

/** Scores of one view. */
export const scoresSchema = reportSchema.pick({ roundness: true, symmetry: true, lopsidedness: true });
export type Scores = z.infer<typeof scoresSchema>;

/** A stem to shorten as one photo shows it, px of the photo as stored upright. */
const cutInViewSchema = z.object({ viewId: idSchema, tipPx: pointPx, cutPx: pointPx });
export type CutInView = z.infer<typeof cutInViewSchema>;

/** What was done of a list, and what the newest photos within two weeks after it show. */
const workedSchema = z.object({
  /** Chosen and not skipped. */
  plannedCuts: z.int().nonnegative(),
  done: z.int().nonnegative(),
  skipped: z.int().nonnegative(),
  /** The later sitting; `null` while there is none that can be compared. */
  comparedWith: idSchema.nullable(),
  comparedDay: daySchema.nullable(),
  /** Planned cuts whose stems it still shows. */
  standing: z.array(
    z.object({
      cutId: z.string(),
      clock: z.number().nullable(),
      standsOutMm: z.number().nullable(),
      standsOutPercent: z.number(),
    }),
  ),
  words: z.string().nullable(),
});
export type Worked = z.infer<typeof workedSchema>;

/** `GET /api/sittings/:id/cut-list`: the stems to shorten, in the order of working round the plant. */
export const cutListSchema = z.object({
  sittingId: idSchema,
  plantId: idSchema,
  day: daySchema,
  from: z.enum(['one-photo', 'turned']),
  /** The views that the list rests on; the first is the one that its px belong to. */
  viewIds: z.array(idSchema),
  ball: ballToCutToSchema.nullable(),
  /** Why there is no ball in mm, and what to do; the list then evens the plant up to its present ball. */
  ballWhyNot: z.string().nullable(),
  growth: plantGrowthSchema.nullable(),
  growthWhyNot: z.string().nullable(),
  cuts: z.array(
    cutSchema.extend({
      ...cutMarkSchema.shape,
      /** Where it is drawn, for each view that shows its tip. */
      marks: z.array(cutInViewSchema).readonly(),
    }),
  ),
  /** Of the views of `viewIds` together: roundness and symmetry their mean; lopsidedness of one photo only, for several see `lean`. */
  before: scoresSchema,
  /** The same as foretold for the cuts that are chosen and not skipped; `null` with the reason in `afterWhyNot`. */
  after: scoresSchema.nullable(),
  afterWhyNot: z.string().nullable(),
  /** Lopsidedness of a turned sitting, before and after; `null` in one photo. */
  lean: z
    .object({ before: lopsidednessVectorSchema.nullable(), after: lopsidednessVectorSchema.nullable() })
    .nullable(),
  /** Each view by itself; its `before` is its report's. */
  views: z.array(z.object({ viewId: idSchema, before: scoresSchema, after: scoresSchema.nullable() })),
  /** The outline as it would be after, photo px, closed; `[]` with the reason in `afterWhyNot`. */
  outlinesAfter: z.array(z.object({ viewId: idSchema, outlinePx: z.array(pointPx).readonly() })),
  /** What the photos do not show. */
  unseen: z.array(z.string()),
  /** `null` until a cut was ticked off or skipped. */
  worked: workedSchema.nullable(),
  /** Beside the list: how to work, and the cautions. */
  advice: z.array(z.object({ words: z.string(), caution: z.boolean() })),
});
export type CutList = z.infer<typeof cutListSchema>;
