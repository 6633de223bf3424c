import type { Database } from './database.ts';

/** What a written row tells of: queries for the `id`s, to be asked with the row as `new` or `old`. */
interface ToldOf {
  readonly plants?: (row: string) => string;
  readonly stands?: (row: string) => string;
  /** It tells of the plant's photos and what was measured of them. */
  readonly ofPhotos?: true;
  /** It is asked for as a table: its rows tell of all plants, or are listed. */
  readonly asTable?: true;
}

const ofItsPlant: ToldOf = { plants: (row) => `SELECT ${row}.plant_id AS id` };
const ofItsSitting: ToldOf = {
  plants: (row) => `SELECT plant_id AS id FROM sittings WHERE id = ${row}.sitting_id`,
};

/** A table that does not stand here counts for everything. */
const TABLES: Readonly<Record<string, ToldOf>> = {
  plants: { plants: (row) => `SELECT ${row}.id AS id`, asTable: true },
  sittings: { ...ofItsPlant, ofPhotos: true },
  turns: ofItsPlant,
  stops: ofItsPlant,
  notes: ofItsPlant,
  entries: ofItsPlant,
  own_work: ofItsPlant,
  work_words: ofItsPlant,
  bloom_words: ofItsPlant,
  healthy_days: ofItsPlant,
  views: { ...ofItsSitting, ofPhotos: true },
  joinings: ofItsSitting,
  cut_marks: ofItsSitting,
  placed_stems: ofItsSitting,
  // The sitting that is being measured anew is not joined meanwhile.
  remeasuring: ofItsSitting,
  measurements: {
    ofPhotos: true,
    plants: (row) =>
      `SELECT plant_id AS id FROM sittings JOIN views ON sitting_id = sittings.id WHERE views.id = ${row}.view_id`,
  },
  stands: { stands: (row) => `SELECT ${row}.id AS id` },
  stand_versions: { stands: (row) => `SELECT ${row}.stand_id AS id` },
  shows: { asTable: true },
  season_notes: { asTable: true },
  own_figures: { asTable: true },
  calendar_key: { asTable: true },
  // These say nothing of any plant by themselves.
  photos: {},
  readings: {},
  kept_fits: {},
  sittings_to_look_at: {},
  learned_colours: {},
  phones: {},
  door_key: {},
  row_digests: {},
  backup_plan: {},
  store_check: {},
  under_way: {},
};

/** Tables that `rememberingTables` can be asked about. */
export type AskedTable = 'plants' | 'shows' | 'season_notes' | 'own_figures';

/** When something was written last, as a number that grows with everything written. */
interface Changes {
  /** Of what tells of this plant: its own rows, and the stands where it stands or was photographed. */
  ofPlant(plantId: string): number;
  /** Of its photos and what was measured of them, which may be thousands. */
  ofPhotos(plantId: string): number;
  ofTables(names: readonly AskedTable[]): number;
  /** Of what tells of any plant. */
  ofAll(): number;
}

const known = new WeakMap<Database, Changes>();

/** What is noted of a database; noting begins with the first call. */
export function changesOf(db: Database): Changes {
  const counted = known.get(db) ?? noteChanges(db);
  known.set(db, counted);
  return counted;
}

/** Temporary triggers belong to this connection and leave nothing in the file; what is undone has counted all the same. */
function noteChanges(db: Database): Changes {
  const last = new Map<string, number>();
  let [now, ofEverything] = [0, 0];
  db.function('note_written', (what: string, id: string) => {
    last.set(`${what} ${id}`, ++now);
    return null;
  });
  db.function('note_all_written', () => {
    ofEverything = ++now;
    return null;
  });
  const tables = db
    .prepare(`SELECT name FROM main.sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%'`)
    .pluck()
    .all() as string[];
  for (const table of tables) {
    for (const [event, rows] of [
      ['INSERT', ['new']],
      ['UPDATE', ['old', 'new']],
      ['DELETE', ['old']],
    ] as const) {
      const noting = rows.flatMap((row) => notingOf(table, row));
      if (noting.length === 0) continue;
      db.exec(
        `CREATE TEMP TRIGGER notes_${event}_${table} AFTER ${event} ON main.${table} BEGIN ${noting.join(' ')} END`,
      );
    }
  }
  const latest = (keys: readonly string[]) =>
    keys.reduce((so, key) => Math.max(so, last.get(key) ?? 0), heardElsewhere());

  // Another program, as the command line, tells what it wrote to nobody.
  const version = db.prepare('PRAGMA data_version').pluck();
  let heard = version.get();
  let isHeard = false;
  function heardElsewhere(): number {
    // Once while nothing is awaited: asking takes longer than all else, and one answer is of one moment.
    if (isHeard) return ofEverything;
    isHeard = true;
    queueMicrotask(() => {
      isHeard = false;
    });
    const told = version.get();
    if (told !== heard) ofEverything = ++now;
    heard = told;
    return ofEverything;
  }

  const standsOfPlant = db
    .prepare(
      `SELECT stand_id FROM plants WHERE id = ? AND stand_id IS NOT NULL
       UNION SELECT stand_id FROM sittings JOIN stand_versions ON stand_versions.id = stand_version_id WHERE plant_id = ?`,
    )
    .pluck();
  const stands = new Map<string, { readonly asOf: number; readonly keys: readonly string[] }>();
  return {
    ofPlant(plantId) {
      const asOf = latest([`plant ${plantId}`]);
      const seen = stands.get(plantId);
      if (seen?.asOf === asOf) return latest([`plant ${plantId}`, ...seen.keys]);
      const keys = (standsOfPlant.all(plantId, plantId) as string[]).map((id) => `stand ${id}`);
      if (!db.inTransaction) stands.set(plantId, { asOf, keys });
      return latest([`plant ${plantId}`, ...keys]);
    },
    ofPhotos: (plantId) => latest([`photos ${plantId}`]),
    ofTables: (names) => latest(names.map((name) => `table ${name}`)),
    ofAll: () => {
      heardElsewhere();
      return now;
    },
  };
}

function notingOf(table: string, row: string): string[] {
  const told = TABLES[table];
  if (told === undefined) return ['SELECT note_all_written();'];
  const { plants, stands, ofPhotos, asTable } = told;
  return [
    ...(plants ? [`SELECT note_written('plant', id) FROM (${plants(row)});`] : []),
    ...(plants && ofPhotos ? [`SELECT note_written('photos', id) FROM (${plants(row)});`] : []),
    ...(stands ? [`SELECT note_written('stand', id) FROM (${stands(row)});`] : []),
    ...(asTable ? [`SELECT note_written('table', '${table}');`] : []),
  ];
}
