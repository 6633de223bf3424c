import { z } from 'zod';
import type { Day } from '../../core/day/day.ts';
import { TURNED_METHOD_VERSION } from '../../core/turned/method-version.ts';
import { daySchema } from '../schemas/basics.ts';
import { type HullSolid, hullSolidSchema, turnedReportSchema } from '../schemas/turned.ts';
import { flag, jsonText } from './columns.ts';
import { allRows, type Database, oneRow, run } from './database.ts';
import { NEWEST_SITTINGS, type NewestSittings } from './views.ts';
import { BEFORE_WORK } from './worked-sittings.ts';

const joiningRow = z.object({
  sittingId: z.string(),
  /** What joining it now would rest on. */
  facts: z.string(),
  /** Views that are not removed and were taken before the work. */
  viewCount: z.int(),
  /** Whether a view is still to be measured. */
  isMeasuring: flag,
  /** Whether what was joined last are today's views, as they are measured and turned now. */
  isCurrent: flag,
  state: z.enum(['measuring', 'ready', 'failed']).nullable(),
  report: jsonText.nullable(),
  viewIds: jsonText.pipe(z.array(z.string())).nullable(),
});

/** A report of an older form is left out: its sitting waits to be joined anew. */
const sittingJoiningRow = joiningRow.transform((row) => {
  const read = turnedReportSchema.safeParse(row.report);
  return { ...row, report: read.success ? read.data : null };
});
/** How far the joining of a sitting's views has come. */
export type SittingJoining = z.infer<typeof sittingJoiningRow>;

/**
 * Sittings with a view, and the facts that joining it rests on: method, stand, and of each view its newest measurement and its
 * turn, in the order in which the screen shows them.
 *
 * @param which condition on the views' sittings, so that not all need be looked at
 */
const factsOf = (
  which: string,
) => `SELECT sittings.id AS sittingId, sittings.plant_id AS plantId, sittings.day, plants.sample,
    count(*) AS viewCount, max(ordered.state IN ('received', 'measuring')) OR sittings.id IS (SELECT sitting_id FROM remeasuring) AS isMeasuring,
    json_array('${TURNED_METHOD_VERSION}', stand.camera_height_mm) ||
      group_concat(ordered.id || ' ' || ordered.measurementId || ' ' || ordered.turnDeg, ';' ORDER BY place) AS facts
  FROM (
    SELECT views.id, views.sitting_id, views.state, coalesce(turn_deg, '') AS turnDeg,
      coalesce((SELECT max(id) FROM measurements WHERE view_id = views.id), '') AS measurementId,
      row_number() OVER (ORDER BY turn_deg, received_at, views.rowid) AS place
    FROM views WHERE removed_at IS NULL AND ${BEFORE_WORK} AND ${which}
  ) AS ordered
  JOIN sittings ON sittings.id = ordered.sitting_id
  JOIN plants ON plants.id = sittings.plant_id
  LEFT JOIN stand_versions AS stand ON stand.id = sittings.stand_version_id
  GROUP BY sittings.id`;

const joiningOf = (
  which: string,
) => `SELECT now.sittingId, now.facts, viewCount, isMeasuring, coalesce(joinings.facts = now.facts, 0) AS isCurrent, state, report,
    view_ids AS viewIds
  FROM (${factsOf(which)}) AS now LEFT JOIN joinings ON joinings.sitting_id = now.sittingId`;

/** How far the newest sittings of a plant have come, by the sitting's id. */
export function joiningsOfNewestSittings(
  db: Database,
  plantId: string,
  { count, after = 0 }: NewestSittings,
): ReadonlyMap<string, SittingJoining> {
  const newest = joiningOf(`sitting_id IN (${NEWEST_SITTINGS})`);
  const rows = allRows(db, sittingJoiningRow, newest, plantId, count, after);
  return new Map(rows.map((row) => [row.sittingId, row]));
}

/** How far a plant's sittings of these days have come, both included, by the sitting's id. */
export function joiningsBetween(
  db: Database,
  plantId: string,
  { from, to }: { readonly from: Day; readonly to: Day },
): ReadonlyMap<string, SittingJoining> {
  const then = joiningOf(
    'sitting_id IN (SELECT id FROM sittings WHERE plant_id = ? AND day BETWEEN ? AND ?)',
  );
  const rows = allRows(db, sittingJoiningRow, then, plantId, from, to);
  return new Map(rows.map((row) => [row.sittingId, row]));
}

