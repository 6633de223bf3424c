import { z } from 'zod';
import { daySchema } from '../schemas/basics.ts';
import {
  emptyPhotoCheckSchema,
  type StandForm,
  sheetSummarySchema,
  standFormSchema,
  standSheetSchema,
} from '../schemas/stand.ts';
import { jsonText } from './columns.ts';
import { allRows, type Database, oneRow, run } from './database.ts';

/** What was seen of an empty photo when it came. */
export const emptyCheckSchema = z.object({
  check: emptyPhotoCheckSchema,
  reading: sheetSummarySchema.nullable(),
});
export type EmptyCheck = z.infer<typeof emptyCheckSchema>;

const versionRow = z.object({
  id: z.int(),
  standId: z.string(),
  number: z.int(),
  sinceDay: daySchema,
  changed: z.string(),
  lightSide: standFormSchema.shape.lightSide.unwrap(),
  backdrop: z.string().nullable(),
  cameraDistanceMm: z.number().nullable(),
  cameraHeightMm: z.number().nullable(),
  scaleFrom: standFormSchema.shape.scaleFrom.unwrap(),
  sheet: jsonText.pipe(standSheetSchema).nullable(),
  /** SHA-256 of the empty photo. */
  emptyPhoto: z.string().nullable(),
  emptyCheck: jsonText.pipe(emptyCheckSchema).nullable(),
  /** SHA-256 of the first photo taken on this version. */
  firstPhoto: z.string().nullable(),
});
/** A stand as it was from one day on. */
export type StandVersionRow = z.infer<typeof versionRow>;

/** What of a stand belongs to a version: all but its name. */
export type VersionFacts = Omit<StandForm, 'name'> &
  Pick<StandVersionRow, 'emptyPhoto' | 'emptyCheck' | 'firstPhoto'>;

const VERSION = `SELECT id, stand_id AS standId, number, since_day AS sinceDay, changed, light_side AS lightSide,
    backdrop, camera_distance_mm AS cameraDistanceMm, camera_height_mm AS cameraHeightMm, scale_from AS scaleFrom,
    sheet, empty_photo AS emptyPhoto, empty_check AS emptyCheck, first_photo AS firstPhoto
  FROM stand_versions`;

export function versionById(db: Database, id: number): StandVersionRow | null {
  return oneRow(db, versionRow, `${VERSION} WHERE id = ?`, id);
}

/** All versions of a stand, the one in force first. */
export function versionsOfStand(db: Database, standId: string): StandVersionRow[] {
  return allRows(db, versionRow, `${VERSION} WHERE stand_id = ? ORDER BY number DESC`, standId);
}

/** The version in force on a day; before the first one, the first. */
export function versionOn(db: Database, standId: string, day: string): StandVersionRow {
  const versions = versionsOfStand(db, standId);
  const version = versions.find(({ sinceDay }) => sinceDay <= day) ?? versions.at(-1);
  if (!version) throw new RangeError(`Expected a stand with a version but received ${standId}`);
  return version;
}

/** Whether photos were taken on this version, also removed ones: they may come back. */
export function isVersionUsed(db: Database, id: number): boolean {
  const used = z.object({ used: z.int() });
  const row = oneRow(
    db,
    used,
    `SELECT EXISTS (SELECT 1 FROM sittings JOIN views ON views.sitting_id = sittings.id
       WHERE stand_version_id = ?) AS used`,
    id,
  );
  return row?.used === 1;
}

type NewVersion = VersionFacts & Pick<StandVersionRow, 'standId' | 'sinceDay' | 'changed'>;

/** Adds the next version of a stand; its id. */
export function addVersion(db: Database, version: NewVersion): number {
  const number = (versionsOfStand(db, version.standId)[0]?.number ?? 0) + 1;
  const added = oneRow(
    db,
    z.object({ id: z.int() }),
    `INSERT INTO stand_versions (stand_id, number, since_day, changed, light_side, backdrop, camera_distance_mm,
       camera_height_mm, scale_from, sheet, empty_photo, empty_check, first_photo)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?) RETURNING id`,
    version.standId,
    number,
    version.sinceDay,
    version.changed,
    ...factValues(version),
  );
  if (added === null) throw new Error('The new version of the stand was not kept');
  return added.id;
}

/** Writes a version anew, for one on which no photo was taken yet. */
export function changeVersion(
  db: Database,
  id: number,
  version: VersionFacts & Pick<StandVersionRow, 'sinceDay'>,
): void {
  run(
    db,
    `UPDATE stand_versions SET since_day = ?, light_side = ?, backdrop = ?, camera_distance_mm = ?,
       camera_height_mm = ?, scale_from = ?, sheet = ?, empty_photo = ?, empty_check = ?, first_photo = ?
     WHERE id = ?`,
    version.sinceDay,
    ...factValues(version),
    id,
  );
}

function factValues(facts: VersionFacts) {
  const json = (value: object | null) => (value === null ? null : JSON.stringify(value));
  return [
    facts.lightSide,
    facts.backdrop,
    facts.cameraDistanceMm,
    facts.cameraHeightMm,
    facts.scaleFrom,
    json(facts.sheet),
    facts.emptyPhoto,
    json(facts.emptyCheck),
    facts.firstPhoto,
  ];
}
