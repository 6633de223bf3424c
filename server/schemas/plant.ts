import { z } from 'zod';
import { PLANT_KINDS } from '../../core/plant.ts';
import { daySchema, idSchema } from './basics.ts';
import { cutToSchema } from './cut-to.ts';
import { turnRhythmSchema } from './light.ts';
import { workRhythmSchema } from './work.ts';

export const plantKindSchema = z.enum(PLANT_KINDS);

/** What the grower tells about a plant. Rim: outer diameter of the pot rim. */
export const plantFormSchema = z.object({
  name: z
    .string('Give the plant a name.')
    .trim()
    .min(1, 'Give the plant a name.')
    .max(80, 'Keep the name to 80 letters or fewer.'),
  kind: plantKindSchema,
  variety: z.string().trim().max(80, 'Keep the variety to 80 letters or fewer.').default(''),
  rimMm: z
    .number('Give the pot rim in millimetres, for example 130.')
    .min(30, 'A pot rim of less than 30 mm cannot be right; measure across the outside of the rim.')
    .max(1000, 'A pot rim of more than 1000 mm cannot be right; give millimetres.')
    .nullable()
    .default(null),
  /** Enters the plant for the show of that day, which is made when there is none; `null` withdraws it. */
  showDay: daySchema.nullable().default(null),
  /** The stand where the plant is photographed; `null` when it has none. */
  standId: idSchema.nullable().default(null),
});
export type PlantForm = z.infer<typeof plantFormSchema>;

/** What may be changed later: only the fields sent. The defaults are taken off, or a missing field would be reset. */
export const plantChangeSchema = plantFormSchema
  .extend({
    variety: plantFormSchema.shape.variety.unwrap(),
    rimMm: plantFormSchema.shape.rimMm.unwrap(),
    showDay: plantFormSchema.shape.showDay.unwrap(),
    standId: plantFormSchema.shape.standId.unwrap(),
    putAway: z.boolean(),
    /** The show that rules its stops, should it not be the first to come; `null` for that one. */
    aimShowId: idSchema.nullable(),
    turnRhythm: turnRhythmSchema,
    cutTo: cutToSchema,
    workRhythm: workRhythmSchema,
  })
  .partial();
export type PlantChange = z.infer<typeof plantChangeSchema>;

export const plantSchema = plantFormSchema.extend({
  id: idSchema,
  /** The show that `showDay` is the day of; `null` when the plant is entered for none. */
  showId: idSchema.nullable(),
  /** Picked by the grower; `null`: the first to come. */
  aimShowId: idSchema.nullable(),
  createdAt: z.iso.datetime(),
  /** A quarter turn a week to begin with. */
  turnRhythm: turnRhythmSchema,
  /** What ball its cut list goes by; evened up to begin with. */
  cutTo: cutToSchema,
  /** How often weekly work comes round. */
  workRhythm: workRhythmSchema,
  /** Put away by the grower; kept, but not on the bench. */
  putAway: z.boolean(),
  /** Belongs to the sample bench. */
  sample: z.boolean(),
  /** Address of the plant's own empty photo, if one was given; the stand's counts before it. */
  emptyPhotoUrl: z.string().nullable(),
});
export type Plant = z.infer<typeof plantSchema>;
