import { z } from 'zod';
import { adviceSchema } from '../schemas/advice.ts';
import { problemSchema } from '../schemas/basics.ts';
import {
  bloomDateAnswerSchema,
  bloomDateFormSchema,
  healthyDayFormSchema,
  plantLeafSchema,
} from '../schemas/condition.ts';
import { cutChangeSchema, cutListSchema } from '../schemas/cuts.ts';
import { filmFormSchema, filmSchema } from '../schemas/film.ts';
import { backupPlanFormSchema, checkFormSchema, keepingSchema } from '../schemas/keeping.ts';
import { plantLightSchema, turnChangeSchema, turnFormSchema, turnSchema } from '../schemas/light.ts';
import {
  benchSchema,
  benchViewSchema,
  earlierSittingSchema,
  plantPageSchema,
  progressSchema,
  trendPointSchema,
  uploadFormSchema,
  uploadSchema,
} from '../schemas/pages.ts';
import { doorCodeSchema, doorSchema, phoneFormSchema, phoneListSchema } from '../schemas/phones.ts';
import { plantChangeSchema, plantFormSchema, plantSchema } from '../schemas/plant.ts';
import { remeasuringSchema } from '../schemas/remeasuring.ts';
import { longStemSchema, reportSchema } from '../schemas/report.ts';
import { rimFormSchema } from '../schemas/rim-by-hand.ts';
import {
  calendarSchema,
  defaultsSchema,
  manyRecordsAnswerSchema,
  manyRecordsSchema,
  ownFigureSchema,
  plantSeasonSchema,
  plantYearSchema,
} from '../schemas/season.ts';
import { seasonNoteFormSchema, seasonNoteSchema } from '../schemas/season-note.ts';
import {
  entryChangeSchema,
  entryFormSchema,
  showChangeSchema,
  showFormSchema,
  showListSchema,
  showSchema,
} from '../schemas/show.ts';
import {
  noteChangeSchema,
  noteFormSchema,
  noteSchema,
  sittingChangeSchema,
  sittingSchema,
  stopChangeSchema,
  stopFormSchema,
  stopSchema,
  viewChangeSchema,
  viewSchema,
} from '../schemas/sitting.ts';
import {
  newStandSchema,
  standChangeSchema,
  standListSchema,
  standOverlaySchema,
  standSchema,
} from '../schemas/stand.ts';
import { acceptedFormSchema, strokesFormSchema } from '../schemas/stroke.ts';
import { hullSolidSchema, turnedReportSchema } from '../schemas/turned.ts';
import {
  ownWorkChangeSchema,
  ownWorkFormSchema,
  ownWorkSchema,
  workListSchema,
  workSchema,
  workWordsSchema,
} from '../schemas/work.ts';

/** What is sent. A default makes a field optional here. */
const SENT = {
  PlantForm: plantFormSchema,
  PlantChange: plantChangeSchema,
  UploadForm: uploadFormSchema,
  PhoneForm: phoneFormSchema,
  BackupPlanForm: backupPlanFormSchema,
  CheckForm: checkFormSchema,
  ViewChange: viewChangeSchema,
  StopForm: stopFormSchema,
  StopChange: stopChangeSchema,
  NoteForm: noteFormSchema,
  NoteChange: noteChangeSchema,
  TurnForm: turnFormSchema,
  TurnChange: turnChangeSchema,
  NewStand: newStandSchema,
  StandChange: standChangeSchema,
  SittingChange: sittingChangeSchema,
  CutChange: cutChangeSchema,
  StrokesForm: strokesFormSchema,
  RimForm: rimFormSchema,
  FilmForm: filmFormSchema,
  Film: filmSchema,
  AcceptedForm: acceptedFormSchema,
  ShowForm: showFormSchema,
  ShowChange: showChangeSchema,
  EntryForm: entryFormSchema,
  EntryChange: entryChangeSchema,
  OwnWorkForm: ownWorkFormSchema,
  OwnWorkChange: ownWorkChangeSchema,
  WorkWords: workWordsSchema,
  ManyRecords: manyRecordsSchema,
  SeasonNoteForm: seasonNoteFormSchema,
  OwnFigure: ownFigureSchema,
  BloomDateForm: bloomDateFormSchema,
  HealthyDayForm: healthyDayFormSchema,
} as const;

/** What is answered. */
const ANSWERED = {
  Advice: adviceSchema,
  BloomDate: bloomDateAnswerSchema,
  LearnedLeaf: plantLeafSchema.shape.learned,
  Bench: benchSchema,
  BenchView: benchViewSchema,
  CutList: cutListSchema,
  Door: doorSchema,
  DoorCode: doorCodeSchema,
  HullSolid: hullSolidSchema,
  Keeping: keepingSchema,
  Remeasuring: remeasuringSchema,
  LongStem: longStemSchema,
  Note: noteSchema,
  PhoneList: phoneListSchema,
  Plant: plantSchema,
  PlantPage: plantPageSchema,
  PlantLight: plantLightSchema,
  Problem: problemSchema,
  Progress: progressSchema,
  Report: reportSchema,
  Sitting: sittingSchema,
  SittingList: z.array(sittingSchema),
  EarlierSitting: earlierSittingSchema,
  Stand: standSchema,
  StandList: standListSchema,
  StandOverlay: standOverlaySchema,
  Stop: stopSchema,
  TrendPoint: trendPointSchema,
  Turn: turnSchema,
  TurnedReport: turnedReportSchema,
  Upload: uploadSchema,
  View: viewSchema,
  Show: showSchema,
  ShowList: showListSchema,
  Entry: plantSeasonSchema.shape.entries.element,
  PlantSeason: plantSeasonSchema,
  PlantYear: plantYearSchema,
  OwnWork: ownWorkSchema,
  Work: workSchema,
  WorkList: workListSchema,
  ManyRecordsAnswer: manyRecordsAnswerSchema,
  Calendar: calendarSchema,
  SeasonNote: seasonNoteSchema,
  SeasonNoteList: z.array(seasonNoteSchema),
  Defaults: defaultsSchema,
} as const;

export type SchemaName = keyof typeof SENT | keyof typeof ANSWERED;

/** The zod schemas as the `components.schemas` of an OpenAPI 3.1 document. */
export function schemaComponents(): Record<string, unknown> {
  return { ...jsonSchemas(SENT, 'input'), ...jsonSchemas(ANSWERED, 'output') };
}

function jsonSchemas(schemas: Readonly<Record<string, z.ZodType>>, io: 'input' | 'output'): object {
  const registry = z.registry<{ id: string }>();
  for (const [id, schema] of Object.entries(schemas)) registry.add(schema, { id });
  const made = z.toJSONSchema(registry, { io, uri: (id) => `#/components/schemas/${id}` });
  return Object.fromEntries(
    Object.entries(made.schemas).map(([id, { $schema: _, $id: __, ...schema }]) => [id, schema]),
  );
}