/** The day of the newest sitting of a plant that was joined; `null` when none was. */
export function newestJoinedDay(db: Database, plantId: string): Day | null {
  return (
    oneRow(
      db,
      joinedDayRow,
      `SELECT day FROM sittings CROSS JOIN joinings ON joinings.sitting_id = sittings.id
       WHERE plant_id = ? AND report IS NOT NULL ORDER BY day DESC LIMIT 1`,
      plantId,
    )?.day ?? null
  );
}

const joinedDayRow = z.object({ day: daySchema });

export function joiningOfSitting(db: Database, sittingId: string): SittingJoining | null {
  return oneRow(db, sittingJoiningRow, joiningOf('sitting_id = ?'), sittingId);
}

const dueRow = z.object({ sittingId: z.string(), plantId: z.string(), facts: z.string() });
/** A sitting whose views are to be joined. */
export type DueSitting = z.infer<typeof dueRow>;

const TO_LOOK_AT = `sitting_id IN (SELECT sitting_id FROM sittings_to_look_at)`;

/** Takes the next sitting to join and marks it so: the grower's own before the sample ones, the newest first. */
export function takeDueSitting(db: Database): DueSitting | null {
  return db.transaction(() => {
    const due = oneRow(
      db,
      dueRow,
      `SELECT now.sittingId, now.plantId, now.facts FROM (${factsOf(TO_LOOK_AT)}) AS now
       LEFT JOIN joinings ON joinings.sitting_id = now.sittingId
       WHERE viewCount > 1 AND NOT isMeasuring AND joinings.facts IS NOT now.facts
       ORDER BY sample, day DESC LIMIT 1`,
    );
    if (due === null) {
      forgetLookedAt(db);
      return null;
    }
    run(
      db,
      `INSERT INTO joinings (sitting_id, facts, state) VALUES (?, ?, 'measuring')
       ON CONFLICT (sitting_id) DO UPDATE SET facts = excluded.facts, state = 'measuring'`,
      due.sittingId,
      due.facts,
    );
    return due;
  })();
}

/** Nothing is due among the sittings to look at: those that still measure will come again by themselves. */
function forgetLookedAt(db: Database): void {
  run(db, 'DELETE FROM sittings_to_look_at');
}

/** Keeps a sitting's report; `false` when it has been taken anew meanwhile. */
export function keepJoining(
  db: Database,
  { sittingId, facts }: DueSitting,
  report: z.infer<typeof turnedReportSchema>,
  viewIds: readonly string[],
): boolean {
  return (
    run(
      db,
      `UPDATE joinings SET state = 'ready', report = ?, view_ids = ?, hull = NULL WHERE sitting_id = ? AND facts = ?`,
      JSON.stringify(report),
      JSON.stringify(viewIds),
      sittingId,
      facts,
    ) > 0
  );
}

/** Notes that joining broke down by a fault of ours. */
export function keepJoiningFailure(db: Database, { sittingId, facts }: DueSitting): void {
  run(db, `UPDATE joinings SET state = 'failed' WHERE sitting_id = ? AND facts = ?`, sittingId, facts);
}

/** At start: sittings that a stop left half-joined, those that failed and those joined by an older method are joined again. */
export function forgetUnfinishedJoinings(db: Database): void {
  run(db, `UPDATE joinings SET facts = '' WHERE state <> 'ready'`);
  const method = `["${TURNED_METHOD_VERSION}",`;
  run(
    db,
    `INSERT OR IGNORE INTO sittings_to_look_at
     SELECT sitting_id FROM joinings WHERE substr(facts, 1, instr(facts, ',')) < ? OR substr(facts, 1, instr(facts, ',')) > ?`,
    method,
    method,
  );
}

const hullRow = z.object({ hull: jsonText.pipe(hullSolidSchema).nullable() });

/** The solid of a sitting's report as it was made when last asked for; `null` when it is yet to be made. */
export function keptHull(db: Database, sittingId: string): HullSolid | null {
  return oneRow(db, hullRow, 'SELECT hull FROM joinings WHERE sitting_id = ?', sittingId)?.hull ?? null;
}

/** Keeps the solid of a sitting, unless it was joined from other facts meanwhile. */
export function keepHull(
  db: Database,
  { sittingId, facts }: Pick<DueSitting, 'sittingId' | 'facts'>,
  hull: HullSolid,
): void {
  run(
    db,
    'UPDATE joinings SET hull = ? WHERE sitting_id = ? AND facts = ?',
    JSON.stringify(hull),
    sittingId,
    facts,
  );
}
