import type { Day } from '../../core/day/day.ts';
import type { Sitting } from '../schemas/sitting.ts';
import type { Database } from '../store/database.ts';
import { joiningsBetween, newestJoinedDay } from '../store/joinings.ts';
import { turnsOfPlant } from '../store/turns.ts';
import { viewsBetween } from '../store/views.ts';
import type { AimedPlant } from './aimed-plant.ts';
import { plantLighting } from './plant-light.ts';
import { sittingAnswers } from './sitting-answer.ts';

/** The plant's sittings of these days, both included, newest first, as its page shows them. */
export function sittingsBetween(
  db: Database,
  plant: AimedPlant,
  today: Day,
  days: { readonly from: Day; readonly to: Day },
): Sitting[] {
  const turns = turnsOfPlant(db, plant.id);
  const { place } = plantLighting(db, { plant, turns, today });
  // How far to turn the pot is told by the newest plan only.
  const isNewestThere = days.to >= (newestJoinedDay(db, plant.id) ?? days.to);
  return sittingAnswers(viewsBetween(db, plant.id, days), {
    joinings: joiningsBetween(db, plant.id, days),
    light: isNewestThere ? place : null,
  });
}
