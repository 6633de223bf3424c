import type { DayRange } from '../../core/season/work.ts';
import type { AimedPlant } from '../bench/aimed-plant.ts';
import { bloomNow } from '../condition/bloom-so-far.ts';
import type { WorkList } from '../schemas/work.ts';
import type { Database } from '../store/database.ts';
import { rememberingPlants } from '../store/remembering.ts';
import { inTurns } from './in-turns.ts';
import { workOfPlant } from './plant-season.ts';
import type { SeasonFacts } from './season-facts.ts';

interface ListedWork {
  readonly isUnderWay: boolean;
  readonly work: WorkList['work'];
}
const rememberedWork = rememberingPlants<ListedWork>();

/** The work of all plants on the bench in a range of days, by day. */
export async function workList(db: Database, facts: () => SeasonFacts, range: DayRange): Promise<WorkList> {
  const listed = await inTurns(db, facts, (now, plant) =>
    rememberedWork(db, { plantId: plant.id, asked: [...now.restsOn(plant), range.from, range.to] }, () =>
      listedWork(db, now, plant, range),
    ),
  );
  const work = listed.flatMap((one) => one.work);
  work.sort((one, other) => (one.day === other.day ? 0 : one.day < other.day ? -1 : 1));
  return {
    today: facts().today,
    bloomsUnderWay: listed.filter(({ isUnderWay }) => isUnderWay).length,
    work,
  };
}

function listedWork(db: Database, facts: SeasonFacts, plant: AimedPlant, range: DayRange): ListedWork {
  return {
    isUnderWay: bloomNow(db, facts, plant).isUnderWay,
    work: workOfPlant(db, facts, plant, range).map((one) => ({ ...one, plantName: plant.name })),
  };
}
