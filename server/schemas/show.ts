import { z } from 'zod';
import type { EntryCheck } from '../../core/season/entry-checks.ts';
import type { Show, ShowClass } from '../../core/season/show.ts';
import { daySchema, idSchema } from './basics.ts';

const limitMm = z
  .number('Give the limit in millimetres, for example 450.')
  .min(30, 'A limit of less than 30 mm cannot be right; give millimetres.')
  .max(3000, 'A limit of more than 3000 mm cannot be right; give millimetres.')
  .nullable();

const rules = z.string().trim().max(4000, 'Keep the rules to 4000 letters or fewer.');

const classForm = z.object({
  /** Left out for a new class. */
  id: idSchema.optional(),
  name: z
    .string('Give the class a name.')
    .trim()
    .min(1, 'Give the class a name or its number.')
    .max(120, 'Keep the class’s name to 120 letters or fewer.'),
  potMm: limitMm.default(null),
  widestMm: limitMm.default(null),
  tallestMm: limitMm.default(null),
  rules: rules.default(''),
});

/** What the grower tells about a show. */
export const showFormSchema = z.object({
  name: z
    .string('Give the show a name.')
    .trim()
    .min(1, 'Give the show a name.')
    .max(120, 'Keep the show’s name to 120 letters or fewer.'),
  day: daySchema,
  place: z.string().trim().max(200, 'Keep the place to 200 letters or fewer.').default(''),
  rules: rules.default(''),
  classes: z.array(classForm).max(60, 'A show has room for 60 classes here.').default([]),
});
export type ShowForm = z.infer<typeof showFormSchema>;

/** What a show has when only its name and day are told. */
export const emptyShow = { place: '', rules: '', classes: [] } as const satisfies Partial<ShowForm>;

/** What may be changed later: only the fields sent; classes are sent whole. */
export const showChangeSchema = showFormSchema
  .extend({
    place: showFormSchema.shape.place.unwrap(),
    rules: showFormSchema.shape.rules.unwrap(),
    classes: showFormSchema.shape.classes.unwrap(),
  })
  .partial();

export const showClassSchema = z.object({
  id: idSchema,
  name: z.string(),
  potMm: z.number().nullable(),
  widestMm: z.number().nullable(),
  tallestMm: z.number().nullable(),
  rules: z.string(),
}) satisfies z.ZodType<ShowClass>;

export const showSchema = z.object({
  id: idSchema,
  name: z.string(),
  day: daySchema,
  place: z.string(),
  rules: z.string(),
  classes: z.array(showClassSchema).readonly(),
}) satisfies z.ZodType<Show>;

export const entryCheckSchema = z.object({
  limit: z.enum(['pot', 'width', 'height']),
  verdict: z.enum(['fits', 'too large', 'too near to tell', 'unknown']),
  words: z.string(),
}) satisfies z.ZodType<EntryCheck>;

export const entryFormSchema = z.object({
  /** `null` while the class is not settled. */
  classId: idSchema.nullable().default(null),
  /** What happened on the day. */
  result: z.string().trim().max(2000, 'Keep it to 2000 letters or fewer.').default(''),
});
export const entryChangeSchema = z
  .object({ classId: idSchema.nullable(), result: entryFormSchema.shape.result.unwrap() })
  .partial();

/** A plant entered for a show, with what its class says of the plant's size. */
export const entrySchema = z.object({
  plantId: idSchema,
  showId: idSchema,
  classId: idSchema.nullable(),
  result: z.string(),
});
export type EntryRow = z.infer<typeof entrySchema>;

/** `GET /api/shows`: by day, those to come first. */
export const showListSchema = z.object({
  shows: z.array(
    z.object({
      show: showSchema,
      isOver: z.boolean(),
      entries: z.array(
        entrySchema.extend({
          plantName: z.string(),
          /** This show rules the plant's stops. */
          isAim: z.boolean(),
          checks: z.array(entryCheckSchema),
        }),
      ),
    }),
  ),
});
export type ShowList = z.infer<typeof showListSchema>;
