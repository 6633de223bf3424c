import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import pino from 'pino';
import sharp from 'sharp';
import { describe, expect, it, onTestFinished } from 'vitest';
import { METHOD_VERSION } from '../../core/method-version.ts';
import { type House, openHouse } from '../../server/house.ts';
import { cutListSchema } from '../../server/schemas/cuts.ts';
import { plantPageSchema } from '../../server/schemas/pages.ts';
import { viewSchema } from '../../server/schemas/sitting.ts';
import { standOverlaySchema, standSchema } from '../../server/schemas/stand.ts';
import { hullSolidSchema } from '../../server/schemas/turned.ts';
import { serve } from '../../server/serve.ts';
import { client, onlyEntry } from './fixtures/client.ts';
import { openBench, temporaryFolder } from './fixtures/open-bench.ts';
import { plantJpeg, turnedHeic } from './fixtures/photos.ts';

async function openRealHouse(homePath: string) {
  const house: House = openHouse(homePath, pino({ level: 'silent' }));
  const serving = await serve(house.services, {
    host: '127.0.0.1',
    port: 0,
    webFolder: join(homePath, 'no-web'),
  });
  onTestFinished(async () => {
    await serving.close();
    await house.close();
  });
  return { house, ...client(serving.url) };
}

describe('the server with its worker threads', () => {
  it('measures JPEG and HEIC, and never loads the pixel library or the HEIC decoder on the main thread', async () => {
    const { addPlant, upload, send, house } = await openRealHouse(temporaryFolder());
    const plant = await addPlant({ rimMm: 130 });
    for (const [name, bytes] of [
      ['ball.jpg', await plantJpeg()],
      ['turned.heic', turnedHeic()],
    ] as const) {
      const entry = onlyEntry(await upload(plant.id, [{ name, bytes }]));
      if (entry.outcome !== 'kept') throw new Error(entry.detail);
      await house.services.queue.whenIdle();
      const view = viewSchema.parse((await send('GET', `/api/views/${entry.view.id}`)).body);
      expect(view).toMatchObject({
        state: 'measured',
        methodVersion: METHOD_VERSION,
        report: { photo: name, status: 'measured' },
      });
      // The drawn ball is even, and its rim is there to be found.
      expect(view.report?.roundness?.score).toBeGreaterThan(85);
      expect(view.report?.scale?.mmPerPx).toBeGreaterThan(0.5);
      expect(view.outlinePx.length).toBeGreaterThan(50);
      const mask = await sharp((await send('GET', view.maskUrl ?? '')).body).metadata();
      expect([mask.width, mask.height, mask.hasAlpha]).toEqual([view.widthPx, view.heightPx, true]);
    }
    const loaded = Object.keys(createRequire(import.meta.url).cache).join('\n');
    expect(loaded).toContain('node_modules/better-sqlite3/');
    expect(loaded).not.toContain('node_modules/opencv-wasm/');
    expect(loaded).not.toContain('node_modules/heic-decode/');
  });

  it('looks at the empty photo of a stand and brings a photo in line with it', async () => {
    const { addPlant, upload, send, house } = await openRealHouse(temporaryFolder());
    const { body: made } = await send('POST', '/api/stands', { name: 'Greenhouse', sinceDay: '2026-09-01' });
    const folder = join(import.meta.dirname, '../../sample-images/greenhouse-regal');
    const form = new FormData();
    form.append('photo', new Blob([readFileSync(join(folder, 'empty.jpg'))]), 'empty.jpg');
    const { body: stand } = await send('PUT', `/api/stands/${made.id}/empty-photo`, form);
    expect(standSchema.parse(stand).emptyPhoto?.check).toMatchObject({ good: true, brightness: 'good' });
    const plant = await addPlant({ rimMm: 130, standId: made.id });
    const bytes = readFileSync(join(folder, '2026-11-01.jpg'));
    const entry = onlyEntry(await upload(plant.id, [{ name: 'a.jpg', bytes }], { day: '2026-11-01' }));
    if (entry.outcome !== 'kept') throw new Error(entry.detail);
    await house.services.queue.whenIdle();
    const view = viewSchema.parse((await send('GET', `/api/views/${entry.view.id}`)).body);
    // The rendered camera stood still.
    expect(view.report?.frame).toMatchObject({ standing: 'same', from: 'features' });
    expect(Math.hypot(...(view.report?.frame?.shiftPx ?? [99, 99]))).toBeLessThan(4);
    const { body } = await send('GET', `/api/stands/${made.id}/overlay?plant=${plant.id}`);
    expect(standOverlaySchema.parse(body).outlinePx.length).toBeGreaterThan(50);
  });

  it('joins the views of a sitting, cuts their hull and places their stems', async () => {
    const { addPlant, upload, send, house } = await openRealHouse(temporaryFolder());
    const plant = await addPlant({ rimMm: 130 });
    const folder = join(import.meta.dirname, '../../sample-images/window-regal');
    for (const [name, turnDeg] of [
      ['2026-10-11.jpg', '0'],
      ['2026-10-11-turn090.jpg', '90'],
    ] as const) {
      const bytes = readFileSync(join(folder, name));
      onlyEntry(await upload(plant.id, [{ name, bytes }], { day: '2026-10-11', turnDeg }));
    }
    await house.services.queue.whenIdle();
    const [sitting] = plantPageSchema.parse((await send('GET', `/api/plants/${plant.id}`)).body).sittings;
    expect(sitting?.turnedState).toBe('ready');
    // The rendered plant leans to azimuth 90, its ball by 13 % of its radius.
    const lean = sitting?.turned?.plan.lopsidedness;
    expect(Math.abs((lean?.azimuthDeg ?? 0) - 90)).toBeLessThan(20);
    expect(lean?.percent).toBeGreaterThan(8);
    const solid = hullSolidSchema.parse((await send('GET', `/api/sittings/${sitting?.id}/hull`)).body);
    expect(solid).toMatchObject({ unit: 'mm', heavyAzimuthDeg: lean?.azimuthDeg });
    expect(solid.triangles.length).toBeGreaterThan(3000);
    const list = cutListSchema.parse((await send('GET', `/api/sittings/${sitting?.id}/cut-list`)).body);
    expect([list.from, list.viewIds]).toEqual(['turned', sitting?.turnedViewIds]);
    expect(list.lean?.before).toEqual(lean);
    expect(list.outlinesAfter.map(({ viewId }) => viewId)).toEqual(list.viewIds);
  });

  it('goes on after a stop with what was left half-measured or measured by an older method', async () => {
    const homePath = temporaryFolder();
    let stopAt: () => void = () => {};
    const underWay = new Promise<void>((resolve) => {
      stopAt = resolve;
    });
    const before = await openBench({
      homePath,
      measure: () => {
        stopAt();
        return new Promise(() => {});
      },
    });
    const plant = await before.addPlant();
    const entry = onlyEntry(await before.upload(plant.id, [{ name: 'a.jpg', bytes: await plantJpeg() }]));
    if (entry.outcome !== 'kept') throw new Error(entry.detail);
    await underWay;
    const path = `/api/views/${entry.view.id}`;
    expect((await before.send('GET', path)).body.state).toBe('measuring');
    before.services.queue.close();

    const after = await openBench({ homePath });
    await after.services.queue.whenIdle();
    expect((await after.send('GET', path)).body.state).toBe('measured');
    after.services.db.prepare("UPDATE measurements SET method_version = '0'").run();

    const later = await openBench({ homePath });
    await later.services.queue.whenIdle();
    expect(later.measured.length).toBe(1);
    expect((await later.send('GET', path)).body.methodVersion).toBe(METHOD_VERSION);

    const last = await openBench({ homePath });
    await last.services.queue.whenIdle();
    expect(last.measured.length).toBe(0);
  });
});
