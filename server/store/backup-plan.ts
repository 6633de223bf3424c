import { z } from 'zod';
import { type StoreCheck, storeCheckSchema } from '../schemas/keeping.ts';
import { jsonText } from './columns.ts';
import { type Database, oneRow, run } from './database.ts';

const planRow = z.object({ everyDays: z.int(), keepCount: z.int(), folder: z.string().nullable() });
/** How backups are made; `folder` is `null` for the one in the data home. */
export type BackupPlan = z.infer<typeof planRow>;

/** A copy a day costs little: photos are copied once and shared by later backups. */
export const DEFAULT_PLAN: BackupPlan = { everyDays: 1, keepCount: 7, folder: null };

export function backupPlan(db: Database): BackupPlan {
  const row = oneRow(
    db,
    planRow,
    'SELECT every_days AS everyDays, keep_count AS keepCount, folder FROM backup_plan WHERE id = 1',
  );
  return row ?? DEFAULT_PLAN;
}

export function setBackupPlan(db: Database, { everyDays, keepCount, folder }: BackupPlan): void {
  run(
    db,
    `INSERT INTO backup_plan (id, every_days, keep_count, folder) VALUES (1, ?, ?, ?)
     ON CONFLICT DO UPDATE SET every_days = excluded.every_days, keep_count = excluded.keep_count,
       folder = excluded.folder`,
    everyDays,
    keepCount,
    folder,
  );
}

const checkRow = z.object({ found: jsonText.pipe(storeCheckSchema) });

/** What the last look at the store or a backup found; `null` before the first. */
export function lastCheck(db: Database): StoreCheck | null {
  return oneRow(db, checkRow, 'SELECT found FROM store_check WHERE id = 1')?.found ?? null;
}

export function keepCheck(db: Database, check: StoreCheck): void {
  run(
    db,
    `INSERT INTO store_check (id, checked_at, found) VALUES (1, ?, ?)
     ON CONFLICT DO UPDATE SET checked_at = excluded.checked_at, found = excluded.found`,
    check.checkedAt,
    JSON.stringify(check),
  );
}
