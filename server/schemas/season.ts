import { z } from 'zod';
import type { OtherShow } from '../../core/season/aimed-show.ts';
import type { BloomDay } from '../../core/season/bloom-likely.ts';
import type { BloomRecord } from '../../core/season/bloom-record.ts';
import { type Figure, STANDINGS } from '../../core/season/figure.ts';
import { STOP_ROLES } from '../../core/season/stop-defaults.ts';
import type { StopEffect } from '../../core/season/stop-effect.ts';
import type { PlannedStop } from '../../core/season/stop-plan.ts';
import { daySchema, idSchema } from './basics.ts';
import { plantKindSchema } from './plant.ts';
import { seasonNoteSchema } from './season-note.ts';
import { entryCheckSchema, entrySchema, showSchema } from './show.ts';
import { noteSchema, stopSchema } from './sitting.ts';
import { ownWorkSchema, workSchema } from './work.ts';

const depth = z.enum(['tip', 'deep']);
const days = z.tuple([daySchema, daySchema]).readonly();
const numbers = z.tuple([z.number(), z.number()]).readonly();
const dayWindow = z.object({ from: daySchema, to: daySchema });

export const figureSchema = z.object({
  value: z.number(),
  standing: z.enum(STANDINGS),
  words: z.string(),
}) satisfies z.ZodType<Figure>;

export const bloomRecordSchema = z.object({
  plantId: idSchema,
  kind: plantKindSchema,
  variety: z.string(),
  depth,
  stopDay: daySchema,
  firstFlowerDay: daySchema.nullable(),
  fullBloomDay: daySchema.nullable(),
  seasonNotes: z.array(z.string()).readonly(),
  leftOut: z.string().nullable(),
}) satisfies z.ZodType<BloomRecord>;

const effectSchema = z.object({
  stopDay: daySchema,
  depth,
  chanceLate: z.number(),
  chanceInBloom: z.number(),
  bloom90: days,
  words: z.string(),
}) satisfies z.ZodType<StopEffect>;

const stepSchema = z.object({
  role: z.enum(STOP_ROLES),
  depth,
  window: dayWindow,
  usual: dayWindow.nullable(),
  latest: daySchema,
  state: z.enum(['to-come', 'open', 'overdue', 'done', 'left-out']),
  doneOn: daySchema.nullable(),
  offDays: z.number().nullable(),
  words: z.string(),
}) satisfies z.ZodType<PlannedStop>;

/** Days from a last stop to full bloom, and what that figure is made of. */
export const daysToBloomSchema = z.object({
  depth,
  meanDays: z.number(),
  /** Holds the true mean with 90 %. */
  mean90Days: numbers,
  /** Holds the next plant's days with 90 %. */
  next90Days: numbers,
  shares: z.object({ default: z.number(), own: z.number(), kind: z.number() }),
  shareInWords: z.string(),
  sumInWords: z.string(),
  standing: z.string(),
  used: z.array(bloomRecordSchema).readonly(),
  leftOut: z.array(bloomRecordSchema).readonly(),
});

/** The stops planned back from the show. */
export const stopPlanSchema = z.object({
  showDay: daySchema,
  acceptedLate: z.number(),
  steps: z.array(stepSchema).readonly(),
  last: z.object({
    fromDay: daySchema,
    lastDay: daySchema,
    daysBeforeShow: z.number(),
    chanceLate: z.number(),
  }),
  bloomLastsDays: z.number(),
  planned: daysToBloomSchema,
  effect: effectSchema.nullable(),
  restsOn: z.enum(['written', 'planned', 'today']),
  /** The day on which it came into full bloom, once that is noted: then chances are past. */
  bloomedOn: daySchema.nullable(),
  words: z.string(),
});

/** Day by day, how likely the plant is in full bloom. */
export const bloomDaysSchema = z.array(
  z.object({ day: daySchema, chance: z.number() }) satisfies z.ZodType<BloomDay>,
);

const otherShowSchema = z.object({
  showId: idSchema,
  chanceInBloom: z.number(),
  chanceLate: z.number(),
  words: z.string(),
}) satisfies z.ZodType<OtherShow>;

/** `GET /api/plants/:id/season`: show, plan, work, records of one plant. */
export const plantSeasonSchema = z.object({
  plantId: idSchema,
  today: daySchema,
  /** By day, those that are over too. */
  entries: z.array(
    entrySchema.extend({
      show: showSchema,
      isOver: z.boolean(),
      isAim: z.boolean(),
      checks: z.array(entryCheckSchema),
      /** What the plan for the aimed show does to this one; `null` for that one, and where nothing is known. */
      effect: otherShowSchema.nullable(),
    }),
  ),
  plan: stopPlanSchema.nullable(),
  planWhyNot: z.string().nullable(),
  /** Of the stop that the plan rests on; empty without a plan. */
  bloomDays: bloomDaysSchema,
  /** The plant's own seasons, oldest first. */
  records: z.array(bloomRecordSchema),
  work: z.array(workSchema),
  ownWork: z.array(ownWorkSchema),
  stops: z.array(stopSchema),
  notes: z.array(noteSchema),
  seasonNotes: z.array(seasonNoteSchema),
});
export type PlantSeasonAnswer = z.infer<typeof plantSeasonSchema>;

