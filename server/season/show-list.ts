import type { Day } from '../../core/day/day.ts';
import type { AimedPlant } from '../bench/aimed-plant.ts';
import type { ShowList } from '../schemas/show.ts';
import type { Database } from '../store/database.ts';
import { rememberingPlants } from '../store/remembering.ts';
import { againstClass, plantSize } from './entry-answers.ts';
import { inTurns } from './in-turns.ts';
import type { SeasonFacts } from './season-facts.ts';
import { knownEntries, knownShows } from './shared-facts.ts';

type ListedEntry = ShowList['shows'][number]['entries'][number];

const remembered = rememberingPlants<readonly ListedEntry[]>();

/** Every show with the plants entered for it: those to come by day, then those over, the last one first. */
export async function showList(db: Database, facts: () => SeasonFacts): Promise<ShowList> {
  const listed = await inTurns(db, facts, ({ today, shows }, plant) =>
    remembered(db, { plantId: plant.id, asked: [today, shows] }, () => listedEntries(db, plant, today)),
  );
  const { today, shows: known } = facts();
  const byShow = new Map<string, ListedEntry[]>(known.map(({ id }) => [id, []]));
  for (const entry of listed.flat()) byShow.get(entry.showId)?.push(entry);
  const shows = known.map((show) => ({
    show,
    isOver: show.day < today,
    entries: byShow.get(show.id) ?? [],
  }));
  return {
    shows: [...shows.filter(({ isOver }) => !isOver), ...shows.filter(({ isOver }) => isOver).reverse()],
  };
}

function listedEntries(db: Database, plant: AimedPlant, today: Day): ListedEntry[] {
  const shows = new Map(knownShows(db).map((show) => [show.id, show]));
  const entered = knownEntries(db, plant.id);
  const isToCome = entered.some(({ showId }) => (shows.get(showId)?.day ?? '') >= today);
  const size = isToCome ? plantSize(db, plant) : null;
  return entered.flatMap((entry) => {
    const show = shows.get(entry.showId);
    if (show === undefined) return [];
    const isOver = show.day < today;
    return {
      ...entry,
      ...againstClass(entry, show, isOver ? null : size),
      plantName: plant.name,
      isAim: plant.showId === show.id && !isOver,
    };
  });
}
