import { z } from 'zod';
import { SURENESSES } from '../../core/advice/advice.ts';
import type { BloomAgainstShow } from '../../core/bloom/bloom-against-show.ts';
import type { BloomPoint } from '../../core/bloom/bloom-curve.ts';
import { type BloomOffer, OFFERED_EVENTS } from '../../core/bloom/bloom-offers.ts';
import type { BloomReading } from '../../core/bloom/bloom-readings.ts';
import { LOG_KINDS } from '../../core/season/log-entry.ts';
import { daySchema, idSchema } from './basics.ts';
import { noteSchema, turnDegSchema } from './sitting.ts';
import { trendSegmentSchema } from './trend-segment.ts';

const share = z.number().min(0).max(1);
const days = z.tuple([z.number(), z.number()]).readonly();

const bloomReadingSchema = z.object({
  day: daySchema,
  share,
  /** 95 % repeatability; `null` when not known. */
  plusMinus: z.number().nonnegative().nullable(),
}) satisfies z.ZodType<BloomReading>;

/** A day of the bloom with its 90 % interval; a forecast while `isPast` is false. */
const bloomDateSchema = z.object({
  day: daySchema,
  from90: daySchema,
  to90: daySchema,
  isPast: z.boolean(),
});

const shareRangeSchema = z.object({ share, low90: share, high90: share });

const againstShowSchema = z.object({
  verdict: z.enum(['early', 'in-time', 'late', 'unsure']),
  /** Above 0 early, below 0 late. */
  daysEarly: z.number(),
  daysEarly90: days,
  chances: z.object({ early: z.number(), inTime: z.number(), late: z.number() }),
  takeOffUntil: daySchema.nullable(),
  words: z.string(),
  standing: z.string(),
}) satisfies z.ZodType<BloomAgainstShow>;

/** A date that may go to the log, if the grower says yes. */
export const bloomOfferSchema = z.object({
  event: z.enum(OFFERED_EVENTS),
  /** The kind of entry it becomes. */
  logKind: z.enum(LOG_KINDS),
  day: daySchema,
  from90: daySchema,
  to90: daySchema,
  /** The entry, accepted earlier, that would be moved to this day; `null`: a new one. */
  movesNoteId: idSchema.nullable(),
  words: z.string(),
}) satisfies z.ZodType<BloomOffer>;

/** What begins a bloom anew: readings before it are of the one before. */
const bloomSince = z.object({ day: daySchema, why: z.enum(['stop', 'bloom-taken-off', 'bloom-over']) });

/** The bloom that is going on, on the curve through the sittings. */
export const plantBloomSchema = z.discriminatedUnion('state', [
  z.object({
    state: z.literal('none-yet'),
    reason: z.enum(['no-sitting', 'no-colour']),
    hint: z.string(),
    /** Of every sitting that counts, oldest first. */
    readings: z.array(bloomReadingSchema),
    since: bloomSince.nullable(),
  }),
  z.object({
    state: z.literal('told'),
    readings: z.array(bloomReadingSchema),
    since: bloomSince.nullable(),
    stage: z.enum(['first-colour', 'opening', 'full', 'fading']),
    firstColour: bloomDateSchema,
    half: bloomDateSchema,
    full: bloomDateSchema,
    /** `null` until full bloom is reached. */
    fading: bloomDateSchema.nullable(),
    fullShare: shareRangeSchema,
    sureness: z.enum(SURENESSES),
    words: z.string(),
    why: z.string(),
    restsOn: z.enum(['plant', 'guess']),
    /** Sampled from the first reading of this bloom to its likely end, to be drawn as a line in its 90 % band. */
    curve: z.array(
      shareRangeSchema.extend({ day: daySchema, isForecast: z.boolean() }) satisfies z.ZodType<BloomPoint>,
    ),
    /** Flower heads seen at the newest sitting, from the side that shows most; `null` without a scale. */
    heads: z
      .object({
        day: daySchema,
        viewId: idSchema,
        least: z.int().nonnegative(),
        most: z.int().nonnegative(),
        words: z.string(),
      })
      .nullable(),
    /** `null` without a show to come. */
    againstShow: againstShowSchema.nullable(),
    offers: z.array(bloomOfferSchema),
  }),
]);
export type PlantBloom = z.infer<typeof plantBloomSchema>;

/** `POST /api/plants/:id/bloom-dates`: the grower's yes or no to an offered date. */
export const bloomDateFormSchema = z.object({
  event: z.enum(OFFERED_EVENTS),
  /** As offered, so that a date that has moved meanwhile is not put down unseen. */
  day: daySchema,
  said: z.enum(['yes', 'no']),
});
/** What became of it; undone by `DELETE /api/plants/:id/bloom-dates/:event`. */
export const bloomDateAnswerSchema = z.object({
  event: z.enum(OFFERED_EVENTS),
  said: z.enum(['yes', 'no']),
  /** The entry in the log; `null` after a no. */
  note: noteSchema.nullable(),
});
export type BloomDateAnswer = z.infer<typeof bloomDateAnswerSchema>;

const leafShare = z.object({ share, plusMinus: z.number().nonnegative() });

