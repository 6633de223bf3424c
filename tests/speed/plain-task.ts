import { basename } from 'node:path';
import { type MeasureTask, NO_STAND } from '../../server/measuring/measure-file.ts';

/** A photo to measure of which nothing is known but its rim, as on a new bench. */
export function plainTask(path: string, changes: Partial<MeasureTask> = {}): MeasureTask {
  return {
    path,
    photoName: basename(path),
    rimMm: 130,
    emptyPath: null,
    stand: NO_STAND,
    turnDeg: null,
    network: true,
    colours: null,
    lastOutline: null,
    normalLeaf: null,
    strokes: [],
    pictures: 'screen',
    ...changes,
  };
}
