import { matchStems, type StemsOfSitting } from '../../core/stems/match-stems.ts';
import { sceneOfViews } from '../../core/turned/join-views.ts';
import { type SittingTask, takenViews } from './join-sitting.ts';

/** The long stems of a turned sitting, placed in the plant's own space. */
export async function stemsOfSitting(task: SittingTask): Promise<StemsOfSitting> {
  return matchStems(sceneOfViews(await takenViews(task), task));
}
