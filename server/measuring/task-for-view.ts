import type { DataHome } from '../store/data-home.ts';
import type { Database } from '../store/database.ts';
import type { DueView } from '../store/due-view.ts';
import { type KnownSources, knownUsedLast, lookUpKnown } from '../store/known-sources.ts';
import { keepColours, keptColours, lessonById, outlineById } from '../store/lessons.ts';
import { originalPath } from '../store/photo-files.ts';
import type { Lesson } from './learn-from-files.ts';
import type { EarlierOutline, MeasureTask } from './measure-file.ts';

/** What tasks are made from. */
export interface TaskParts {
  readonly db: Database;
  readonly home: DataHome;
  /** Whether the trained network is heard. */
  readonly network: boolean;
  /** Learns colours, off the request path. */
  readonly learn: (lessons: readonly Lesson[]) => Promise<Uint8Array | null>;
}

/** A task with where what is known in it comes from. */
export interface ViewTask {
  readonly task: MeasureTask;
  readonly known: KnownSources;
}

/** The task that measures a view, with what is known of its plant looked up or as it was used last. */
export async function taskForView(parts: TaskParts, due: DueView): Promise<ViewTask> {
  const { db, home, network } = parts;
  const usedLast = due.lookUp ? null : knownUsedLast(db, due);
  const known = usedLast !== null && isStillKept(db, usedLast) ? usedLast : lookUpKnown(db, due);
  return {
    known,
    task: {
      path: originalPath(home, due.sha256, due.format),
      photoName: due.fileName,
      rimMm: due.rimMm,
      receivedAt: due.keptAt,
      emptyPath:
        due.emptySha256 && due.emptyFormat ? originalPath(home, due.emptySha256, due.emptyFormat) : null,
      stand: {
        referencePath:
          due.referenceSha256 && due.referenceFormat
            ? originalPath(home, due.referenceSha256, due.referenceFormat)
            : null,
        sheet: due.sheet,
        cameraDistanceMm: due.cameraDistanceMm,
      },
      turnDeg: due.turnDeg,
      network,
      colours: await coloursFrom(parts, known.lessons),
      lastOutline: known.lastOutline && earlierOutline(db, known.lastOutline),
      normalLeaf: known.normalLeaf?.leaf ?? null,
      strokes: due.strokes,
      rimByHand: due.rimByHand,
      pictures: 'screen',
    },
  };
}

function isStillKept(db: Database, { lessons }: KnownSources): boolean {
  return (
    lessons.length === 0 ||
    keptColours(db, lessons) !== null ||
    lessons.every((lesson) => lessonById(db, lesson) !== null)
  );
}

async function coloursFrom(
  { db, home, learn }: TaskParts,
  lessons: readonly number[],
): Promise<Uint8Array | null> {
  if (lessons.length === 0) return null;
  const kept = keptColours(db, lessons);
  if (kept !== null) return kept;
  const rows = lessons.flatMap((lesson) => lessonById(db, lesson) ?? []);
  const colours = await learn(
    rows.map(({ sha256, format, maskPng, partsPng }) => ({
      path: originalPath(home, sha256, format),
      maskPng,
      partsPng,
    })),
  );
  if (colours !== null) keepColours(db, lessons, colours);
  return colours;
}

function earlierOutline(
  db: Database,
  { measurementId, days }: NonNullable<KnownSources['lastOutline']>,
): EarlierOutline {
  const row = outlineById(db, measurementId);
  if (row === null) throw new RangeError(`Expected a kept outline but received ${measurementId}`);
  const { maskPng, widthPx, heightPx, axis } = row;
  return {
    maskPng,
    days,
    rim: axis && [
      [axis.rimLeftPx[0] / widthPx, axis.rimLeftPx[1] / heightPx],
      [axis.rimRightPx[0] / widthPx, axis.rimRightPx[1] / heightPx],
    ],
  };
}
