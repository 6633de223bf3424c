import { z } from 'zod';
import { allRows, type Database, run } from './database.ts';
import { QUEUE } from './due-view.ts';
import type { SittingRow } from './sittings.ts';
import { type StandVersionRow, versionById, versionsOfStand } from './stand-versions.ts';

/**
 * Sees to it that every version of a stand without an empty photo has a first photo, as long as one was taken on it:
 * the earliest that came. Call it after a photo came to a stand or left it. Should a first photo have left the stand,
 * the others are measured anew against the next.
 */
export function settleFirstPhotos(db: Database, standId: string | null): void {
  if (standId === null) return;
  for (const version of versionsOfStand(db, standId)) {
    const taken = photosTakenOn(db, version);
    if (version.emptyPhoto !== null || taken.ofStand.has(version.firstPhoto ?? '')) continue;
    const first = taken.ofVersion[0] ?? null;
    run(db, 'UPDATE stand_versions SET first_photo = ? WHERE id = ?', first, version.id);
    if (version.firstPhoto !== null) queueVersion(db, version.id);
  }
}

const takenRow = z.object({ sha256: z.string(), versionId: z.int() });

/** Photos of a stand that are not removed, in the order in which they came. */
function photosTakenOn(db: Database, { id, standId }: StandVersionRow) {
  const taken = allRows(
    db,
    takenRow,
    `SELECT photo AS sha256, stand_version_id AS versionId
     FROM views JOIN sittings ON sittings.id = views.sitting_id
     WHERE removed_at IS NULL AND stand_version_id IN (SELECT id FROM stand_versions WHERE stand_id = ?)
     ORDER BY received_at, views.rowid`,
    standId,
  );
  return {
    ofStand: new Set(taken.map(({ sha256 }) => sha256)),
    ofVersion: taken.filter(({ versionId }) => versionId === id).map(({ sha256 }) => sha256),
  };
}

/** Quietly lets the photos that were taken on a version be measured anew. */
export function queueVersion(db: Database, versionId: number): void {
  run(
    db,
    `${QUEUE}, quiet = (state IN ('measured', 'failed') OR quiet)
     WHERE removed_at IS NULL AND sitting_id IN (SELECT id FROM sittings WHERE stand_version_id = ?)`,
    versionId,
  );
}

/** Moves the sittings of a version that lie on or after a day to another one, and lets them be measured anew. */
export function moveSittingsSince(
  db: Database,
  { from, to, sinceDay }: { readonly from: StandVersionRow; readonly to: number; readonly sinceDay: string },
): void {
  const moved = run(
    db,
    'UPDATE sittings SET stand_version_id = ? WHERE stand_version_id = ? AND day >= ?',
    to,
    from.id,
    sinceDay,
  );
  if (moved === 0) return;
  settleFirstPhotos(db, from.standId);
  queueVersion(db, to);
}

/** Says on which version a sitting was taken; its photos are measured anew. */
export function setSittingVersion(db: Database, sitting: SittingRow, version: StandVersionRow | null): void {
  const before = sitting.standVersionId === null ? null : versionById(db, sitting.standVersionId);
  run(db, 'UPDATE sittings SET stand_version_id = ? WHERE id = ?', version?.id ?? null, sitting.id);
  settleFirstPhotos(db, before?.standId ?? null);
  settleFirstPhotos(db, version?.standId ?? null);
  run(db, `${QUEUE}, quiet = 0 WHERE sitting_id = ?`, sitting.id);
}
