import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { filmSchema } from '../../server/schemas/film.ts';
import { openBench, sampleMeasurement, temporaryFolder } from './fixtures/open-bench.ts';
import { PLACE_MARKS, placedHeic, placedPhoto } from './fixtures/photos.ts';

const AXIS = { xPx: 320, rimLeftPx: [270, 350] as const, rimRightPx: [370, 350] as const, rimEllipse: null };

/** A bench with the same plant in every format that is taken, each photo with its place on earth in EXIF and XMP. */
async function placedBench() {
  const bench = await openBench({
    measure: async (task) => {
      const measured = sampleMeasurement(task);
      return { ...measured, report: { ...measured.report, axis: AXIS } };
    },
  });
  const stand = (await bench.send('POST', '/api/stands', { name: 'Shed', sinceDay: '2026-01-01' })).body;
  const empty = new FormData();
  empty.append('photo', new Blob([new Uint8Array(await placedPhoto('jpeg', 9))]), 'empty.jpg');
  expect((await bench.send('PUT', `/api/stands/${stand.id}/empty-photo`, empty)).status).toBe(200);
  const plant = await bench.addPlant({ standId: stand.id, rimMm: 130 });
  const photos = {
    'a.jpg': await placedPhoto('jpeg', 1),
    'b.png': await placedPhoto('png', 2),
    'c.webp': await placedPhoto('webp', 3),
    'd.heic': placedHeic(),
  };
  const sent = await bench.upload(
    plant.id,
    Object.entries(photos).map(([name, bytes]) => ({ name, bytes })),
  );
  const views = sent.body.photos.map((entry: { view: { id: string; sittingId: string } }) => entry.view);
  await bench.services.queue.whenIdle();
  return { ...bench, plant, stand, photos, views: views as { id: string; sittingId: string }[] };
}

/** Marks of a place that are found in what was given out. */
function marksIn(bytes: Uint8Array): string[] {
  const text = Buffer.from(bytes).toString('latin1');
  return [...PLACE_MARKS, 'Exif\0\0', 'http://ns.adobe.com', 'Invented Camera Works', 'GPS'].filter((mark) =>
    text.includes(mark),
  );
}

