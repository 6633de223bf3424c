import { z } from 'zod';
import { isDay } from '../../core/day/day.ts';

export const idSchema = z.string().regex(/^[0-9a-z-]{8,40}$/, 'That is not an id of this store.');

export const daySchema = z
  .string()
  .refine(isDay, 'Give a day as YYYY-MM-DD, for example 2026-03-08.')
  .describe('Calendar day, YYYY-MM-DD');

/** RFC 9457 problem body. `errors` points at the fields of a form. */
export const problemSchema = z.object({
  type: z.string(),
  title: z.string(),
  status: z.int(),
  detail: z.string(),
  instance: z.string().optional(),
  errors: z.array(z.object({ pointer: z.string(), detail: z.string() })).optional(),
});
export type Problem = z.infer<typeof problemSchema>;
