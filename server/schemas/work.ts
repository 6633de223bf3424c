import { z } from 'zod';
import { type OwnWork, WORK_KINDS, type WorkRhythm } from '../../core/season/work.ts';
import { WORK_STATES, type WorkNow, type WorkWord } from '../../core/season/work-now.ts';
import { daySchema, idSchema } from './basics.ts';

const everyDays = z
  .int('Give the days as a whole number.')
  .min(1, 'Give one day or more.')
  .max(365, 'Give 365 days or fewer.')
  .nullable();

/** How often weekly work comes round, days; `null`: no reminder. */
export const workRhythmSchema = z.object({
  photographDays: everyDays,
  lookOverDays: everyDays,
}) satisfies z.ZodType<WorkRhythm>;

/** Work of the grower's own. */
export const ownWorkFormSchema = z.object({
  kind: z.enum(['feed', 'pot-on', 'own']),
  day: daySchema,
  everyDays: everyDays.default(null),
  untilDay: daySchema.nullable().default(null),
  text: z.string().trim().min(1, 'Write what is to be done.').max(300, 'Keep it to 300 letters or fewer.'),
});
export type OwnWorkForm = z.infer<typeof ownWorkFormSchema>;
export const ownWorkChangeSchema = ownWorkFormSchema
  .extend({
    everyDays: ownWorkFormSchema.shape.everyDays.unwrap(),
    untilDay: ownWorkFormSchema.shape.untilDay.unwrap(),
  })
  .partial();
export const ownWorkSchema = ownWorkFormSchema.extend({
  id: idSchema,
  plantId: idSchema,
}) satisfies z.ZodType<OwnWork>;
export type OwnWorkRow = z.infer<typeof ownWorkSchema>;

/** A piece of dated work as it stands. */
export const workSchema = z.object({
  key: z.string(),
  plantId: idSchema,
  kind: z.enum(WORK_KINDS),
  day: daySchema,
  dueBy: daySchema,
  until: daySchema.nullable(),
  what: z.string(),
  why: z.string(),
  standing: z.string(),
  caution: z.string().nullable(),
  doneOn: daySchema.nullable(),
  state: z.enum(WORK_STATES),
  movedFrom: daySchema.nullable(),
  stateInWords: z.string().nullable(),
}) satisfies z.ZodType<WorkNow>;

/** `GET /api/work?from=…&to=…`: of all plants on the bench, by day. */
export const workListSchema = z.object({
  today: daySchema,
  /** Plants of which a bloom's fit is still being reckoned: what follows from it is listed later. */
  bloomsUnderWay: z.int(),
  work: z.array(workSchema.extend({ plantName: z.string() })),
});
export type WorkList = z.infer<typeof workListSchema>;

const key = z.string().min(1).max(200);

/** What the grower says of one piece of work. */
export const workWordSchema = z.discriminatedUnion('said', [
  z.object({ key, said: z.literal('done'), day: daySchema }),
  z.object({ key, said: z.literal('moved'), day: daySchema }),
  z.object({
    key,
    said: z.literal('skipped'),
    day: daySchema,
    reason: z
      .string()
      .trim()
      .min(1, 'Say why, for example "still wet".')
      .max(300, 'Keep the reason to 300 letters or fewer.'),
  }),
]) satisfies z.ZodType<WorkWord>;

/** Words on many pieces of work at once; `said: null` takes the word back. */
export const workWordsSchema = z.object({
  words: z
    .array(
      z.object({
        plantId: idSchema,
        word: z.union([workWordSchema, z.object({ key, said: z.null() })]),
      }),
    )
    .min(1, 'Choose some work first.')
    .max(500, 'Take 500 pieces of work or fewer at once.'),
});
export type WorkWords = z.infer<typeof workWordsSchema>;
