// Backs up, checks and restores a store from the command line: `npm run --silent keep -- --help`.
import { existsSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { Command, CommanderError } from 'commander';
import { checkBackup, checkStore } from '../backup/check.ts';
import { makeBackup } from '../backup/make-backup.ts';
import { layOutBackup, swapInRestored } from '../backup/restore.ts';
import { backupsIn } from '../backup/rotation.ts';
import type { StoreCheck } from '../schemas/keeping.ts';
import { backupPlan } from '../store/backup-plan.ts';
import { type DataHome, dataHomePath, HomeUnusable, homeFolders, openDataHome } from '../store/data-home.ts';
import { DATABASE_FILE, openDatabase, openToRead } from '../store/database.ts';
import { HomeInUse, lockHome } from '../store/home-lock.ts';
import { newestNumber, StoreTooNew, storedNumber } from '../store/migrate.ts';

/** What is asked cannot be done; the message says why and what to do. */
class Refused extends Error {}

/** Exit codes: all well; damage found, or the work failed; unusable arguments. */
const EXIT = { well: 0, failed: 1, arguments: 2 } as const;

function keepCommand(): Command {
  const command = new Command('keep')
    .description(
      'Back up a store, check it, restore it. The store is RONDURE_HOME, or the usual data folder.',
    )
    .usage('backup|verify|restore …')
    .exitOverride()
    .configureOutput({ writeErr: () => {} })
    .addHelpText(
      'after',
      `
Examples:
  npm run --silent keep -- backup
  npm run --silent keep -- backup --folder /media/stick/rondure
  npm run --silent keep -- verify
  npm run --silent keep -- verify /media/stick/rondure/2026-11-26-093000
  npm run --silent keep -- restore /media/stick/rondure/2026-11-26-093000

backup and verify may run while Rondure serves; restore may not. A store that gives way to a restored one is not
deleted: it goes to the folder replaced-… in the data folder.
Exit: 0 when all is well; 1 when something is damaged or the work failed; 2 on unusable arguments.`,
    );
  command
    .command('backup')
    .description('make a backup: database, photos, and a list of their SHA-256 sums')
    .option(
      '--folder <folder>',
      'where to; else the folder chosen under Keeping, or "backups" in the data folder',
    )
    .exitOverride()
    .action(backup);
  command
    .command('verify')
    .description(
      'read the whole store, or a backup, and name every file and record that is not as it was written',
    )
    .argument('[backup]', 'the folder of a backup; the store when left out')
    .exitOverride()
    .action(verify);
  command
    .command('restore')
    .description('put a backup in the place of the store')
    .argument('<backup>', 'the folder of the backup')
    .option('--replace', 'also when there is a store; it is put aside, not deleted')
    .exitOverride()
    .action(restore);
  return command;
}

async function backup({ folder: named }: { folder?: string }): Promise<void> {
  const home = storeInUse();
  const db = openToRead(join(home.root, DATABASE_FILE));
  const stored = storedNumber(db);
  if (stored !== newestNumber()) {
    db.close();
    throw new Refused(
      `The store is of another version (its number is ${stored}, this version knows ${newestNumber()}). Start Rondure once, or use that version.`,
    );
  }
  const plan = backupPlan(db);
  db.close();
  const folder = named === undefined ? (plan.folder ?? home.backups) : resolve(named);
  const outcome = await makeBackup({ home, folder, keepCount: plan.keepCount });
  if (!outcome.ok) throw new Refused(outcome.words);
  const { name, photoCount, plantCount, byteCount, leftOut } = outcome.backup;
  console.log(
    `${join(folder, name)}: ${plantCount} plants, ${photoCount} photos, ${(byteCount / 1024 ** 2).toFixed(1)} MB.`,
  );
  for (const sha256 of leftOut) console.log(`Left out, because it is gone or damaged: photo ${sha256}`);
  const kept = await backupsIn(folder);
  console.log(`Kept: ${kept.length} of at most ${plan.keepCount}.`);
  if (leftOut.length > 0) process.exitCode = EXIT.failed;
}

async function verify(named: string | undefined): Promise<void> {
  const check =
    named === undefined
      ? await checkStore(storeInUse())
      : await checkBackup(dirname(resolve(named)), basename(resolve(named)));
  console.log(checkWords(check));
  if (check.faults.length > 0) process.exitCode = EXIT.failed;
}

function checkWords({ rowCount, photoCount, faults }: StoreCheck): string {
  const read = `${rowCount} records and ${photoCount} photos were read.`;
  if (faults.length === 0) return `${read} All is as it was written.`;
  return [read, ...faults, 'Restore the last good backup, or the photo from it.'].join('\n');
}

async function restore(named: string, { replace = false }: { replace?: boolean }): Promise<void> {
  const home = openDataHome(dataHomePath(process.env));
  const lock = lockHome(home.root);
  try {
    if (existsSync(join(home.root, DATABASE_FILE)) && !replace) {
      throw new Refused(
        `There is a store in ${home.root}. Add --replace to put it aside and the backup in its place.`,
      );
    }
    const outcome = await layOutBackup({ backup: resolve(named), homeRoot: home.root });
    if (!outcome.ok) throw new Refused(outcome.words);
    swapInRestored(home.root);
    // Opened once, so that it is brought up to date here and not at the next start.
    openDatabase(home.root).close();
    console.log(`The backup is restored in ${home.root}.`);
  } finally {
    lock.release();
  }
}

/** The data home, as it lies there: unlike a start, looking at it makes and sweeps nothing. */
function storeInUse(): DataHome {
  const root = dataHomePath(process.env);
  if (!existsSync(join(root, DATABASE_FILE))) {
    throw new Refused(`There is no store in ${root}. Set RONDURE_HOME to the folder that holds it.`);
  }
  return homeFolders(root);
}

/** The exit code that the fault stands for; its sentence goes to stderr. */
function tell(fault: unknown): number {
  if (fault instanceof CommanderError) {
    if (fault.exitCode === 0) return EXIT.well; // --help
    console.error(`${fault.message.replace(/^error: /, '')}\n\n${keepCommand().helpInformation()}`);
    return EXIT.arguments;
  }
  if ([Refused, HomeInUse, HomeUnusable, StoreTooNew].some((kind) => fault instanceof kind)) {
    console.error((fault as Error).message);
    return EXIT.failed;
  }
  console.error('The program broke down:', fault);
  return EXIT.failed;
}

try {
  await keepCommand().parseAsync(process.argv.slice(2), { from: 'user' });
} catch (fault) {
  process.exitCode = tell(fault);
}