/** `GET /api/defaults`: the table of stops with the grower's own figures laid over it. */
export const defaultsSchema = z.object({
  figures: z.array(
    z.object({
      key: z.string(),
      kind: plantKindSchema.nullable(),
      label: z.string(),
      unit: z.enum(['days', 'share', 'records']),
      least: z.number(),
      most: z.number(),
      isWhole: z.boolean(),
      /** As it counts now; `null` where nothing is known. */
      figure: figureSchema.nullable(),
      isOwn: z.boolean(),
    }),
  ),
});
export type Defaults = z.infer<typeof defaultsSchema>;

/** `null` goes back to the default. */
export const ownFigureSchema = z.object({ value: z.number('Give a number.').nullable() });

/** `GET /api/calendar?from=…&to=…`: the season of all plants on the bench. */
export const calendarSchema = z.object({
  today: daySchema,
  from: daySchema,
  to: daySchema,
  weeks: z.array(z.object({ year: z.int(), week: z.int(), monday: daySchema })),
  shows: z.array(showSchema),
  plants: z.array(
    z.object({
      plantId: idSchema,
      name: z.string(),
      kind: plantKindSchema,
      variety: z.string(),
      showIds: z.array(idSchema),
      aimShowId: idSchema.nullable(),
      /** A fit of its photos is still being reckoned: what follows from its bloom is told later. */
      isBloomUnderWay: z.boolean(),
      steps: z.array(stepSchema).readonly(),
      bloom90: days.nullable(),
      bloomLastsDays: z.number().nullable(),
      stops: z.array(stopSchema),
      notes: z.array(noteSchema),
      work: z.array(workSchema),
    }),
  ),
  /** Where calendar programs subscribe: a path that cannot be guessed. */
  subscribePath: z.string(),
});
export type Calendar = z.infer<typeof calendarSchema>;

const scoreSchema = z.object({ value: z.number(), plusMinus: z.number() }).nullable();
const yearSittingSchema = z.object({
  sittingId: idSchema,
  day: daySchema,
  roundness: scoreSchema,
  symmetry: scoreSchema,
  lopsidedness: scoreSchema,
  setAside: z.string().nullable(),
});

/** `GET /api/plants/:id/year?from=…&to=…`: a plant's year. */
export const plantYearSchema = z.object({
  plantId: idSchema,
  name: z.string(),
  kind: plantKindSchema,
  variety: z.string(),
  from: daySchema,
  to: daySchema,
  show: showSchema.nullable(),
  /** What happened on the day, as noted with the entry or in the log. */
  result: z.string().nullable(),
  sittings: z.array(yearSittingSchema.extend({ pictureUrl: z.string().nullable() })),
  stops: z.array(z.object({ day: daySchema, depth })).readonly(),
  log: z.array(noteSchema),
  bloom: z.object({
    firstFlowerDay: daySchema.nullable(),
    fullBloomDay: daySchema.nullable(),
    daysFromLastStop: z.number().nullable(),
    daysAfterShow: z.number().nullable(),
  }),
  atShow: yearSittingSchema.nullable(),
  plan: stopPlanSchema.nullable(),
  lessons: z.array(z.string()).readonly(),
});
export type PlantYear = z.infer<typeof plantYearSchema>;

/** One record written down for many plants at once. */
export const manyRecordsSchema = z.object({
  plantIds: z.array(idSchema).min(1, 'Choose a plant first.').max(500, 'Take 500 plants or fewer at once.'),
  record: z.discriminatedUnion('type', [
    z.object({
      type: z.literal('stop'),
      day: daySchema,
      depth,
      note: z.string().trim().max(500, 'Keep the note to 500 letters or fewer.').default(''),
    }),
    z.object({
      type: z.literal('note'),
      day: daySchema,
      kind: noteSchema.shape.kind.unwrap(),
      text: z.string().trim().max(2000, 'Keep the note to 2000 letters or fewer.').default(''),
    }),
  ]),
});
/** What was written down: ids by which each can be taken back. */
export const manyRecordsAnswerSchema = z.object({
  type: z.enum(['stop', 'note']),
  ids: z.array(idSchema),
  /** Turns of pots whose side to the light is known: written to their light ledger in place of a line of the log. */
  turnIds: z.array(idSchema),
});
