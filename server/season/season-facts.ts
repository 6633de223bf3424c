import { type BloomReading, readingOfViews } from '../../core/bloom/bloom-readings.ts';
import { addDays, type Day } from '../../core/day/day.ts';
import type { PlantKind } from '../../core/plant.ts';
import { type BloomRecord, bloomRecords, type SeasonNote } from '../../core/season/bloom-record.ts';
import type { SeasonKnowledge } from '../../core/season/days-to-bloom.ts';
import type { Show } from '../../core/season/show.ts';
import type { WorkWord } from '../../core/season/work-now.ts';
import { type Fits, fittingNow } from '../condition/fits.ts';
import type { EntryRow } from '../schemas/show.ts';
import type { Note, Stop } from '../schemas/sitting.ts';
import type { OwnWorkRow } from '../schemas/work.ts';
import type { Database } from '../store/database.ts';
import { type FlowerRow, flowerReadingsOf } from '../store/flower-readings.ts';
import { notesOfPlant } from '../store/notes.ts';
import { ownWorkOfPlant } from '../store/own-work.ts';
import type { PlantRow } from '../store/plants.ts';
import { rememberingPlants } from '../store/remembering.ts';
import { sittingDaysSince } from '../store/sittings.ts';
import { stopsOfPlant } from '../store/stops.ts';
import { turnDaysSince } from '../store/turns.ts';
import { workWordsOfPlant } from '../store/work-words.ts';
import { knownDefaults, knownEntries, knownPlants, knownSeasonNotes, knownShows } from './shared-facts.ts';

/** By plant id; read plant by plant, when it is asked for, and newest first where it has days. */
interface ByPlant<T> {
  get(plantId: string): readonly T[];
}

/** All that plans and work of any plant rest on, as the store is while nothing is awaited. */
export interface SeasonFacts {
  readonly today: Day;
  readonly shows: readonly Show[];
  readonly seasonNotes: readonly SeasonNote[];
  /** By the day of their shows. */
  readonly entries: ByPlant<EntryRow>;
  readonly stops: ByPlant<Stop>;
  readonly notes: ByPlant<Note>;
  readonly ownWork: ByPlant<OwnWorkRow>;
  readonly workWords: ByPlant<WorkWord>;
  /** Oldest first. */
  readonly sittingDays: ByPlant<Day>;
  /** Oldest first. */
  readonly turnDays: ByPlant<Day>;
  /** Share in flower, a reading a sitting, oldest first. */
  readonly flowerReadings: ByPlant<BloomReading>;
  /** Seasons on record, oldest first. */
  readonly records: ByPlant<BloomRecord>;
  /** What is known of a kind: the table of stops, and the records of all its plants. */
  readonly knowledgeOf: (kind: PlantKind) => SeasonKnowledge;
  /** All that a plant's season rests on beside its own rows, to be remembered by (`rememberingPlants`). */
  readonly restsOn: (plant: Pick<PlantRow, 'id' | 'kind'>) => readonly unknown[];
  readonly fits: Fits;
}

/** Weekly work is counted from the last time it was done; what lies farther back is long lapsed. */
const WEEKLY_LOOKS_BACK_DAYS = 400;

const rememberedStops = rememberingPlants<readonly Stop[]>();
const rememberedNotes = rememberingPlants<readonly Note[]>();
const rememberedOwnWork = rememberingPlants<readonly OwnWorkRow[]>();
const rememberedWorkWords = rememberingPlants<readonly WorkWord[]>();
const rememberedSittingDays = rememberingPlants<readonly Day[]>({ ofPhotos: true });
const rememberedTurnDays = rememberingPlants<readonly Day[]>();
const rememberedReadings = rememberingPlants<readonly BloomReading[]>({ ofPhotos: true });
const rememberedRecords = rememberingPlants<readonly BloomRecord[]>({ isSteady: true });

