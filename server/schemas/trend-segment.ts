import { z } from 'zod';
import { daySchema } from './basics.ts';

/** How one measure goes between two stops, or since the last; `direction` null with the reason in `why`. */
export const trendSegmentSchema = z.object({
  fromDay: daySchema,
  toDay: daySchema,
  /** Sittings in it. */
  n: z.int().nonnegative(),
  slopePerWeek: z.number().nullable(),
  interval95: z.tuple([z.number(), z.number()]).readonly().nullable(),
  /** Two-sided, of the Mann-Kendall test. */
  p: z.number().min(0).max(1).nullable(),
  direction: z.enum(['rising', 'falling', 'no change']).nullable(),
  why: z.string(),
});
