import { type BloomReading, readingOfViews } from '../../core/bloom/bloom-readings.ts';
import { addDays, type Day } from '../../core/day/day.ts';
import { bloomRecords, type SeasonNote } from '../../core/season/bloom-record.ts';
import type { SeasonKnowledge } from '../../core/season/days-to-bloom.ts';
import { DEFAULT_STOPS } from '../../core/season/default-stops.ts';
import { withOwnFigures } from '../../core/season/own-defaults.ts';
import type { Show } from '../../core/season/show.ts';
import type { WorkWord } from '../../core/season/work-now.ts';
import type { EntryRow } from '../schemas/show.ts';
import type { Note, Stop } from '../schemas/sitting.ts';
import type { OwnWorkRow } from '../schemas/work.ts';
import { rememberingPlants } from '../store/changes.ts';
import type { Database } from '../store/database.ts';
import { allEntries } from '../store/entries.ts';
import { type FlowerRow, flowerReadingsOf } from '../store/flower-readings.ts';
import { type KeepFit, keptFits } from '../store/kept-fits.ts';
import { allNotes } from '../store/notes.ts';
import { ownFigures } from '../store/own-figures.ts';
import { allOwnWork } from '../store/own-work.ts';
import { allPlants } from '../store/plants.ts';
import { allSeasonNotes } from '../store/season-notes.ts';
import { allShows } from '../store/shows.ts';
import { sittingDaysSince } from '../store/sittings.ts';
import { allStops } from '../store/stops.ts';
import { turnDaysSince } from '../store/turns.ts';
import { allWorkWords } from '../store/work-words.ts';

type ByPlant<T> = Pick<ReadonlyMap<string, readonly T[]>, 'get'>;

/** All that plans and work of any plant rest on. What grows with every sitting is read plant by plant, when it is asked for. */
export interface SeasonFacts {
  readonly today: Day;
  readonly shows: readonly Show[];
  readonly entries: readonly EntryRow[];
  readonly stops: ByPlant<Stop>;
  readonly notes: ByPlant<Note>;
  readonly seasonNotes: readonly SeasonNote[];
  readonly ownWork: ByPlant<OwnWorkRow>;
  readonly workWords: ByPlant<WorkWord>;
  readonly sittingDays: ByPlant<Day>;
  readonly turnDays: ByPlant<Day>;
  /** Share in flower, a reading a sitting, oldest first. */
  readonly flowerReadings: ByPlant<BloomReading>;
  readonly knowledge: SeasonKnowledge;
  /** Fits take long and are kept. */
  readonly keepFit: KeepFit;
}

/** Weekly work is counted from the last time it was done; what lies farther back is long lapsed. */
const WEEKLY_LOOKS_BACK_DAYS = 400;

const remembered =
  rememberingPlants<Omit<SeasonFacts, 'sittingDays' | 'turnDays' | 'flowerReadings' | 'keepFit'>>();
const rememberedSittingDays = rememberingPlants<readonly Day[]>();
const rememberedTurnDays = rememberingPlants<readonly Day[]>();
const rememberedReadings = rememberingPlants<readonly BloomReading[]>();

export function seasonFacts(db: Database, today: Day): SeasonFacts {
  const since = addDays(today, -WEEKLY_LOOKS_BACK_DAYS);
  const of = (plantId: string) => ({ plantId, asked: since });
  return {
    ...remembered(db, { plantId: null, asked: today }, () => factsOfAll(db, today)),
    keepFit: keptFits(db),
    sittingDays: {
      get: (id) => rememberedSittingDays(db, of(id), () => sittingDaysSince(db, id, since)),
    },
    turnDays: { get: (id) => rememberedTurnDays(db, of(id), () => turnDaysSince(db, id, since)) },
    flowerReadings: {
      get: (id) => rememberedReadings(db, of(id), () => readingsByDay(flowerReadingsOf(db, id))),
    },
  };
}

function factsOfAll(db: Database, today: Day) {
  const stops = byPlant(allStops(db));
  const notes = byPlant(allNotes(db));
  const seasonNotes = allSeasonNotes(db);
  const records = allPlants(db).flatMap(({ id, kind, variety }) =>
    bloomRecords({
      plantId: id,
      kind,
      variety,
      stops: stops.get(id) ?? [],
      log: notes.get(id) ?? [],
      notes: seasonNotes,
    }),
  );
  return {
    today,
    shows: allShows(db),
    entries: allEntries(db),
    stops,
    notes,
    seasonNotes,
    ownWork: byPlant(allOwnWork(db)),
    workWords: allWorkWords(db),
    knowledge: { defaults: withOwnFigures(DEFAULT_STOPS, ownFigures(db)), records },
  };
}

function byPlant<T extends { readonly plantId: string }>(rows: readonly T[]): Map<string, T[]> {
  const found = new Map<string, T[]>();
  for (const row of rows) {
    const together = found.get(row.plantId);
    if (together) together.push(row);
    else found.set(row.plantId, [row]);
  }
  return found;
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