/** With how far the true share may lie from it, 95 %. */
const colourShare = leafShare.extend({ offBy: z.number().nonnegative() });

/** One photo's leaf; the zones to be drawn are in its report (`foliage.where`). */
const leafSeenSchema = z.object({
  sittingId: idSchema,
  viewId: idSchema,
  day: daySchema,
  turnDeg: turnDegSchema.nullable(),
  green: colourShare,
  yellow: colourShare,
  brown: colourShare,
  against: z.enum(['own', 'usual']),
});

const leafChangeSchema = z.object({
  tone: z.enum(['yellow', 'brown']),
  /** Up is more of it; `none` is within the plus-minus of both. */
  direction: z.enum(['up', 'down', 'none']),
  by: z.number(),
  plusMinus: z.number().nonnegative(),
});

/** Yellow and brown leaf now, and against the sitting before. */
export const plantLeafSchema = z.object({
  /** `null` when no photo of the newest sitting could be judged; `notCompared` says why. */
  newest: leafSeenSchema.nullable(),
  /** The sitting before that shows the same side, judged by the same measure; `null` when there is none. */
  before: leafSeenSchema.nullable(),
  changes: z.array(leafChangeSchema),
  words: z.string(),
  /** Why photos of the newest sitting were not judged, or are compared with no other. */
  notCompared: z.array(z.string()),
  /** Every judged sitting, oldest first: the view with most yellow. */
  history: z.array(leafSeenSchema.extend({ isComparable: z.boolean() })),
  /** What counts as this plant's healthy leaf. */
  learned: z.object({
    state: z.enum(['not-yet', 'learned']),
    /** Sittings it was learned from, and how many are wanted. */
    days: z.array(daySchema),
    wanted: z.int().positive(),
    /** Days on which the grower called the plant healthy; they go before its first sittings. */
    healthyDays: z.array(daySchema),
    /** The newest sitting, should it be one that can be called healthy. */
    canLearnFrom: daySchema.nullable(),
    words: z.string(),
  }),
});
export type PlantLeaf = z.infer<typeof plantLeafSchema>;

/** `PUT /api/plants/:id/healthy-days/:day`: the grower calls the plant's leaf healthy on that day, or takes it back. */
export const healthyDayFormSchema = z.object({
  healthy: z.boolean('Say whether the plant was healthy on that day.'),
});

/** Where light falls through. The sectors to be drawn are in the report (`gaps.sectors`). */
export const plantFillSchema = z.object({
  newest: z
    .object({
      sittingId: idSchema,
      viewId: idSchema,
      day: daySchema,
      thinClocks: z.array(z.int().min(1).max(12)),
      openBase: leafShare,
      tightness: leafShare,
      words: z.string(),
    })
    .nullable(),
  /** Each time that leaf was cleared, newest first, with the light at the base before and after. */
  cleanUps: z.array(
    z.object({
      noteId: idSchema,
      day: daySchema,
      beforeDay: daySchema.nullable(),
      afterDay: daySchema.nullable(),
      before: leafShare.nullable(),
      after: leafShare.nullable(),
      words: z.string(),
    }),
  ),
  /** Tightness beside the grower's other plants about as long after their last stop; `null` while there are too few. */
  tightnessWords: z.string().nullable(),
  comparedWith: z.int().nonnegative(),
});
export type PlantFill = z.infer<typeof plantFillSchema>;

/** Height, width and area since the last stop. */
export const growthNowSchema = z.object({
  points: z.array(
    z.object({
      day: daySchema,
      heightMm: z.number().positive(),
      widthMm: z.number().positive(),
      areaCm2: z.number().positive(),
      /** 95 % repeatability of a length as a share of itself; an area's is twice that. */
      plusMinusShare: z.number().nonnegative().nullable(),
    }),
  ),
  stops: z.array(daySchema),
  /** A week, with its 95 % interval, since the last stop; `null` without a sitting that has a scale. */
  rates: z.object({
    height: trendSegmentSchema.nullable(),
    width: trendSegmentSchema.nullable(),
    area: trendSegmentSchema.nullable(),
  }),
  words: z.string(),
});
export type GrowthNow = z.infer<typeof growthNowSchema>;

/** Whether the newest sitting looks limp; nothing is left out of the trend by it. */
export const plantWiltSchema = z.discriminatedUnion('state', [
  z.object({ state: z.literal('not-told'), words: z.string() }),
  z.object({
    state: z.enum(['firm', 'limp', 'dry-on-purpose']),
    sittingId: idSchema,
    viewId: idSchema,
    day: daySchema,
    /** The sitting it was compared with. */
    against: daySchema,
    /** By how much of itself each fell; below 0 it grew. */
    fallen: z.object({ height: z.number(), spread: z.number(), middle: z.number() }),
    words: z.string(),
    /** The reason to offer for leaving the sitting out, once the grower says yes (`PATCH /api/sittings/:id`); `null`: nothing to offer. */
    leaveOutFor: z.string().nullable(),
  }),
]);
export type PlantWilt = z.infer<typeof plantWiltSchema>;
