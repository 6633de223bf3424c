import type { DayRange } from '../../core/season/work.ts';
import type { WorkNow } from '../../core/season/work-now.ts';
import { allAimedPlants } from '../bench/aimed-plant.ts';
import type { WorkList } from '../schemas/work.ts';
import { rememberingPlants } from '../store/changes.ts';
import type { Database } from '../store/database.ts';
import { workOfPlant } from './plant-season.ts';
import type { SeasonFacts } from './season-facts.ts';

const rememberedWork = rememberingPlants<readonly WorkNow[]>();

/** The work of all plants on the bench in a range of days, by day. */
export function workList(db: Database, facts: SeasonFacts, range: DayRange): WorkList {
  const work = allAimedPlants(db, facts.today)
    .filter(({ putAway }) => !putAway)
    .flatMap((plant) =>
      rememberedWork(db, { plantId: plant.id, asked: [facts.today, range.from, range.to].join() }, () =>
        workOfPlant(facts, plant, range),
      ).map((one) => ({ ...one, plantName: plant.name })),
    );
  work.sort((one, other) => (one.day === other.day ? 0 : one.day < other.day ? -1 : 1));
  return { today: facts.today, work };
}
