/**
 * How well flower is told from leaf through the real cut-out, on rendered plants of known flower, printed as a table.
 *
 * `node --import tsx tests/core/bloom/flower-figures.ts [FIRST] [NAME] [lights]`: seeds from FIRST (default 7000, seeds that nothing was chosen on); with NAME
 * only the plants that have it in theirs (`-` for all); with `lights` small photos in three lights and at 0.5 to 2 times the exposure. Renders are kept in the
 * system's folder for passing files.
 */

import { readFileSync } from 'node:fs';
import { flowerHeads, flowerPatches, usualHeadSize } from '../../../core/bloom/flower-heads.ts';
import { PARTS } from '../../../core/canopy/found-plant.ts';
import { NOTHING_KNOWN } from '../../../core/canopy/known.ts';
import { openNetwork } from '../../../core/canopy/model/onnx-door.ts';
import { measurePhoto } from '../../../core/measure-photo.ts';
import { flowersInView } from '../../../sample-images/render/flowers-in-view.ts';
import { readUprightPhoto } from '../../../server/intake/read-upright-photo.ts';
import { emptyStandFile, shotFile } from '../../reshot/shots.ts';
import { EXPOSURES, inLight, LIGHTS, type LightName } from '../foliage/ailing-plants.ts';
import { type FloweringPlant, floweringPlants, PETAL_NAMES } from './flowering-plants.ts';

const first = Number(process.argv[2] ?? 7000);
const named = process.argv[3] === '-' ? '' : (process.argv[3] ?? '');
const inLights = process.argv[4] === 'lights';
const LIGHT_NAMES = Object.keys(LIGHTS) as LightName[];
const network = await openNetwork(
  new Uint8Array(readFileSync(new URL('../../../core/canopy/model/first-guess.onnx', import.meta.url))),
);
const [LEAF, FLOWER] = [PARTS.indexOf('leaf'), PARTS.indexOf('flower')];
const headCounts: boolean[] = [];
const yellowLeaf: { plant: FloweringPlant; share: number; plusMinus: number }[] = [];
const offs: { plant: FloweringPlant; off: number; plusMinus: number }[] = [];

async function onePlant(plant: FloweringPlant): Promise<void> {
  const truth = flowersInView(plant.view);
  const trueShare = truth.flowerPx / truth.canopyPx;
  const photo = await readUprightPhoto(new Uint8Array(readFileSync(await shotFile(plant.view))));
  const reference = (
    await readUprightPhoto(new Uint8Array(readFileSync(await emptyStandFile(plant.emptyView))))
  ).raster;
  const stand = { reference, sheet: null, cameraDistanceMm: null, focalLengthPx: null };
  const options = { ...NOTHING_KNOWN, network, stand, photoName: plant.name, rimMm: 130, turnDeg: null };
  const { report, found } = await measurePhoto(photo, options);
  const name = plant.name.padEnd(34);
  if (found === null || report.canopy === null) {
    console.log(`${name} true ${points(trueShare)}  not measured: ${report.status}`);
    return;
  }
  const share = report.canopy.flowerShare ?? 0;
  let [missed, taken, canopyMissed] = [0, 0, 0];
  found.parts.data.forEach((part, at) => {
    const isFlower = truth.flower.data[at] === 1;
    if (isFlower && part === LEAF) missed++;
    if (!isFlower && part === FLOWER) taken++;
    if (isFlower && part !== LEAF && part !== FLOWER) canopyMissed++;
  });
  const headsWords = (mmPerPx: number | null) => {
    if (mmPerPx === null) return 'not told without a scale';
    const patches = flowerPatches(found.parts).map(
      (px) => px * (mmPerPx * (photo.widthPx / photo.raster.width)) ** 2,
    );
    const { least, most } = flowerHeads(patches, usualHeadSize('regal'));
    // A head of which less than a quarter of a small one shows is none that a grower would count.
    const seen = truth.headsPx.filter((px) => px * mmPerPx ** 2 > (Math.PI / 16) * 45 ** 2).length;
    headCounts.push(least <= seen && seen <= most);
    return `${least}–${most}, true ${seen}`;
  };
  const yellow = report.foliage?.yellow;
  // No leaf of these plants is yellow.
  if (yellow) yellowLeaf.push({ plant, share: yellow.share, plusMinus: yellow.plusMinus });
  const of = (px: number) => points(px / truth.canopyPx);
  console.log(
    `${name} true ${points(trueShare)} read ${points(share)} off ${points(share - trueShare)}   petal called leaf ${of(missed)}, leaf called petal ${of(taken)}, petal cut away ${of(canopyMissed)}; heads ${headsWords(report.scale?.mmPerPx ?? null)}`,
  );
  offs.push({ plant, off: Math.abs(share - trueShare), plusMinus: report.flower?.plusMinus ?? 0 });
}

const points = (share: number) => (100 * share).toFixed(1).padStart(5);
const at = (values: readonly number[], share: number) => {
  const sorted = [...values].sort((a, b) => a - b);
  return points(sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN);
};

const plants = inLights ? floweringPlants(first, { size: 0.35, samplesPerSide: 2 }) : floweringPlants(first);
for (const [k, plant] of plants.entries()) {
  if (!plant.name.includes(named)) continue;
  if (!inLights) await onePlant(plant);
  else {
    const light = LIGHT_NAMES[k % LIGHT_NAMES.length] as LightName;
    const exposure = EXPOSURES[k % EXPOSURES.length] as number;
    const name = `${plant.name} ${light} × ${exposure}`;
    await onePlant({ ...plant, name, view: inLight(plant.view, light, exposure) });
  }
}
const groups: [string, (plant: FloweringPlant) => boolean][] = [
  ['all plain', ({ isRedCloth }) => !isRedCloth],
  ...([...PETAL_NAMES, 'none'] as const).map((petals): [string, (plant: FloweringPlant) => boolean] => [
    petals,
    (plant) => plant.petals === petals && !plant.isRedCloth,
  ]),
  ['red before red', ({ isRedCloth }) => isRedCloth],
];
console.log('\npoints off: median, 90th percentile, worst');
for (const [words, isIn] of groups) {
  const values = offs.filter(({ plant }) => isIn(plant)).map(({ off }) => off);
  console.log(
    `${words.padEnd(16)} ${String(values.length).padStart(3)} photos ${at(values, 0.5)} ${at(values, 0.9)} ${at(values, 1)}`,
  );
}
console.log(
  '\nyellow leaf read, where there is none: median, 90th percentile, worst; photos in which its plus-minus holds 0',
);
for (const [words, isIn] of groups) {
  const some = yellowLeaf.filter(({ plant }) => isIn(plant));
  const values = some.map(({ share }) => share);
  const holds = some.filter(({ share, plusMinus }) => share <= plusMinus).length;
  console.log(
    `${words.padEnd(16)} ${String(values.length).padStart(3)} photos ${at(values, 0.5)} ${at(values, 0.9)} ${at(values, 1)}; ${holds}`,
  );
}
const held = offs.filter(({ off, plusMinus }) => off <= plusMinus).length;
console.log(`\nplus-minus holds the true share in ${held} of ${offs.length}`);
console.log(
  `\nheads within the range told: ${headCounts.filter((isIn) => isIn).length} of ${headCounts.length}`,
);
