import type { Day } from '../../core/day/day.ts';
import { allAimedPlants } from '../bench/aimed-plant.ts';
import type { ShowList } from '../schemas/show.ts';
import type { Database } from '../store/database.ts';
import { allEntries } from '../store/entries.ts';
import { allShows } from '../store/shows.ts';
import { againstClass, plantSize } from './entry-answers.ts';

/** Every show with the plants entered for it: those to come by day, then those over, the last one first. */
export function showList(db: Database, today: Day): ShowList {
  const plants = new Map(allAimedPlants(db, today).map((plant) => [plant.id, plant]));
  const entries = allEntries(db);
  const shows = allShows(db).map((show) => {
    const isOver = show.day < today;
    return {
      show,
      isOver,
      entries: entries.flatMap((entry) => {
        const plant = plants.get(entry.plantId);
        if (entry.showId !== show.id || plant === undefined || plant.putAway) return [];
        return {
          ...entry,
          ...againstClass(entry, show, isOver ? null : plantSize(db, plant)),
          plantName: plant.name,
          isAim: plant.showId === show.id && !isOver,
        };
      }),
    };
  });
  return {
    shows: [...shows.filter(({ isOver }) => !isOver), ...shows.filter(({ isOver }) => isOver).reverse()],
  };
}
