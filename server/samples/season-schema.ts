import { z } from 'zod';
import { daySchema } from '../schemas/basics.ts';
import { turnFormSchema } from '../schemas/light.ts';
import { plantFormSchema } from '../schemas/plant.ts';
import { showFormSchema } from '../schemas/show.ts';
import { noteFormSchema, stopFormSchema, turnDegSchema } from '../schemas/sitting.ts';

/** `sample-images/season.json`: the invented plants of the sample bench. Files are named from that folder. */
export const seasonSchema = z.object({
  shows: z
    .array(
      showFormSchema.extend({
        /** Plants by key; the class by its name. */
        entries: z
          .array(z.object({ plant: z.string(), class: z.string().nullable().default(null) }))
          .default([]),
      }),
    )
    .default([]),
  plants: z.array(
    plantFormSchema.extend({
      key: z.string(),
      /** Photo of the stand without the plant. */
      empty: z.string().nullable().default(null),
      sittings: z.array(
        z.object({
          day: daySchema,
          views: z.array(z.object({ file: z.string(), turnDeg: turnDegSchema.nullable().default(null) })),
        }),
      ),
      stops: z.array(stopFormSchema).default([]),
      notes: z.array(noteFormSchema).default([]),
      turns: z.array(turnFormSchema).default([]),
    }),
  ),
});
export type Season = z.infer<typeof seasonSchema>;
