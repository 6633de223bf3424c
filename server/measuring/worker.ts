// Runs in a worker thread: core's pixel work takes a second and its WebAssembly needs its own heap.

import type { TurnedReport } from '../../core/turned/measure-turned.ts';
import type { EmptyCheck } from '../store/stand-versions.ts';
import { checkEmptyPhoto, type EmptyPhotoTask } from './check-empty-photo.ts';
import { type ForetellTask, foretellCuts } from './foretell-cuts.ts';
import { hullOfSitting, joinSitting, type SittingTask } from './join-sitting.ts';
import { type Lesson, learnFromFiles } from './learn-from-files.ts';
import { type MeasuredFile, type MeasureTask, measureFile } from './measure-file.ts';
import { stemsOfSitting } from './place-stems.ts';
import { warmUp } from './warm-up.ts';

export default async function measureInWorker(task: MeasureTask): Promise<MeasuredFile> {
  await warmUp();
  return measureFile(task);
}

export async function learn(lessons: readonly Lesson[]): Promise<Uint8Array | null> {
  await warmUp();
  return learnFromFiles(lessons);
}

export async function checkEmpty(task: EmptyPhotoTask): Promise<EmptyCheck> {
  await warmUp();
  return checkEmptyPhoto(task);
}

export async function join(task: SittingTask): Promise<TurnedReport> {
  return joinSitting(task);
}

export async function hull(task: SittingTask): ReturnType<typeof hullOfSitting> {
  return hullOfSitting(task);
}

export async function stems(task: SittingTask): ReturnType<typeof stemsOfSitting> {
  return stemsOfSitting(task);
}

export async function foretell(task: ForetellTask): ReturnType<typeof foretellCuts> {
  return foretellCuts(task);
}

warmUp().catch(() => {}); // A fault of the warm-up is told by the first task, which waits for it.
