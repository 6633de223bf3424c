import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { openNetwork } from '../../core/canopy/model/onnx-door.ts';
import { readUprightPhoto } from '../../server/intake/read-upright-photo.ts';
import { disturbed, USUAL } from './disturb.ts';
import { MEASURES, readingsOf, type ShotReadings } from './measure-shots.ts';
import { reshotPlants } from './plants.ts';
import { coverageOf } from './repeatability.ts';
import { emptyStandFile, shotFile } from './shots.ts';
import { repeatabilityIn } from './table.ts';

/** Small photos of few plants: enough to see a plus-minus that is far from true. `main.ts` looks closely. */
const DRAFT = { size: 0.3, samplesPerSide: 2 };
const [PLANTS, SHOTS] = [3, 5];

describe('plants photographed again', { timeout: 600_000 }, () => {
  const plants: { readonly name: string; readonly shots: readonly ShotReadings[] }[] = [];

  beforeAll(async () => {
    const network = await openNetwork(readFileSync('core/canopy/model/first-guess.onnx'));
    for (const { name, rimMm, view } of reshotPlants(DRAFT, 0, PLANTS)) {
      const { raster } = await readUprightPhoto(new Uint8Array(readFileSync(await emptyStandFile(view))));
      const shots = [];
      for (let shot = 0; shot < SHOTS; shot++) {
        const file = await shotFile(disturbed(view, shot, USUAL));
        shots.push(await readingsOf(file, raster, rimMm, network));
      }
      plants.push({ name, shots });
    }
  }, 600_000);

  it.each(MEASURES)('keep their %s inside the stated plus-minus', (measure) => {
    const found = plants.map(({ shots }) =>
      repeatabilityIn(
        shots.map(({ alone }) => alone),
        measure,
      ),
    );
    const known = found.filter((one) => one !== null);
    expect(known).toHaveLength(PLANTS);
    expect(coverageOf(known).unchanged).toBeGreaterThan(0.8);
  });

  it.each(['roundness', 'symmetry', 'lopsidedness'] as const)(
    'are not given a %s far too vague',
    (measure) => {
      for (const { name, shots } of plants) {
        for (const { alone } of shots) expect(alone[measure]?.plusMinus, name).toBeLessThan(12);
      }
    },
  );
});