/** @param fits of blooms; what is not kept is reckoned on the spot when left out */
export function seasonFacts(db: Database, today: Day, fits: Fits = fittingNow(db)): SeasonFacts {
  const since = addDays(today, -WEEKLY_LOOKS_BACK_DAYS);
  const shows = knownShows(db);
  const stops = {
    get: (plantId: string) => rememberedStops(db, { plantId, asked: [] }, () => stopsOfPlant(db, plantId)),
  };
  const notes = {
    get: (plantId: string) => rememberedNotes(db, { plantId, asked: [] }, () => notesOfPlant(db, plantId)),
  };
  const seasonNotes = knownSeasonNotes(db);
  const recordsOf = ({ id, kind, variety }: PlantRow) =>
    rememberedRecords(db, { plantId: id, asked: [seasonNotes] }, () =>
      bloomRecords({
        plantId: id,
        kind,
        variety,
        stops: stops.get(id),
        log: notes.get(id),
        notes: seasonNotes,
      }),
    );
  const knowledge = new Map<PlantKind, SeasonKnowledge>();
  const knowledgeOf = (kind: PlantKind) => {
    const known = knowledge.get(kind) ?? knowledgeOfKind(db, kind, recordsOf);
    knowledge.set(kind, known);
    return known;
  };
  return {
    today,
    shows,
    seasonNotes,
    entries: { get: (plantId) => knownEntries(db, plantId) },
    stops,
    notes,
    ownWork: {
      get: (plantId) => rememberedOwnWork(db, { plantId, asked: [] }, () => ownWorkOfPlant(db, plantId)),
    },
    workWords: {
      get: (plantId) => rememberedWorkWords(db, { plantId, asked: [] }, () => workWordsOfPlant(db, plantId)),
    },
    sittingDays: {
      get: (plantId) =>
        rememberedSittingDays(db, { plantId, asked: [since] }, () => sittingDaysSince(db, plantId, since)),
    },
    turnDays: {
      get: (plantId) =>
        rememberedTurnDays(db, { plantId, asked: [since] }, () => turnDaysSince(db, plantId, since)),
    },
    flowerReadings: {
      get: (plantId) =>
        rememberedReadings(db, { plantId, asked: [] }, () => readingsByDay(flowerReadingsOf(db, plantId))),
    },
    records: {
      get: (plantId) =>
        knownPlants(db)
          .filter(({ id }) => id === plantId)
          .flatMap(recordsOf),
    },
    knowledgeOf,
    restsOn: ({ id, kind }) => [today, shows, knowledgeOf(kind), fits.cameFor(id)],
    fits,
  };
}

interface KindKnown {
  readonly restsOn: readonly unknown[];
  readonly knowledge: SeasonKnowledge;
}
const lastKnown = new WeakMap<Database, Map<PlantKind, KindKnown>>();

/** The same object as long as the table and the records of all plants of the kind are the same. */
function knowledgeOfKind(
  db: Database,
  kind: PlantKind,
  recordsOf: (plant: PlantRow) => readonly BloomRecord[],
): SeasonKnowledge {
  const defaults = knownDefaults(db);
  const records = knownPlants(db)
    .filter((plant) => plant.kind === kind)
    .map(recordsOf);
  const restsOn = [defaults, ...records];
  const kinds = lastKnown.get(db) ?? new Map<PlantKind, KindKnown>();
  lastKnown.set(db, kinds);
  const last = kinds.get(kind);
  const isSame =
    last?.restsOn.length === restsOn.length && last.restsOn.every((one, at) => one === restsOn[at]);
  if (isSame) return last.knowledge;
  const knowledge = { defaults, records: records.flat() };
  kinds.set(kind, { restsOn, knowledge });
  return knowledge;
}

/** Rows come by day; those of one day are one sitting. */
function readingsByDay(views: readonly FlowerRow[]): BloomReading[] {
  const days = new Map<Day, FlowerRow[]>();
  for (const view of views) {
    const together = days.get(view.day);
    if (together) together.push(view);
    else days.set(view.day, [view]);
  }
  return [...days].map(([day, together]) => readingOfViews(day, together));
}
