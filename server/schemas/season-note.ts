import { z } from 'zod';
import type { SeasonNote } from '../../core/season/bloom-record.ts';
import { daySchema, idSchema } from './basics.ts';

/** A word on a stretch of time: a cold dark winter, a warm spring. */
export const seasonNoteFormSchema = z
  .object({
    /** `null`: for all plants. */
    plantId: idSchema.nullable().default(null),
    fromDay: daySchema,
    toDay: daySchema,
    text: z
      .string()
      .trim()
      .min(1, 'Write what the season was like.')
      .max(500, 'Keep it to 500 letters or fewer.'),
    /** Learn nothing from records that it touches. */
    setsAside: z.boolean().default(false),
  })
  .refine(({ fromDay, toDay }) => fromDay <= toDay, {
    message: 'The first day comes after the last. Change one of them.',
    path: ['toDay'],
  });
export type SeasonNoteForm = z.infer<typeof seasonNoteFormSchema>;

export const seasonNoteSchema = z.object({
  id: idSchema,
  plantId: idSchema.nullable(),
  fromDay: daySchema,
  toDay: daySchema,
  text: z.string(),
  setsAside: z.boolean(),
}) satisfies z.ZodType<SeasonNote>;
export type SeasonNoteRow = z.infer<typeof seasonNoteSchema>;
