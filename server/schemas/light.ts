import { z } from 'zod';
import { SURENESSES } from '../../core/advice/advice.ts';
import type { LightLedger } from '../../core/light/light-ledger.ts';
import type { SunSide } from '../../core/light/light-side.ts';
import { type NextTurn, TURN_WAYS, type TurnRhythm } from '../../core/light/next-turn.ts';
import { daySchema, idSchema } from './basics.ts';

/** An azimuth of the plant. */
const azimuth = z
  .number('Give the side that faces the light in degrees, for example 90.')
  .min(0, 'Give the side that faces the light as 0 to 359 degrees.')
  .lt(360, 'Give the side that faces the light as 0 to 359 degrees.');

/** The pot was turned: from that day on this azimuth faces the light. */
export const turnFormSchema = z.object({
  day: daySchema,
  facesLightDeg: azimuth,
  note: z.string().trim().max(500, 'Keep the note to 500 letters or fewer.').default(''),
});
export type TurnForm = z.infer<typeof turnFormSchema>;
export const turnChangeSchema = turnFormSchema.extend({ note: turnFormSchema.shape.note.unwrap() }).partial();
export const turnSchema = turnFormSchema.extend({ id: idSchema, plantId: idSchema });
export type Turn = z.infer<typeof turnSchema>;

/** How a plant is turned from week to week; `everyDays` null: no reminder. */
export const turnRhythmSchema = z.object({
  everyDays: z
    .int('Give the days from turn to turn as a whole number, for example 7.')
    .min(1, 'Give at least one day from turn to turn.')
    .max(90, 'More than 90 days is no rhythm; take the reminder off instead.')
    .nullable(),
  byDeg: z.literal(
    [45, 90, 135, 180],
    'The pot is turned by an eighth, a quarter, three eighths or half a turn: 45, 90, 135 or 180 degrees.',
  ),
  /** Seen from above. */
  way: z.enum(TURN_WAYS, 'The pot is turned clockwise or anticlockwise, seen from above.'),
}) satisfies z.ZodType<TurnRhythm>;

/** How long each eighth of the plant has faced the light, from the recorded turns. */
export const lightLedgerSchema = z.object({
  nowFacesDeg: z.number().nullable(),
  sinceDay: daySchema.nullable(),
  daysSinceTurn: z.int().nonnegative().nullable(),
  /** First day that is counted. */
  fromDay: daySchema.nullable(),
  sides: z
    .array(
      z.object({
        azimuthDeg: z.number(),
        /** Whole days that this eighth faced it. */
        daysFaced: z.int().nonnegative(),
        /** Days weighted by how squarely it faced the light. */
        lightDays: z.number().nonnegative(),
      }),
    )
    .readonly(),
  /** The side that was lit least; `null` when none was lit less than the others. */
  gapAzimuthDeg: z.number().nullable(),
  evenness: z.number().min(0).max(1).nullable(),
  why: z.string(),
}) satisfies z.ZodType<LightLedger>;

/** When and how far to turn the pot next. */
export const nextTurnSchema = z.object({
  dueDay: daySchema,
  /** From how the pot stands, anticlockwise seen from above; 0: leave it. */
  turnByDeg: z.number(),
  toLightAzimuthDeg: z.number(),
  words: z.string(),
  why: z.string(),
  sure: z.enum(SURENESSES),
}) satisfies z.ZodType<NextTurn>;

/** Where the sun stands when it shines in; bearings in compass degrees, clockwise from true north. */
export const sunSideSchema = z.object({
  /** `null` when no direct sun comes in that day. */
  meanBearingDeg: z.number().nullable(),
  hours: z.number().nonnegative(),
  noonElevationDeg: z.number(),
  dayLengthHours: z.number().nonnegative(),
  sunriseBearingDeg: z.number().nullable(),
  sunsetBearingDeg: z.number().nullable(),
}) satisfies z.ZodType<SunSide>;

/** The light of one plant, as of today. */
export const plantLightSchema = z.object({
  /** Degrees anticlockwise from the camera seen from above; `null` when the stand does not say, or the light comes from above. */
  fromCameraDeg: z.number().nullable(),
  ledger: lightLedgerSchema,
  next: nextTurnSchema.nullable(),
  /** How the light's side moves; `null` without the stand's latitude. */
  season: z
    .array(sunSideSchema.extend({ day: daySchema }))
    .readonly()
    .nullable(),
});
export type PlantLight = z.infer<typeof plantLightSchema>;
