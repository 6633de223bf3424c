import type { SittingReports } from '../../core/advice/plant-history.ts';
import type { AimedPlant } from '../bench/aimed-plant.ts';
import type { SeenSitting } from '../bench/seen-sitting.ts';
import type { PlantPage } from '../schemas/pages.ts';
import type { Stop } from '../schemas/sitting.ts';
import type { SeasonFacts } from '../season/season-facts.ts';
import type { Database } from '../store/database.ts';
import { workedDaysOf } from '../store/worked-sittings.ts';
import { bloomAnswer } from './bloom-answer.ts';
import { type FillSeen, fillSeen } from './fill-answer.ts';
import { growthAnswer } from './growth-answer.ts';
import { leafAnswer } from './leaf-answer.ts';
import { learnedLeaf } from './learned-leaf.ts';
import { wiltAnswer } from './wilt-answer.ts';

/** What a plant's photos tell beside its shape. */
export type PlantCondition = Pick<PlantPage, 'bloom' | 'leaf' | 'growth' | 'wilt'> & {
  /** To be set beside other plants (`fillAnswer`). */
  readonly fillSeen: FillSeen | null;
};

/** What is known of the plant whose condition is told. */
export interface KnownOfCondition {
  /** Newest first, as the page lists them. */
  readonly sittings: readonly SeenSitting[];
  /** The same as advice rests on, oldest first. */
  readonly history: readonly SittingReports[];
  readonly stops: readonly Stop[];
}

export function plantCondition(
  db: Database,
  facts: SeasonFacts,
  plant: AimedPlant,
  { sittings, history, stops }: KnownOfCondition,
): PlantCondition {
  const byDay = sittings.toReversed();
  const log = facts.notes.get(plant.id);
  return {
    bloom: bloomAnswer(db, facts, plant, byDay),
    leaf: leafAnswer(byDay, learnedLeaf(db, plant.id)),
    fillSeen: fillSeen(facts, plant, byDay),
    growth: growthAnswer(history, stops),
    wilt: wiltAnswer(byDay, { stops, log, workedDays: workedDaysOf(db, plant.id) }),
  };
}
