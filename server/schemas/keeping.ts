import { z } from 'zod';

/** A backup as its own `about.json` tells of it. */
export const backupSchema = z.object({
  name: z.string(),
  madeAt: z.string(),
  /** The store's number, that of its last migration. */
  storeNumber: z.int(),
  plantCount: z.int(),
  photoCount: z.int(),
  /** Photos of the store whose original was gone or damaged when the backup was made, by SHA-256. */
  leftOut: z.array(z.string()),
  byteCount: z.int(),
});
export type Backup = z.infer<typeof backupSchema>;

/** What a look at the whole store, or at a backup, found. */
export const storeCheckSchema = z.object({
  checkedAt: z.string(),
  /** `store`, or a backup's name. */
  of: z.string(),
  rowCount: z.int(),
  photoCount: z.int(),
  /** In sentences; none when all is as it was written. */
  faults: z.array(z.string()),
});
export type StoreCheck = z.infer<typeof storeCheckSchema>;

const planShape = {
  everyDays: z
    .int('Give whole days.')
    .min(1, 'One day is the shortest time between backups.')
    .max(90, 'Give at most 90 days.'),
  keepCount: z
    .int('Give a whole number of backups.')
    .min(1, 'Keep at least one backup.')
    .max(60, 'Keep at most 60 backups.'),
};

export const backupPlanFormSchema = z.object({
  ...planShape,
  /** `null` or empty: the folder “backups” in the data folder. */
  folder: z
    .string()
    .trim()
    .max(500, 'That is too long for a folder.')
    .nullable()
    .transform((folder) => folder || null),
});
export type BackupPlanForm = z.input<typeof backupPlanFormSchema>;

export const checkFormSchema = z.object({
  /** `store`, or a backup's name. */
  of: z.string().max(100),
});

/** `GET /api/keeping`, at the desk only. */
export const keepingSchema = z.object({
  /** The data folder, and the one in which backups are made. */
  home: z.string(),
  folder: z.string(),
  plan: z.object({ ...planShape, folder: z.string().nullable() }),
  /** The newest first. */
  backups: z.array(backupSchema),
  /** Why the folder of the backups cannot be read; `null` when it can. */
  folderFault: z.string().nullable(),
  /** When the next is due; `null` while there is nothing to back up. */
  nextAt: z.string().nullable(),
  underWay: z.object({ what: z.enum(['backup', 'check', 'restore']), since: z.string() }).nullable(),
  /** Why the last backup or restore failed since the start; `null` when none did. */
  failure: z.string().nullable(),
  check: storeCheckSchema.nullable(),
  /** Photos in `set-aside`: they came in, but were never answered as kept. */
  setAside: z.array(z.string()),
  /** Where the missing photos belong: the store knows them, but their file was not there at the start. */
  missing: z.array(z.string()),
  /** Folders with the stores that gave way to a restored one. */
  replaced: z.array(z.string()),
});
export type Keeping = z.infer<typeof keepingSchema>;
