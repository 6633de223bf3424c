import { join, relative, sep } from 'node:path';
import type { StoreCheck } from '../schemas/keeping.ts';
import { checkDatabase } from '../store/copy-database.ts';
import type { DataHome } from '../store/data-home.ts';
import { DATABASE_FILE, openToRead } from '../store/database.ts';
import { originalPath } from '../store/photo-files.ts';
import { allPhotos, type PhotoRow } from '../store/photos.ts';
import { BackupUnreadable, filesBelow, MANIFEST, readAbout, readManifest, sha256OfFile } from './manifest.ts';

/** Reads the whole store: every value of the database against its digest, every original against its name. */
export async function checkStore(home: DataHome): Promise<StoreCheck> {
  const database = join(home.root, DATABASE_FILE);
  const { rowCount, faults } = checkDatabase(database);
  const photos = photosOf(database);
  for (const photo of photos) {
    const path = originalPath(home, photo.sha256, photo.format);
    const wrong = await wrongWith(path, photo.sha256);
    if (wrong !== null) faults.push(`The photo ${relative(home.root, path).split(sep).join('/')} ${wrong}.`);
  }
  return { checkedAt: new Date().toISOString(), of: 'store', rowCount, photoCount: photos.length, faults };
}

/** Reads a whole backup: every file against the list, the list against the files, and the database's own digests. */
export async function checkBackup(folder: string, name: string): Promise<StoreCheck> {
  const root = join(folder, name);
  const check = { checkedAt: new Date().toISOString(), of: name, rowCount: 0, photoCount: 0 };
  try {
    const listed = await readManifest(root);
    const faults: string[] = [];
    for (const { path, sha256 } of listed) {
      const wrong = await wrongWith(join(root, path), sha256);
      if (wrong !== null) faults.push(`The backup’s file ${path} ${wrong}.`);
    }
    const paths = new Set([...listed.map(({ path }) => path), MANIFEST]);
    for (const path of await filesBelow(root)) {
      if (!paths.has(path)) faults.push(`The file ${path} does not belong to the backup.`);
    }
    const about = await readAbout(root);
    const database = checkDatabase(join(root, DATABASE_FILE));
    faults.push(...database.faults);
    for (const sha256 of about.leftOut) {
      faults.push(`The photo ${sha256} was gone or damaged when the backup was made, and is not in it.`);
    }
    const photoCount = listed.filter(({ path }) => path.startsWith('photos/')).length;
    return { ...check, rowCount: database.rowCount, photoCount, faults };
  } catch (fault) {
    if (fault instanceof BackupUnreadable) return { ...check, faults: [fault.message] };
    throw fault;
  }
}

function photosOf(database: string): PhotoRow[] {
  try {
    const db = openToRead(database);
    try {
      return allPhotos(db);
    } finally {
      db.close();
    }
  } catch {
    // That the database cannot be read is told already.
    return [];
  }
}

async function wrongWith(path: string, sha256: string): Promise<string | null> {
  try {
    return (await sha256OfFile(path)) === sha256 ? null : 'is not as it was kept';
  } catch (fault) {
    const { code } = fault as NodeJS.ErrnoException;
    return code === 'ENOENT' ? 'is not there' : `cannot be read (${code})`;
  }
}
