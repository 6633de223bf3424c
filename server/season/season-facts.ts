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
import type { Database } from '../store/database.ts';
import { allEntries } from '../store/entries.ts';
import { allFlowerReadings, type FlowerRow } from '../store/flower-readings.ts';
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

type ByPlant<T> = ReadonlyMap<string, readonly T[]>;

/** All that plans and work of any plant rest on, read once for a request. */
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
}

/** Weekly work is counted from the last time it was done; what lies farther back is long lapsed. */
const WEEKLY_LOOKS_BACK_DAYS = 400;

export function seasonFacts(db: Database, today: Day): SeasonFacts {
  const stops = byPlant(allStops(db));
  const notes = byPlant(allNotes(db));
  const seasonNotes = allSeasonNotes(db);
  const since = addDays(today, -WEEKLY_LOOKS_BACK_DAYS);
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
    sittingDays: daysByPlant(sittingDaysSince(db, since)),
    turnDays: daysByPlant(turnDaysSince(db, since)),
    flowerReadings: readingsByPlant(allFlowerReadings(db)),
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

function daysByPlant(rows: readonly { readonly plantId: string; readonly day: Day }[]): Map<string, Day[]> {
  return new Map([...byPlant(rows)].map(([id, days]) => [id, days.map(({ day }) => day)]));
}

/** Rows come by day; those of one plant and day are one sitting. */
function readingsByPlant(rows: readonly FlowerRow[]): Map<string, BloomReading[]> {
  return new Map(
    [...byPlant(rows)].map(([id, views]) => {
      const days = new Map<Day, FlowerRow[]>();
      for (const view of views) days.set(view.day, [...(days.get(view.day) ?? []), view]);
      return [id, [...days].map(([day, together]) => readingOfViews(day, together))];
    }),
  );
}
