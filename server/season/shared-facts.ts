import { DEFAULT_STOPS } from '../../core/season/default-stops.ts';
import { withOwnFigures } from '../../core/season/own-defaults.ts';
import type { Show } from '../../core/season/show.ts';
import type { StopDefaults } from '../../core/season/stop-defaults.ts';
import type { SeasonNoteRow } from '../schemas/season-note.ts';
import type { EntryRow } from '../schemas/show.ts';
import type { Database } from '../store/database.ts';
import { entriesOfPlant } from '../store/entries.ts';
import { ownFigures } from '../store/own-figures.ts';
import { allPlants, type PlantRow } from '../store/plants.ts';
import { rememberingPlants, rememberingTables } from '../store/remembering.ts';
import { allSeasonNotes } from '../store/season-notes.ts';
import { allShows } from '../store/shows.ts';

/** What is read for every plant at once: the same object as long as it reads the same, so that it can be told whether it has changed. */

const rememberedPlants = rememberingTables<readonly PlantRow[]>(['plants'], { isSteady: true });
const rememberedShows = rememberingTables<readonly Show[]>(['shows'], { isSteady: true });
const rememberedNotes = rememberingTables<readonly SeasonNoteRow[]>(['season_notes'], { isSteady: true });
const rememberedDefaults = rememberingTables<StopDefaults>(['own_figures'], { isSteady: true });
const rememberedEntries = rememberingPlants<readonly EntryRow[]>({ isSteady: true });

/** Every plant, also those put away, in the order of `allPlants`. */
export function knownPlants(db: Database): readonly PlantRow[] {
  return rememberedPlants(db, [], () => allPlants(db));
}

/** Every show, by day. */
export function knownShows(db: Database): readonly Show[] {
  return rememberedShows(db, [], () => allShows(db));
}

/** Every word on a stretch of time, the latest first. */
export function knownSeasonNotes(db: Database): readonly SeasonNoteRow[] {
  return rememberedNotes(db, [], () => allSeasonNotes(db));
}

/** The table of stops with the grower's own figures laid over it. */
export function knownDefaults(db: Database): StopDefaults {
  return rememberedDefaults(db, [], () => withOwnFigures(DEFAULT_STOPS, ownFigures(db)));
}

/** The shows that a plant is entered for, by day. */
export function knownEntries(db: Database, plantId: string): readonly EntryRow[] {
  return rememberedEntries(db, { plantId, asked: [knownShows(db)] }, () => entriesOfPlant(db, plantId));
}
