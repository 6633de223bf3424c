import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { openNetwork } from '../../core/canopy/model/onnx-door.ts';
import { readUprightPhoto } from '../../server/intake/read-upright-photo.ts';
import { disturbed, only, SOURCES, USUAL } from './disturb.ts';
import { readingsOf, trueReadings } from './measure-shots.ts';
import { reshotPlants } from './plants.ts';
import { emptyStandFile, shotFile } from './shots.ts';
import { type PlantReadings, reshotLines } from './table.ts';

/**
 * Photographs rendered plants again and again and prints how well the scores repeat, and whether the stated plus-minus says so.
 *
 *   node --import tsx tests/reshot/main.ts [options]
 *
 *   --shots N     photos of each plant (12)
 *   --size S      share of 1600 px on the longer side (1)
 *   --series N    other plants of the same kinds (0)
 *   --plants N    the first so many plants
 *   --still       leaves do not move, all else does
 *   --only NAME   one source alone: camera, light, turn, leaves, noise
 *
 * Renders are kept in the system's temporary folder; the first run takes some seconds a photo.
 */
const { values } = parseArgs({
  options: {
    shots: { type: 'string', default: '12' },
    size: { type: 'string', default: '1' },
    series: { type: 'string', default: '0' },
    plants: { type: 'string' },
    still: { type: 'boolean', default: false },
    only: { type: 'string' },
  },
});

const most = disturbances();
const network = await openNetwork(readFileSync('core/canopy/model/first-guess.onnx'));
const draft = { size: Number(values.size), samplesPerSide: 2 };
const count = values.plants === undefined ? undefined : Number(values.plants);
const plants: PlantReadings[] = [];
for (const { name, rimMm, view } of reshotPlants(draft, Number(values.series), count)) {
  const empty = await readUprightPhoto(new Uint8Array(readFileSync(await emptyStandFile(view))));
  const shots = [];
  for (let shot = 0; shot < Number(values.shots); shot++) {
    const file = await shotFile(disturbed(view, shot, most));
    shots.push(await readingsOf(file, empty.raster, rimMm, network));
  }
  plants.push({ name, shots, truth: trueReadings(view, rimMm) });
  process.stderr.write(`${name}\n`);
}
process.stdout.write(`${reshotLines(plants).join('\n')}\n`);

function disturbances() {
  const source = values.only;
  if (source === undefined) return values.still ? { ...USUAL, shootMm: 0, leafMm: 0 } : USUAL;
  if (Object.hasOwn(SOURCES, source)) return only(source as keyof typeof SOURCES);
  process.stderr.write(`There is no source "${source}". Choose one of ${Object.keys(SOURCES).join(', ')}.\n`);
  return process.exit(2);
}
