import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { filmSize, thinned } from '../../server/film/film-size.ts';
import { type FilmFile, filmSchema } from '../../server/schemas/film.ts';
import { openBench, sampleMeasurement } from './fixtures/open-bench.ts';
import { cameraJpeg } from './fixtures/photos.ts';

const RIM = {
  xPx: 320,
  rimLeftPx: [270, 350] as const,
  rimRightPx: [370, 350] as const,
  rimEllipse: null,
};

async function benchWithWeeks(count: number) {
  const bench = await openBench({
    measure: async (task) => {
      const measured = sampleMeasurement(task);
      return { ...measured, report: { ...measured.report, axis: RIM } };
    },
  });
  const plant = await bench.addPlant({ name: 'Großer Kürbis', rimMm: 130 });
  const files = await Promise.all(
    Array.from({ length: count }, async (_, week) => ({
      name: `${week}.jpg`,
      bytes: await cameraJpeg(`2026:02:${String(1 + 7 * week).padStart(2, '0')} 10:00:00`, {
        seed: week + 1,
        gps: true,
      }),
    })),
  );
  await bench.upload(plant.id, files);
  await bench.services.queue.whenIdle();
  const made = async (form: object): Promise<FilmFile> => {
    const begun = await bench.send('POST', `/api/plants/${plant.id}/films`, form);
    expect(begun.status).toBe(202);
    for (;;) {
      const film = filmSchema.parse((await bench.send('GET', `/api/films/${begun.body.id}`)).body);
      if (film.state === 'ready' || film.state === 'failed') return film;
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
  };
  const file = async (id: string) => {
    const answer = await fetch(`${bench.url}/api/films/${id}/file`);
    return { answer, bytes: Buffer.from(await answer.arrayBuffer()) };
  };
  return { ...bench, plant, made, file };
}

describe('a film as a file', () => {
  it('is an animated WebP with a picture a day, named by plant and days, without camera data or place', async () => {
    const { made, file } = await benchWithWeeks(3);
    const film = await made({ format: 'webp', perSecond: 2 });
    expect(film).toMatchObject({ state: 'ready', drawn: 3, of: 3, thinnedFrom: null });
    expect(film.fileName).toMatch(/-2026-02-01-to-2026-02-15\.webp$/);
    const { answer, bytes } = await file(film.id);
    expect(answer.headers.get('content-disposition')).toContain(film.fileName);
    const read = await sharp(bytes, { animated: true }).metadata();
    expect([read.format, read.pages, read.delay, read.loop]).toEqual(['webp', 3, [500, 500, 1500], 0]);
    expect([read.exif, read.xmp, read.icc, read.iptc]).toEqual([undefined, undefined, undefined, undefined]);
    expect(bytes.includes('Invented Camera Works')).toBe(false);
    // Chunks of the container (RIFF, WebP container specification): an animation, and no EXIF or XMP.
    expect(bytes.includes('ANIM')).toBe(true);
    expect(bytes.includes('EXIF')).toBe(false);
  });

  it('is a GIF of as many pictures when asked', async () => {
    const { made, file } = await benchWithWeeks(3);
    const film = await made({ format: 'gif' });
    const { answer, bytes } = await file(film.id);
    expect(answer.headers.get('content-type')).toBe('image/gif');
    // GIF89a specification: a graphic control extension goes before each picture.
    expect(bytes.subarray(0, 6).toString('latin1')).toBe('GIF89a');
    expect(bytes.toString('latin1').split('\x21\xf9\x04').length - 1).toBe(3);
  });

  it('is refused with a sentence where one photo is all there is, and for a format that is none', async () => {
    const { send, plant } = await benchWithWeeks(1);
    const few = await send('POST', `/api/plants/${plant.id}/films`, { format: 'gif' });
    expect([few.status, few.body.detail]).toEqual([
      409,
      'A film needs two photos at least, measured and from one camera place. Add more photos, or choose another side.',
    ]);
    const odd = await send('POST', `/api/plants/${plant.id}/films`, { format: 'mp4' });
    expect(odd.body.errors[0].detail).toBe('A film is written as "webp" or "gif".');
  });

  it('says so when another one is being made', async () => {
    const { send, plant } = await benchWithWeeks(2);
    const path = `/api/plants/${plant.id}/films`;
    const [one, other] = await Promise.all([
      send('POST', path, { format: 'webp' }),
      send('POST', path, { format: 'webp' }),
    ]);
    expect([one.status, other.status].sort()).toEqual([202, 409]);
  });
});

describe('the bounds of a film', () => {
  it('hold the longest side and all px together, and never enlarge', () => {
    const window = { x: 0, y: 0, width: 3000, height: 2400 };
    expect(filmSize(window, 10, 'webp')).toEqual({ width: 720, height: 576 });
    const many = filmSize(window, 120, 'gif');
    expect(many.width * many.height * 120).toBeLessThanOrEqual(9_000_000);
    expect(filmSize({ ...window, width: 200, height: 100 }, 2, 'webp')).toEqual({ width: 200, height: 100 });
  });

  it('thin a long film evenly, with its first and last picture', () => {
    const long = thinned(
      Array.from({ length: 500 }, (_, k) => k),
      120,
    );
    expect([long.length, long[0], long.at(-1)]).toEqual([120, 0, 499]);
  });
});