describe('where a photo was taken', () => {
  it('stands in the photos that this test sends, so that it can be looked for', async () => {
    const { photos } = await placedBench();
    for (const [name, bytes] of Object.entries(photos)) {
      expect(bytes.includes('PLANTED-DATUM'), name).toBe(true);
      if (name.endsWith('heic')) continue;
      const { exif, xmp } = await sharp(bytes).metadata();
      expect([exif?.includes('PLANTED-DATUM'), xmp?.includes('GPSLatitude')], name).toEqual([true, true]);
    }
  });

  it('is in nothing that is served: pictures, masks, film, reports, lists, tables', async () => {
    const bench = await placedBench();
    const plantPath = `/api/plants/${bench.plant.id}`;
    const found: Record<string, string[]> = {};
    let pictures = 0;
    let texts = 0;
    const look = async (path: string, accept = '*/*') => {
      const answer = await fetch(bench.url + path, { headers: { accept } });
      const bytes = new Uint8Array(await answer.arrayBuffer());
      expect([path, answer.status]).toEqual([path, 200]);
      const marks = marksIn(bytes);
      if (marks.length > 0) found[`${path} (${accept})`] = marks;
      const type = answer.headers.get('content-type') ?? '';
      if (!type.startsWith('image/')) {
        texts += 1;
        return;
      }
      pictures += 1;
      // The masks of this bench are no whole pictures, and GIF has no room for camera data.
      if (path.includes('/mask') || type === 'image/gif') return;
      const { exif, xmp, iptc } = await sharp(bytes, { animated: true }).metadata();
      expect([exif, xmp, iptc], path).toEqual([undefined, undefined, undefined]);
    };
    for (const { id, sittingId } of bench.views) {
      for (const width of ['320', '800', '1600']) {
        for (const accept of ['image/jpeg', 'image/webp,*/*'])
          await look(`/api/views/${id}/picture?width=${width}`, accept);
      }
      await look(`/api/views/${id}/mask`);
      await look(`/api/views/${id}`);
      await look(`/api/sittings/${sittingId}/cut-list`);
    }
    const stands = (await bench.send('GET', '/api/stands')).body;
    const emptyUrl = JSON.stringify(stands).match(/\/api\/stands\/[^"]+\/empty-photo\/[^"]+/)?.[0];
    if (emptyUrl === undefined) throw new Error('Expected the address of the empty photo');
    for (const width of ['320', '1600']) await look(`${emptyUrl}?width=${width}`);
    for (const format of ['webp', 'gif']) {
      const begun = await bench.send('POST', `${plantPath}/films`, { format });
      expect(begun.status).toBe(202);
      const filmPath = `/api/films/${begun.body.id}`;
      await expect
        .poll(async () => filmSchema.parse((await bench.send('GET', filmPath)).body).state, {
          timeout: 30_000,
        })
        .toBe('ready');
      await look(`${filmPath}/file`);
    }
    await bench.send('POST', '/api/keeping/backups');
    await bench.services.keeping.whenIdle();
    for (const path of [
      '/api/bench',
      plantPath,
      `${plantPath}/year`,
      `${plantPath}/year.csv`,
      `${plantPath}/year.json`,
      `${plantPath}/season`,
      '/api/stands',
      `/api/stands/${bench.stand.id}/overlay?plant=${bench.plant.id}`,
      '/api/calendar',
      '/api/work',
      '/api/shows',
      '/api/keeping',
      '/api/openapi.json',
    ])
      await look(path);
    expect(found).toEqual({});
    console.log(
      `no place: ${pictures} pictures and films and ${texts} texts of JPEG, PNG, WebP and HEIC with GPS in EXIF and XMP: 0 marks of it`,
    );
  }, 120_000);

  it('stays in the original alone, which is kept byte for byte and never served', async () => {
    const { services, photos, url } = await placedBench();
    const kept = readdirSync(services.home.photos, { recursive: true, encoding: 'utf8' }).filter((name) =>
      /\.\w+$/.test(name),
    );
    const bytes = kept.map((name) => readFileSync(join(services.home.photos, name)));
    for (const [name, sent] of Object.entries(photos)) {
      expect(
        bytes.some((one) => one.equals(sent)),
        name,
      ).toBe(true);
    }
    for (const name of kept) {
      for (const path of [`/photos/${name}`, `/api/photos/${name}`, `/api/photos/${name.slice(3, 67)}`]) {
        expect((await fetch(url + path)).status, path).toBe(404);
      }
    }
    // Nor is it in the database, nor in the copies for the screen.
    const others = readdirSync(services.home.root, { recursive: true, encoding: 'utf8' }).filter((name) =>
      /sqlite|^pictures.*\.\w+$/.test(name),
    );
    expect(others.length).toBeGreaterThan(3);
    for (const name of others)
      expect([name, marksIn(readFileSync(join(services.home.root, name)))]).toEqual([name, []]);
  });

  it('is not printed by the command line, nor written into its masks', async () => {
    const folder = temporaryFolder();
    const photo = join(folder, 'a.jpg');
    writeFileSync(photo, await placedPhoto('jpeg', 1));
    const printed = execFileSync(
      process.execPath,
      ['--import', 'tsx', 'server/command-line/measure.ts', '--json', '--masks', folder, photo],
      { cwd: join(import.meta.dirname, '../..'), env: { ...process.env, RONDURE_NETWORK: 'off' } },
    );
    expect(JSON.parse(printed.toString())).toMatchObject({ photo: 'a.jpg' });
    expect(marksIn(printed)).toEqual([]);
    for (const name of readdirSync(folder).filter((one) => one.endsWith('.png'))) {
      expect(marksIn(readFileSync(join(folder, name)))).toEqual([]);
    }
  }, 120_000);
});
