import type { Day } from '../../core/day/day.ts';
import { dayInWords } from '../../core/day/day-in-words.ts';
import { aimedShow } from '../../core/season/aimed-show.ts';
import type { Entry, Show } from '../../core/season/show.ts';
import { emptyShow } from '../schemas/show.ts';
import { knownEntries, knownPlants, knownShows } from '../season/shared-facts.ts';
import type { Database } from '../store/database.ts';
import { setEntry, withdraw } from '../store/entries.ts';
import { changePlant, type PlantRow, plantById } from '../store/plants.ts';
import { rememberingPlants } from '../store/remembering.ts';
import { addShow, showOfDay } from '../store/shows.ts';

/** A plant with the show that its stops are planned for. */
export interface AimedPlant extends PlantRow {
  /** The day of that show, or of the last one when all are over; `null` when it was never entered. */
  readonly showDay: Day | null;
  readonly showId: string | null;
}

/** The plant with its show as of `today`; `null` when there is no such plant. */
export function aimedPlant(db: Database, id: string, today: Day): AimedPlant | null {
  const plant = plantById(db, id);
  return plant === null ? null : withAim(db, plant, today);
}

const remembered = rememberingPlants<AimedPlant>();

/** Every plant with its show as of `today`. */
export function allAimedPlants(db: Database, today: Day): AimedPlant[] {
  const asked = [today, knownShows(db)];
  return knownPlants(db).map((plant) =>
    remembered(db, { plantId: plant.id, asked }, () => withAim(db, plant, today)),
  );
}

function withAim(db: Database, plant: PlantRow, today: Day): AimedPlant {
  const [shows, entries] = [knownShows(db), knownEntries(db, plant.id)];
  const found = aimedShow(plant.id, shows, entries, { today, picked: plant.aimShowId });
  const show = found?.aim ?? lastOver(plant.id, shows, entries);
  return { ...plant, showDay: show?.day ?? null, showId: show?.id ?? null };
}

function lastOver(plantId: string, shows: readonly Show[], entries: readonly Entry[]): Show | null {
  const entered = new Set(entries.filter((entry) => entry.plantId === plantId).map(({ showId }) => showId));
  return shows.findLast(({ id }) => entered.has(id)) ?? null;
}

/**
 * Takes a bare day as the plant's show: enters it for the show of that day, which is made when there is none. `null` withdraws it from
 * the show it is aimed at.
 */
export function aimAtDay(db: Database, plant: AimedPlant, day: Day | null): void {
  if (day === plant.showDay) return;
  if (day === null) {
    if (plant.showId !== null) withdraw(db, plant.id, plant.showId);
    return;
  }
  const showId =
    showOfDay(db, day)?.id ?? addShow(db, { ...emptyShow, name: `Show on ${dayInWords(day)}`, day });
  setEntry(db, { plantId: plant.id, showId, classId: null, result: '' });
  changePlant(db, plant.id, { ...plant, aimShowId: showId });
}
