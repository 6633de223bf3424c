import { z } from 'zod';
import { LOG_KINDS, type LogEntry } from '../../core/season/log-entry.ts';
import type { PartsOutlines } from '../../core/silhouette/parts-outlines.ts';
import { daySchema, idSchema } from './basics.ts';
import { pointPx, reportSchema, unsureSchema } from './report.ts';
import { rimByHandSchema } from './rim-by-hand.ts';
import { strokeSchema } from './stroke.ts';
import { turnedReportSchema, turnedStateSchema } from './turned.ts';

/** How far a photo has come. `failed` means a fault of ours; a photo that cannot be measured is `measured` with a report that says why. */
export const viewStateSchema = z.enum(['received', 'measuring', 'measured', 'failed']);

/** The azimuth that faces the camera. */
export const turnDegSchema = z
  .number('Give the turn in degrees, for example 90.')
  .min(0, 'Give the turn as 0 to 359 degrees.')
  .lt(360, 'Give the turn as 0 to 359 degrees.');

const loops = z.array(z.array(pointPx).readonly()).readonly();

/** Closed contours of what is not leaf, photo px; `[]` for what is not seen. */
export const partsOutlinesSchema = z.object({
  flower: loops,
  pot: loops,
  soil: loops,
  support: loops,
}) satisfies z.ZodType<PartsOutlines>;

export const viewSchema = z.object({
  id: idSchema,
  sittingId: idSchema,
  fileName: z.string(),
  turnDeg: z.number().nullable(),
  /** Who told the turn: the grower, or the collar's marks in the photo; `null` when nobody did. */
  turnFrom: z.enum(['grower', 'collar']).nullable(),
  /** The stand of the sitting and its version then; `null` when it was taken without one. */
  standId: idSchema.nullable(),
  standVersion: z.int().positive().nullable(),
  /** Camera's local time `YYYY-MM-DDTHH:MM:SS` without zone, and where it comes from. */
  takenAt: z.string().nullable(),
  takenFrom: z.enum(['exif', 'upload', 'grower']),
  widthPx: z.int(),
  heightPx: z.int(),
  state: viewStateSchema,
  failure: z.string().nullable(),
  methodVersion: z.string().nullable(),
  /** Days that the plant's normal leaf was learned from, by which `report.foliage` was judged; `null`: by what is usual. */
  normalLeafFrom: z.array(daySchema).nullable(),
  report: reportSchema.nullable(),
  /** Outer contour in photo px, closed. */
  outlinePx: z.array(pointPx).readonly(),
  /** What is drawn beside the outline: zones of doubt, largest first, and the other parts. */
  drawing: z.object({ unsure: z.array(unsureSchema).readonly(), parts: partsOutlinesSchema }),
  /** The grower's strokes over the photo, oldest first. */
  strokes: z.array(strokeSchema).readonly(),
  /** The rim's ends as the grower set them, which the numbers rest on; `null` for those found in the photo. */
  rimByHand: rimByHandSchema.nullable(),
  /** It came in after a cut of its sitting's list was ticked off, so it shows the plant after the work and is not joined with the others. */
  afterWork: z.boolean(),
  /** The grower has said that the outline is right. */
  acceptedOutline: z.boolean(),
  /** Upright JPEG without camera data; takes `?width=` 320, 800 or 1600. */
  pictureUrl: z.string(),
  /** White-on-clear PNG of the canopy; null before it is measured. */
  maskUrl: z.string().nullable(),
});
export type View = z.infer<typeof viewSchema>;

export const viewChangeSchema = z
  .object({
    /** `null` takes back a day that was given: the one that the camera wrote counts again. */
    day: daySchema.nullable(),
    turnDeg: turnDegSchema.nullable(),
  })
  .partial();
export type ViewChange = z.infer<typeof viewChangeSchema>;

export const sittingSchema = z.object({
  id: idSchema,
  plantId: idSchema,
  day: daySchema,
  standId: idSchema.nullable(),
  standVersion: z.int().positive().nullable(),
  /** Why the grower keeps it out of trend and advice, as limp from drought; `null` when it counts. */
  leftOut: z.string().nullable(),
  views: z.array(viewSchema),
  /** The views joined into one plan; `null` until they are, and with one view. */
  turned: turnedReportSchema.nullable(),
  turnedState: turnedStateSchema,
  /** The views that `turned` rests on, in the order in which its faults and words count them. */
  turnedViewIds: z.array(idSchema),
});
export type Sitting = z.infer<typeof sittingSchema>;

export const sittingChangeSchema = z
  .object({
    /** Where it was taken, should it be another stand than the plant's; `null` for none. */
    standId: idSchema.nullable(),
    /** Keeps it out of trend and advice for this reason; `null` takes it back in. */
    leftOut: z
      .string()
      .trim()
      .min(1, 'Say why it is left out, for example "limp from drought".')
      .max(200, 'Keep the reason to 200 letters or fewer.')
      .nullable(),
  })
  .partial();

export const stopFormSchema = z.object({
  day: daySchema,
  depth: z.enum(['tip', 'deep']),
  note: z.string().trim().max(500, 'Keep the note to 500 letters or fewer.').default(''),
});
export type StopForm = z.infer<typeof stopFormSchema>;
export const stopChangeSchema = stopFormSchema.extend({ note: stopFormSchema.shape.note.unwrap() }).partial();
export const stopSchema = stopFormSchema.extend({ id: idSchema, plantId: idSchema });
export type Stop = z.infer<typeof stopSchema>;

const noteFields = z.object({
  day: daySchema,
  /** What was done or seen; `note` for words alone. */
  kind: z.enum(LOG_KINDS).default('note'),
  text: z.string().trim().max(2000, 'Keep the note to 2000 letters or fewer.').default(''),
});
export const noteFormSchema = noteFields.refine(({ kind, text }) => kind !== 'note' || text !== '', {
  message: 'Write the note first.',
  path: ['text'],
});
export type NoteForm = z.infer<typeof noteFormSchema>;
export const noteChangeSchema = noteFields
  .extend({ kind: noteFields.shape.kind.unwrap(), text: noteFields.shape.text.unwrap() })
  .partial();
export const noteSchema = noteFields.extend({
  id: idSchema,
  plantId: idSchema,
}) satisfies z.ZodType<LogEntry>;
export type Note = z.infer<typeof noteSchema>;
