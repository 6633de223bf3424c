import { z } from 'zod';

/** How far photos measured by an older method are measured anew. */
export const remeasuringSchema = z.object({
  /** The method of today. */
  methodVersion: z.string(),
  /** `idle`: nothing is left to do but what broke down. */
  state: z.enum(['idle', 'running', 'stopped']),
  /** Photos whose numbers come from an older method; they stand until each is measured anew. */
  outdated: z.int(),
  /** Photos of this run, and those of them that are done. */
  total: z.int(),
  done: z.int(),
  /** Photos that could not be measured anew since the start; each keeps its numbers of before. */
  brokeDown: z.int(),
  /** About how long the rest takes at the pace so far; `null` while that is not known. */
  minutesLeft: z.number().nullable(),
});
export type RemeasuringAnswer = z.infer<typeof remeasuringSchema>;
