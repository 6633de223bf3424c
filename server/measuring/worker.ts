// Runs in a worker thread: core's pixel work takes a second and its WebAssembly needs its own heap.
import { measurePhoto } from '../../core/measure-photo.ts';
import { type MeasuredFile, type MeasureTask, measureFile } from './measure-file.ts';

// A first, blank photo loads whatever core loads on demand, so that the grower's first one need not wait.
const [width, height] = [320, 240];
const raster = { width, height, data: new Uint8Array(3 * width * height).fill(200) };
const warm = measurePhoto(
  { raster, widthPx: width, heightPx: height },
  { photoName: 'blank', rimMm: null, empty: null, turnDeg: null },
);
// A fault of the warm-up is told by the first task, which waits for it.
warm.catch(() => {});

export default async function measureInWorker(task: MeasureTask): Promise<MeasuredFile> {
  await warm;
  return measureFile(task);
}
