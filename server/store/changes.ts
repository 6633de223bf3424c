import type { Database } from './database.ts';

/** Tables whose rows each belong to one plant, and how to find it from a row. */
const OF_ONE_PLANT: Readonly<Record<string, (row: string) => string>> = {
  sittings: (row) => `SELECT ${row}.plant_id`,
  turns: (row) => `SELECT ${row}.plant_id`,
  healthy_days: (row) => `SELECT ${row}.plant_id`,
  views: (row) => `SELECT plant_id FROM sittings WHERE id = ${row}.sitting_id`,
  joinings: (row) => `SELECT plant_id FROM sittings WHERE id = ${row}.sitting_id`,
  measurements: (row) =>
    `SELECT plant_id FROM sittings JOIN views ON sitting_id = sittings.id WHERE views.id = ${row}.view_id`,
};
/** Tables that say nothing of any plant by themselves. A table that stands in neither list counts for all plants. */
const OF_NO_PLANT = [
  'photos',
  'readings',
  'kept_fits',
  'sittings_to_look_at',
  'learned_colours',
  'phones',
  'door_key',
  'calendar_key',
  'row_digests',
  'backup_plan',
  'store_check',
  'remeasuring',
  'under_way',
];

/** Counts what is written to a database. */
interface Changes {
  /** A text that is another one after anything was written that tells of this plant; with `null`, of all plants. */
  stamp(plantId: string | null): string;
}

const known = new WeakMap<Database, Changes>();

function changesOf(db: Database): Changes {
  const counted = known.get(db) ?? countChanges(db);
  known.set(db, counted);
  return counted;
}

/** Temporary triggers belong to this connection and leave nothing in the file. */
function countChanges(db: Database): Changes {
  db.exec('CREATE TEMP TABLE plant_changes (plant_id TEXT PRIMARY KEY, times INTEGER NOT NULL)');
  db.exec(`INSERT INTO plant_changes VALUES ('', 0)`);
  const tables = db
    .prepare(`SELECT name FROM main.sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%'`)
    .pluck()
    .all() as string[];
  for (const table of tables.filter((name) => !OF_NO_PLANT.includes(name))) {
    const plantOf = OF_ONE_PLANT[table] ?? (() => `SELECT ''`);
    for (const [event, rows] of [
      ['INSERT', ['new']],
      ['UPDATE', ['old', 'new']],
      ['DELETE', ['old']],
    ] as const) {
      const counts = rows.map(
        (row) =>
          `INSERT INTO plant_changes SELECT *, 1 FROM (${plantOf(row)}) WHERE true
           ON CONFLICT (plant_id) DO UPDATE SET times = times + 1;`,
      );
      db.exec(
        `CREATE TEMP TRIGGER counts_${event}_${table} AFTER ${event} ON main.${table} BEGIN ${counts.join(' ')} END`,
      );
    }
  }
  const times = db.prepare('SELECT times FROM plant_changes WHERE plant_id = ?').pluck();
  // Another one after another program wrote.
  const elsewhere = db.prepare('PRAGMA data_version').pluck();
  return {
    stamp: (plantId) =>
      `${elsewhere.get()} ${times.get('')} ${plantId === null ? '' : (times.get(plantId) ?? 0)}`,
  };
}

/**
 * Keeps what was reckoned from the store of each plant until something that tells of it was written.
 *
 * @param most plants whose answer is kept, for what is large; the one longest unasked goes first
 * @returns a function that reckons anew only when it must; one answer a plant is kept
 *
 * Notes: `asked` is all that the answer hangs on beside the store, as the day. Inside a transaction nothing is kept: it may be undone.
 */
export function rememberingPlants<Answer>(
  most = Number.POSITIVE_INFINITY,
): (
  db: Database,
  of: { readonly plantId: string | null; readonly asked: string },
  reckon: () => Answer,
) => Answer {
  const kept = new WeakMap<Database, Map<string, { readonly stamp: string; readonly answer: Answer }>>();
  return (db, { plantId, asked }, reckon) => {
    if (db.inTransaction) return reckon();
    const answers = kept.get(db) ?? new Map();
    kept.set(db, answers);
    const stamp = `${changesOf(db).stamp(plantId)} ${asked}`;
    const last = answers.get(plantId ?? '');
    const answer = last?.stamp === stamp ? last.answer : reckon();
    // Taken out and put in again, so that the map's order is that of asking.
    answers.delete(plantId ?? '');
    answers.set(plantId ?? '', { stamp, answer });
    const [oldest] = answers.keys();
    if (answers.size > most && oldest !== undefined) answers.delete(oldest);
    return answer;
  };
}
