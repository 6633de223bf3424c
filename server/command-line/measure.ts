// Measures photos from the command line: `npm run --silent measure -- --help`.
import { mkdir, writeFile } from 'node:fs/promises';
import { availableParallelism } from 'node:os';
import { basename, join } from 'node:path';
import { SingleBar } from 'cli-progress';
import { CommanderError } from 'commander';
import { lightFromCameraDeg } from '../../core/light/light-side.ts';
import type { PhotoReport } from '../../core/report.ts';
import type { StemsOfSitting } from '../../core/stems/match-stems.ts';
import type { TurnedReport } from '../../core/turned/measure-turned.ts';
import type { LightPlace } from '../../core/turned/turn-advice.ts';
import { failureWords } from '../measuring/failure-words.ts';
import { JobStopped } from '../measuring/job-stopped.ts';
import type { SittingTask } from '../measuring/join-sitting.ts';
import { type MeasuredFile, type MeasureTask, unreadableFile } from '../measuring/measure-file.ts';
import { openWorkerPool } from '../measuring/worker-pool.ts';
import {
  type MeasureArguments,
  maskName,
  measureCommand,
  readArguments,
  UnusableArguments,
} from './arguments.ts';
import { csvHead, csvLine } from './report-csv.ts';
import { reportTable } from './report-table.ts';
import { sittingCuts } from './sitting-cuts.ts';
import { sittingTable } from './sitting-table.ts';

/** From this many photos on the wait is long enough to show how it goes. */
const MANY_PHOTOS = 5;

async function measure(wanted: MeasureArguments): Promise<void> {
  if (wanted.masks !== null) await makeFolder(wanted.masks);
  const threads = Math.min(wanted.photos.length, availableParallelism(), 4);
  const pool = openWorkerPool<MeasureTask, MeasuredFile>(new URL('../measuring/worker.ts', import.meta.url), {
    threads,
  });
  const bar = progressBar(wanted.photos.length);
  try {
    const running = wanted.photos.map(async ({ path, turnDeg }) => {
      const photoName = basename(path);
      const task: MeasureTask = {
        path,
        photoName,
        rimMm: wanted.rimMm,
        emptyPath: wanted.empty,
        stand: wanted.stand,
        turnDeg,
        network: wanted.network,
        colours: null,
        lastOutline: null,
        normalLeaf: null,
        strokes: [],
        pictures: wanted.masks !== null ? 'photo' : wanted.turned ? 'screen' : 'none',
      };
      const measured = await pool.run(task).catch((fault: unknown) => {
        // One photo that ends its thread does not end the others' measuring.
        if (fault instanceof JobStopped) return unreadableFile(photoName, turnDeg, failureWords(fault));
        throw fault;
      });
      bar?.increment();
      const report =
        wanted.masks === null ? measured.report : await withMaskFiles(measured, wanted.masks, path);
      return { ...measured, report };
    });
    // A fault is told when its photo's turn comes; until then it must not count as unhandled.
    for (const next of running) next.catch(() => {});
    // JSON and CSV lines come out as soon as they and all before them are there.
    if (wanted.form === 'csv') console.log(csvHead());
    const views: MeasuredFile[] = [];
    for (const next of running) {
      const view = await next;
      const { report } = view;
      views.push(view);
      if (wanted.form === 'csv') console.log(csvLine(report));
      if (wanted.form === 'json' && !wanted.turned) console.log(JSON.stringify(report));
    }
    bar?.stop();
    const reports = views.map(({ report }) => report);
    if (wanted.form === 'table') console.log(reportTable(reports));
    if (wanted.turned) {
      const task = { views, cameraHeightMm: null, light: lightOf(wanted) } satisfies SittingTask;
      const joined = (await pool.call('join', task)) as TurnedReport;
      const placed = (await pool.call('stems', task)) as StemsOfSitting;
      console.log(
        wanted.form === 'json'
          ? JSON.stringify(sitting(reports, joined, placed))
          : `\n${sittingTable(joined, placed)}`,
      );
    }
  } finally {
    bar?.stop();
    await pool.close();
  }
}

async function makeFolder(folder: string): Promise<void> {
  try {
    await mkdir(folder, { recursive: true });
  } catch (fault) {
    const code = (fault as NodeJS.ErrnoException).code ?? String(fault);
    throw new UnusableArguments(`The folder ${folder} for the masks cannot be made (${code}).`);
  }
}

/** The report, once the pictures of the cut-out are written; it names the canopy's. */
async function withMaskFiles(
  { report, maskPng, partsPng, certaintyPng }: MeasuredFile,
  folder: string,
  path: string,
): Promise<PhotoReport> {
  if (partsPng !== null) await writeFile(join(folder, maskName(path, 'parts')), partsPng);
  if (certaintyPng !== null) await writeFile(join(folder, maskName(path, 'certainty')), certaintyPng);
  if (maskPng === null) return report;
  await writeFile(join(folder, maskName(path)), maskPng);
  return { ...report, maskFile: maskName(path) };
}

function sitting(
  views: readonly PhotoReport[],
  { plan, turn, faults, notes }: TurnedReport,
  placed: StemsOfSitting,
): object {
  return { views, plan, turn, cuts: sittingCuts(placed), faults, notes: [...notes, ...placed.notes] };
}

/** The photos tell nothing of how the pot stands now: the mark is supposed to face the camera. */
function lightOf({ lightSide }: MeasureArguments): LightPlace | null {
  const fromCameraDeg = lightFromCameraDeg(lightSide);
  return fromCameraDeg === null ? null : { fromCameraDeg, standsAtTurnDeg: null };
}

/** A bar on the terminal only: what is piped stays clean. */
function progressBar(photos: number): SingleBar | null {
  if (!process.stderr.isTTY || photos < MANY_PHOTOS) return null;
  const bar = new SingleBar({ format: 'measuring {bar} {value}/{total}, {eta_formatted} left' });
  bar.start(photos, 0);
  return bar;
}

/** The exit code that the fault stands for; its sentence goes to stderr. */
function tell(fault: unknown): number {
  if (fault instanceof CommanderError) {
    if (fault.exitCode === 0) return 0; // --help
    console.error(`${fault.message.replace(/^error: /, '')}\n\n${measureCommand().helpInformation()}`);
    return 2;
  }
  if (fault instanceof UnusableArguments) {
    console.error(`${fault.message}\n\n${measureCommand().helpInformation()}`);
    return 2;
  }
  console.error('The program broke down while measuring:', fault);
  return 1;
}

try {
  await measure(readArguments(process.argv.slice(2)));
} catch (fault) {
  process.exitCode = tell(fault);
}
