import { accessSync, constants, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import envPaths from 'env-paths';

/** The folder that holds everything of the grower's: `RONDURE_HOME`, or the platform's place for data. */
export function dataHomePath(environment: Readonly<Record<string, string | undefined>>): string {
  return environment.RONDURE_HOME || envPaths('rondure', { suffix: '' }).data;
}

/** The folders of a data home. */
export interface DataHome {
  readonly root: string;
  /** Originals, untouched: `photos/ab/abcdef….jpg`. */
  readonly photos: string;
  /** Upright copies for the screen; every one can be made again. */
  readonly pictures: string;
  /** Uploads on their way in; what lies here at start was never finished. */
  readonly incoming: string;
  /** Originals that the store knows nothing of; made when the first is found. */
  readonly setAside: string;
  /** Where backups are made unless the grower names another folder; made with the first. */
  readonly backups: string;
}

/** The data home cannot be used; the message says what to do. */
export class HomeUnusable extends Error {}

/** Where everything of a data home lies. */
export function homeFolders(root: string): DataHome {
  return {
    root,
    photos: join(root, 'photos'),
    pictures: join(root, 'pictures'),
    incoming: join(root, 'incoming'),
    setAside: join(root, 'set-aside'),
    backups: join(root, 'backups'),
  };
}

/** Makes the folders of a data home. */
export function openDataHome(root: string): DataHome {
  const home = homeFolders(root);
  try {
    for (const folder of [home.root, home.photos, home.pictures, home.incoming]) {
      mkdirSync(folder, { recursive: true });
    }
    accessSync(root, constants.W_OK);
  } catch (fault) {
    const code = (fault as NodeJS.ErrnoException).code ?? String(fault);
    throw new HomeUnusable(
      `The data folder ${root} cannot be written (${code}). Give this user the right to write there, or set RONDURE_HOME to another folder.`,
    );
  }
  return home;
}
