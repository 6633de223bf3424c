import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';
import { EnvironmentUnusable, readEnvironment } from '../../server/environment.ts';
import { measureFile, NO_STAND } from '../../server/measuring/measure-file.ts';
import { loadNetwork, networkAtHand } from '../../server/measuring/network.ts';
import { openBench, temporaryFolder } from './fixtures/open-bench.ts';
import { plantJpeg } from './fixtures/photos.ts';

describe('the trained network', () => {
  it('is heard unless the environment says off', () => {
    expect(readEnvironment({}).RONDURE_NETWORK).toBe('on');
    expect(readEnvironment({ RONDURE_NETWORK: 'off' }).RONDURE_NETWORK).toBe('off');
    expect(() => readEnvironment({ RONDURE_NETWORK: 'maybe' })).toThrow(EnvironmentUnusable);
    expect(() => readEnvironment({ RONDURE_NETWORK: 'maybe' })).toThrow('RONDURE_NETWORK must be on or off.');
  });

  it.each([true, false])('is wanted by every task or by none (%s)', async (network) => {
    const { addPlant, upload, measured, corrected, services, send } = await openBench({ network });
    const plant = await addPlant();
    const sent = await upload(plant.id, [{ name: 'a.jpg', bytes: await plantJpeg() }]);
    await services.queue.whenIdle();
    await send('PUT', `/api/views/${sent.body.photos[0].view.id}/strokes`, { strokes: [] });
    expect([...measured, ...corrected].map((task) => task.network)).toEqual([network, network]);
  });

  it('opens, and when left out the report says so', async () => {
    expect(await networkAtHand(true)).toMatchObject({ network: expect.anything(), note: null });
    const path = join(temporaryFolder(), 'a.jpg');
    writeFileSync(path, await plantJpeg());
    const task = {
      path,
      photoName: 'a.jpg',
      rimMm: 130,
      emptyPath: null,
      stand: NO_STAND,
      turnDeg: null,
      colours: null,
      lastOutline: null,
      normalLeaf: null,
      strokes: [],
      pictures: 'none',
    } as const;
    const note = 'Measured without the trained network, as was asked for.';
    const without = await measureFile({ ...task, network: false });
    expect(without.report).toMatchObject({ status: 'measured', notes: expect.arrayContaining([note]) });
    expect((await measureFile({ ...task, network: true })).report.notes).not.toContain(note);
  });

  it('that cannot be loaded is done without, and the note says why', async () => {
    const lost = pathToFileURL(join(temporaryFolder(), 'lost.onnx'));
    const { network, note } = await loadNetwork(lost);
    expect(network).toBeNull();
    expect(note).toMatch(/^Measured without the trained network, which could not be loaded\. .*ENOENT/);

    const broken = join(temporaryFolder(), 'broken.onnx');
    writeFileSync(broken, 'no network');
    expect((await loadNetwork(pathToFileURL(broken))).network).toBeNull();
  });
});
