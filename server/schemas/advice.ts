import { z } from 'zod';
import { ADVICE_KINDS, type Advice, SURENESSES } from '../../core/advice/advice.ts';

export const adviceSchema = z.object({
  kind: z.enum(ADVICE_KINDS),
  urgency: z.literal([0, 1, 2, 3]),
  what: z.string(),
  where: z.string().nullable(),
  howMuch: z.string().nullable(),
  why: z.string(),
  sureness: z.enum(SURENESSES),
  caution: z.string().nullable(),
}) satisfies z.ZodType<Advice>;
