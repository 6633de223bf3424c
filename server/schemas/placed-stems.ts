import { z } from 'zod';
import type { StemsOfSitting } from '../../core/stems/match-stems.ts';
import { plantPoint } from './turned.ts';

/** The long stems of a turned sitting as they are kept. */
export const placedStemsSchema = z.object({
  stems: z
    .array(
      z.object({
        azimuthDeg: z.number(),
        elevationDeg: z.number(),
        lengthMm: z.number().nullable(),
        excessMm: z.number(),
        plusMinusMm: z.number().nonnegative(),
        kind: z.enum(['shoot', 'shoulder']),
        seenIn: z.array(z.int().nonnegative()).readonly(),
        unsure: z.boolean(),
        tipMm: plantPoint,
      }),
    )
    .readonly(),
  crown: z.object({ centre: plantPoint, radius: z.number().positive() }).nullable(),
  notes: z.array(z.string()).readonly(),
}) satisfies z.ZodType<StemsOfSitting>;
