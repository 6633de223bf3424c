import { z } from 'zod';
import { idSchema } from './basics.ts';

export const FILM_FORMATS = ['webp', 'gif'] as const;
export type FilmFormat = (typeof FILM_FORMATS)[number];

/** Which film of a plant is to be made as a file. */
export const filmFormSchema = z.object({
  /** The side that it shows, degrees in steps of 15; left out: the one with most days. */
  sideDeg: z.number().min(0).lt(360).optional(),
  /** Where the camera stood, as stand and version with a stroke between; `null`: no stand; left out: the place with most days. */
  place: z.string().nullable().optional(),
  format: z.enum(FILM_FORMATS, 'A film is written as "webp" or "gif".'),
  perSecond: z
    .number('Give the pictures a second, for example 3.')
    .min(0.5, 'A film shows one picture in two seconds at least.')
    .max(12, 'A film shows 12 pictures a second at most.')
    .default(3),
});

/** A film that is made or was made. It is kept for a quarter of an hour. */
export const filmSchema = z.object({
  id: idSchema,
  state: z.enum(['drawing', 'writing', 'ready', 'failed']),
  /** Pictures drawn, of how many. */
  drawn: z.int().nonnegative(),
  of: z.int().nonnegative(),
  /** Photos that fitted, where not all of them are shown because there are too many. */
  thinnedFrom: z.int().positive().nullable(),
  fileName: z.string(),
  byteCount: z.int().nonnegative().nullable(),
  /** What went wrong; `null` unless it failed. */
  failure: z.string().nullable(),
});
export type FilmFile = z.infer<typeof filmSchema>;
