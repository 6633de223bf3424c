import { accessSync, constants, mkdirSync, readdirSync, rmSync } from 'node:fs';
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
}

/** The data home cannot be used; the message says what to do. */
export class HomeUnusable extends Error {}

/** Makes the folders of a data home and sweeps away unfinished uploads. */
export function openDataHome(root: string): DataHome {
  const home: DataHome = {
    root,
    photos: join(root, 'photos'),
    pictures: join(root, 'pictures'),
    incoming: join(root, 'incoming'),
  };
  try {
    for (const folder of Object.values(home)) mkdirSync(folder, { recursive: true });
    accessSync(root, constants.W_OK);
    for (const left of readdirSync(home.incoming)) rmSync(join(home.incoming, left), { force: true });
  } catch (fault) {
    const code = (fault as NodeJS.ErrnoException).code ?? String(fault);
    throw new HomeUnusable(
      `The data folder ${root} cannot be written (${code}). Give this user the right to write there, or set RONDURE_HOME to another folder.`,
    );
  }
  return home;
}
