import { z } from 'zod';
import { adviceSchema } from './advice.ts';
import { daySchema, idSchema } from './basics.ts';
import {
  growthNowSchema,
  plantBloomSchema,
  plantFillSchema,
  plantLeafSchema,
  plantWiltSchema,
} from './condition.ts';
import { plantLightSchema, turnSchema } from './light.ts';
import { plantSchema } from './plant.ts';
import { pointPx } from './report.ts';
import { sentFileSchema } from './sent-file.ts';
import { noteSchema, sittingSchema, stopSchema, turnDegSchema, viewSchema } from './sitting.ts';
import { trendSegmentSchema } from './trend-segment.ts';
import { turnedStateSchema } from './turned.ts';
import { workSchema } from './work.ts';

/** One row of trend: the first measured view of a sitting. */
export const trendPointSchema = z.object({
  sittingId: idSchema,
  day: daySchema,
  roundness: z.number().nullable(),
  roundnessPlusMinus: z.number().nullable(),
  symmetry: z.number().nullable(),
  symmetryPlusMinus: z.number().nullable(),
  lopsidedness: z.number().nullable(),
  lopsidednessPlusMinus: z.number().nullable(),
  radiusMm: z.number().nullable(),
  /** Why the sitting's numbers are left out though it was measured: the camera stood elsewhere, or the grower keeps it out. `null` when they are not. */
  leftOut: z.string().nullable(),
});
export type TrendPoint = z.infer<typeof trendPointSchema>;

export const measureTrendSchema = z.object({ segments: z.array(trendSegmentSchema).readonly() });

/** What the bench draws of a trend: the roundness. */
export const benchTrendPointSchema = trendPointSchema.pick({
  day: true,
  roundness: true,
  roundnessPlusMinus: true,
});
export type BenchTrendPoint = z.infer<typeof benchTrendPointSchema>;

/**
 * A view as the bench shows it, small and without its lines: they are most of its bytes, and of 200 plants they were 5 MB. Of its report
 * what the bench neither draws nor says (extras, leaf, flower, gaps, stature, unsure zones) is left empty. The plant's own page has all.
 */
export const benchViewSchema = viewSchema.omit({ outlinePx: true, drawing: true }).extend({
  /** Two corners, top left and bottom right, of the smallest upright box around the outline, photo px; none before there is one. */
  outlineCornersPx: z.array(pointPx).readonly(),
});
export type BenchView = z.infer<typeof benchViewSchema>;

/** `GET /api/bench`: every plant with its newest photo, scores and what it needs, the neediest first. */
export const benchSchema = z.object({
  plants: z.array(
    z.object({
      plant: plantSchema,
      newest: benchViewSchema.nullable(),
      newestDay: daySchema.nullable(),
      sittingCount: z.int(),
      /** Oldest first. */
      trend: z.array(benchTrendPointSchema),
      advice: z.array(adviceSchema),
      /** A fit of its photos is still being reckoned: what follows from its bloom is told later. */
      isBloomUnderWay: z.boolean(),
      /** Dated work of today and the week to come. */
      work: z.array(workSchema),
    }),
  ),
  /** Plants that were put away; kept, and brought back with `PATCH {"putAway": false}`. */
  putAway: z.array(plantSchema),
});
export type Bench = z.infer<typeof benchSchema>;

/** A sitting in a line; whole it is at `GET /api/plants/:id/sittings`. */
export const earlierSittingSchema = sittingSchema.pick({ id: true, day: true, leftOut: true }).extend({
  views: z.array(
    viewSchema.pick({ id: true, turnDeg: true, state: true, afterWork: true }).extend({
      isMeasured: z.boolean(),
      /** It shows its stand, from where the stand's photos are taken; or it was taken without a stand. */
      isOfItsPlace: z.boolean(),
    }),
  ),
});
export type EarlierSitting = z.infer<typeof earlierSittingSchema>;

/** `GET /api/plants/:id`: everything one plant's page shows. Sittings newest first. */
export const plantPageSchema = z.object({
  plant: plantSchema,
  sittings: z.array(sittingSchema),
  /** The sittings before those, in a line each; empty unless `?sittings=` asks for so many whole ones. */
  earlier: z.array(earlierSittingSchema),
  stops: z.array(stopSchema),
  notes: z.array(noteSchema),
  /** The recorded turns of the pot, newest first. */
  turns: z.array(turnSchema),
  trend: z.array(trendPointSchema),
  /** What the points of `trend` say, split at the stops. */
  trends: z.object({
    roundness: measureTrendSchema,
    symmetry: measureTrendSchema,
    lopsidedness: measureTrendSchema,
  }),
  advice: z.array(adviceSchema),
  light: plantLightSchema,
  /** `null` before a sitting was measured, as are the next four. */
  bloom: plantBloomSchema.nullable(),
  leaf: plantLeafSchema.nullable(),
  fill: plantFillSchema.nullable(),
  growth: growthNowSchema.nullable(),
  wilt: plantWiltSchema.nullable(),
});
export type PlantPage = z.infer<typeof plantPageSchema>;

/** Text fields beside the photos of an upload. */
export const uploadFormSchema = sentFileSchema.extend({
  /** Overrides the camera's day. */
  day: daySchema.optional(),
  /** Day on which the photos were chosen, by the sender's calendar: theirs where the camera tells none. They may have waited for a network. */
  chosenDay: daySchema.optional(),
  turnDeg: z
    .string()
    .regex(/^\d+(\.\d+)?$/, 'Give the turn in degrees, for example 90.')
    .transform(Number)
    .pipe(turnDegSchema)
    .optional(),
});
export type UploadForm = z.infer<typeof uploadFormSchema>;

/** Answer to an upload: one entry a file, in the order sent. A refused file leaves nothing behind. */
export const uploadSchema = z.object({
  photos: z.array(
    z.discriminatedUnion('outcome', [
      z.object({ outcome: z.literal('kept'), fileName: z.string(), view: viewSchema }),
      z.object({
        outcome: z.literal('known'),
        fileName: z.string(),
        viewId: idSchema,
        plantId: idSchema,
        detail: z.string(),
      }),
      z.object({
        outcome: z.literal('refused'),
        fileName: z.string(),
        detail: z.string(),
        /** It did not arrive as its sender told: sent again, it may. */
        altered: z.literal(true).optional(),
      }),
    ]),
  ),
});
export type Upload = z.infer<typeof uploadSchema>;

/**
 * One server-sent event of `GET /api/events`: a view moved on, the joining of a sitting's views, or a bloom that was under way is known, and
 * perhaps those of other plants before it.
 */
export const progressSchema = z.union([
  z.object({ plantId: idSchema, viewId: idSchema, state: viewSchema.shape.state }),
  z.object({ plantId: idSchema, sittingId: idSchema, turnedState: turnedStateSchema }),
  z.object({ plantId: idSchema, bloom: z.literal('reckoned') }),
]);
export type Progress = z.infer<typeof progressSchema>;
