import { enterAShow } from './enter-a-show.ts';
import { filmAndChart } from './film-and-chart.ts';
import { firstMinute } from './first-minute.ts';
import { firstPlant } from './first-plant.ts';
import type { GrowerTask } from './grower-task.ts';
import { logAndYear } from './log-and-year.ts';
import { mendByHand } from './mend-by-hand.ts';
import { plantsToTurn } from './plants-to-turn.ts';
import { setASittingRight } from './set-a-sitting-right.ts';
import { sinceLastStop } from './since-last-stop.ts';
import { workACutList } from './work-a-cut-list.ts';

/** Ten things that a grower comes to do, in an order in which one home bears them all. */
export const ALL_TASKS: readonly GrowerTask[] = [
  firstMinute,
  firstPlant,
  plantsToTurn,
  sinceLastStop,
  workACutList,
  mendByHand,
  enterAShow,
  setASittingRight,
  filmAndChart,
  logAndYear,
];
