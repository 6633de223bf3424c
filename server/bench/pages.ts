import type { Day } from '../../core/day/day.ts';
import type { Bench, PlantPage } from '../schemas/pages.ts';
import type { Sitting } from '../schemas/sitting.ts';
import type { Database } from '../store/database.ts';
import { notesOfPlant } from '../store/notes.ts';
import { allPlants, type PlantRow } from '../store/plants.ts';
import { stopsOfPlant } from '../store/stops.ts';
import { type ViewRow, viewsOfPlant } from '../store/views.ts';
import { advisePlant } from './advise-plant.ts';
import { plantAnswer } from './plant-answer.ts';
import { trendsOf } from './trends.ts';
import { viewAnswer } from './view-answer.ts';

/** Everything one plant's page shows, as of `today`. */
export function plantPage(db: Database, plant: PlantRow, today: Day): PlantPage {
  const sittings = sittingsOf(viewsOfPlant(db, plant.id));
  const stops = stopsOfPlant(db, plant.id);
  const advised = advisePlant({ plant, sittings, stops, today });
  return {
    plant: plantAnswer(plant),
    sittings,
    stops,
    notes: notesOfPlant(db, plant.id),
    ...advised,
    trends: trendsOf(advised.trend, stops),
  };
}

/** Every plant of the bench, the neediest first, then by name. */
export function benchPage(db: Database, today: Day): Bench {
  const plants = allPlants(db);
  const rows = plants
    .filter((plant) => !plant.putAway)
    .map((plant) => {
      const { sittings, trend, advice } = plantPage(db, plant, today);
      return {
        plant: plantAnswer(plant),
        newest: sittings[0]?.views[0] ?? null,
        newestDay: sittings[0]?.day ?? null,
        sittingCount: sittings.length,
        trend,
        advice,
      };
    });
  rows.sort((a, b) => need(b) - need(a) || a.plant.name.localeCompare(b.plant.name, 'en'));
  return { plants: rows, putAway: plants.filter((plant) => plant.putAway).map(plantAnswer) };
}

/** The most urgent thing that a plant needs, 0 to 3. */
function need({ advice }: Bench['plants'][number]): number {
  return Math.max(0, ...advice.map(({ urgency }) => urgency));
}

/** Puts views that come sorted by day under their sittings. */
function sittingsOf(views: readonly ViewRow[]): Sitting[] {
  const sittings = new Map<string, Sitting>();
  for (const view of views) {
    const { sittingId, plantId, day, standId, standVersion } = view;
    const sitting = sittings.get(sittingId) ?? {
      id: sittingId,
      plantId,
      day,
      standId,
      standVersion,
      views: [],
    };
    sitting.views.push(viewAnswer(view));
    sittings.set(sittingId, sitting);
  }
  return [...sittings.values()];
}
