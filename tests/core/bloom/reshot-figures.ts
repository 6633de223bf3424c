/**
 * How well the flower share of one unchanged plant repeats from photo to photo, and whether its plus-minus said so, through the real
 * cut-out, printed as a table.
 *
 * `node --import tsx tests/core/bloom/reshot-figures.ts [SHOTS] [FIRST] [EVERY]`: SHOTS photos a plant (default 6), each with the camera put up anew, other light, noise
 * and leaves that moved (`tests/reshot/disturb.ts`); seeds from FIRST (default 7400), every EVERYth plant (default 1). Renders are kept in the
 * system's folder for passing files.
 */

import { readFileSync } from 'node:fs';
import { NOTHING_KNOWN } from '../../../core/canopy/known.ts';
import { openNetwork } from '../../../core/canopy/model/onnx-door.ts';
import { measurePhoto } from '../../../core/measure-photo.ts';
import type { Repeatable } from '../../../core/trend/change-since.ts';
import { readUprightPhoto } from '../../../server/intake/read-upright-photo.ts';
import { disturbed, USUAL } from '../../reshot/disturb.ts';
import { coverageOf, type Repeatability, repeatabilityOf } from '../../reshot/repeatability.ts';
import { emptyStandFile, shotFile } from '../../reshot/shots.ts';
import { type FloweringPlant, floweringPlants } from './flowering-plants.ts';

const [shots = 6, first = 7400, every = 1] = process.argv.slice(2).map(Number);
const DRAFT = { size: 0.35, samplesPerSide: 2 };
const network = await openNetwork(
  new Uint8Array(readFileSync(new URL('../../../core/canopy/model/first-guess.onnx', import.meta.url))),
);

async function readings({ view, emptyView }: FloweringPlant): Promise<Repeatable[]> {
  const reference = (await readUprightPhoto(new Uint8Array(readFileSync(await emptyStandFile(emptyView)))))
    .raster;
  const stand = { reference, sheet: null, cameraDistanceMm: null, focalLengthPx: null };
  const found: Repeatable[] = [];
  for (let shot = 0; shot < shots; shot++) {
    const file = await shotFile(disturbed(view, shot, USUAL));
    const photo = await readUprightPhoto(new Uint8Array(readFileSync(file)));
    const options = { ...NOTHING_KNOWN, network, stand, photoName: '', rimMm: null, turnDeg: null };
    const { report } = await measurePhoto(photo, options);
    if (report.flower === null) continue;
    const { share, plusMinus } = report.flower;
    found.push({ value: 100 * share, plusMinus: 100 * plusMinus });
  }
  return found;
}

const told: Repeatability[] = [];
for (const plant of floweringPlants(first, DRAFT).filter((_, k) => k % every === 0)) {
  const seen = await readings(plant);
  if (seen.length < 2) continue;
  const one = repeatabilityOf(seen);
  told.push(one);
  console.log(
    `${plant.name.padEnd(34)} ${one.shots} photos, mean ${one.mean.toFixed(1).padStart(5)}, spread ${one.spread.toFixed(2)}, stated ${one.statedSpread.toFixed(2)}`,
  );
}
const covered = coverageOf(told);
const ratios = told
  .map(({ spread, statedSpread }) => spread / statedSpread)
  .sort((one, other) => one - other);
console.log(
  `\n${told.length} plants; mean inside the plus-minus ${(100 * covered.inside).toFixed(0)} %, pairs called unchanged ${(100 * covered.unchanged).toFixed(0)} % (95 asked); spread ÷ stated, median ${ratios[ratios.length >> 1]?.toFixed(2)}`,
);
