import { z } from 'zod';
import type { Day } from '../../core/day/day.ts';
import { daySchema } from '../schemas/basics.ts';
import { allRows, type Database, run } from './database.ts';

const row = z.object({ day: daySchema });

/** Days on which the grower called the plant's leaf healthy, oldest first. */
export function healthyDays(db: Database, plantId: string): Day[] {
  return allRows(db, row, 'SELECT day FROM healthy_days WHERE plant_id = ? ORDER BY day', plantId).map(
    ({ day }) => day,
  );
}

export function setHealthyDay(db: Database, plantId: string, day: Day, healthy: boolean): void {
  if (healthy) run(db, 'INSERT OR IGNORE INTO healthy_days (plant_id, day) VALUES (?, ?)', plantId, day);
  else run(db, 'DELETE FROM healthy_days WHERE plant_id = ? AND day = ?', plantId, day);
}
