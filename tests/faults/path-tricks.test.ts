import {
  appendFileSync,
  cpSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  unlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { sha256OfFile } from '../../server/backup/manifest.ts';
import { layOutBackup } from '../../server/backup/restore.ts';
import { OPERATIONS } from '../../server/openapi/operations.ts';
import { openBench, type TestBench, temporaryFolder } from '../server/fixtures/open-bench.ts';
import { plantJpeg } from '../server/fixtures/photos.ts';
import { rawRequest } from '../server/pairing/raw-request.ts';
import { pathForms } from './path-forms.ts';

const SECRET = 'the planted secret that nobody may read 7f3a9c';
/** How every database file of SQLite begins (sqlite.org/fileformat.html, 1.3). */
const DATABASE = 'SQLite format 3';

/** A bench in a folder beside a secret, with one plant, one photo, one backup and a built screen. */
async function benchBesideSecret() {
  const outer = temporaryFolder();
  const [homePath, webFolder, secret] = [join(outer, 'home'), join(outer, 'web'), join(outer, 'secret.txt')];
  writeFileSync(secret, SECRET);
  mkdirSync(join(webFolder, 'assets'), { recursive: true });
  writeFileSync(join(webFolder, 'index.html'), '<title>bench</title>');
  writeFileSync(join(webFolder, 'assets/app.js'), 'export {}');
  const bench = await openBench({ homePath, webFolder });
  const plant = await bench.addPlant();
  const sent = await bench.upload(plant.id, [{ name: 'a.jpg', bytes: await plantJpeg() }]);
  await bench.services.queue.whenIdle();
  await bench.send('POST', '/api/keeping/backups');
  await bench.services.keeping.whenIdle();
  const { view } = sent.body.photos[0] as { view: { id: string; pictureUrl: string; maskUrl: string } };
  return { ...bench, outer, secret, plantId: plant.id, view };
}

function onlyFileBelow(folder: string): string {
  const [found, ...more] = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) =>
    /\.\w+$/.test(name),
  );
  if (found === undefined || more.length > 0) throw new Error(`Expected one file in ${folder}`);
  return join(folder, found);
}

const isLeak = (body: string) => body.includes(SECRET) || body.includes(DATABASE);

/** Every form with every method at every place takes minutes; asked for with RONDURE_PATHS=all. */
const ALL = process.env.RONDURE_PATHS === 'all';

interface Place {
  readonly method: string;
  readonly path: (form: string) => string;
}

/** The addresses of the interface that take a name, one for each of its places. */
function namedPlaces({ plantId, view }: { plantId: string; view: { id: string } }): Place[] {
  return OPERATIONS.flatMap(({ method, path }) =>
    (path.match(/\{\w+\}/g) ?? []).map((place) => ({
      method: method.toUpperCase(),
      path: (form: string) =>
        `/api${path.replace(place, () => form).replaceAll(/\{\w+\}/g, path.startsWith('/views/') ? view.id : plantId)}`,
    })),
  );
}

/** The addresses that serve files, and those to which something can be added. */
function filePlaces({ plantId, view }: { plantId: string; view: { id: string } }): Place[] {
  return [
    '/',
    '/assets/',
    '/assets/app.js/',
    '/plants/',
    '/api/',
    `/api/views/${view.id}/picture?width=`,
    `/api/views/${view.id}/picture/`,
    `/api/views/${view.id}/mask?of=`,
    `/api/plants/${plantId}/photos/`,
  ].map((start) => ({ method: 'GET', path: (form) => start + form }));
}

describe('a name that leads out of a folder', () => {
  it(
    'gets nothing of a file outside, nor of the database, from any address that takes one',
    async () => {
      const bench = await benchBesideSecret();
      const forms = pathForms(bench.secret, ['secret.txt', 'home/rondure.sqlite', 'rondure.sqlite']);
      const kinds = new Set(forms.map(({ kind }) => kind));
      expect(kinds.size).toBeGreaterThanOrEqual(50);
      const [files, named] = [filePlaces(bench), namedPlaces(bench)];
      const leaks: string[] = [];
      const breakdowns: string[] = [];
      const seen = new Set<string>();
      let asked = 0;
      for (const { kind, form } of forms) {
        // How deep it climbs matters where files are served; a name is looked up whatever it is.
        const isNew = !seen.has(kind);
        seen.add(kind);
        const reading = named.filter(({ method }) => method === 'GET');
        const changing = named.filter(({ method }, k) => method !== 'GET' && k % 4 === seen.size % 4);
        const tried = [...files, ...(ALL ? named : isNew ? [...reading, ...changing] : [])];
        const answers = await Promise.all(
          tried.map(async ({ method, path }) => {
            const json = method === 'GET' || method === 'DELETE' ? undefined : {};
            const answer = await rawRequest(bench.url, path(form), { method, json });
            return { at: `${method} ${path(form)}`, answer };
          }),
        );
        asked += answers.length;
        for (const { at, answer } of answers) {
          if (isLeak(answer.body)) leaks.push(at);
          if (answer.status >= 500) breakdowns.push(`${at}: ${answer.status}`);
        }
      }
      expect(leaks).toEqual([]);
      expect(breakdowns).toEqual([]);
      // The same eyes see a leak when there is one.
      expect([
        isLeak(readFileSync(bench.secret, 'utf8')),
        isLeak(readFileSync(join(bench.homePath, 'rondure.sqlite'), 'latin1')),
      ]).toEqual([true, true]);
      console.log(
        `path tricks: ${kinds.size} kinds of form (${forms.length} with depths and files), ${asked} requests to ${files.length + named.length} places, 0 leaks, 0 breakdowns`,
      );
    },
    ALL ? 600_000 : 120_000,
  );

  it('gets nothing as a field either: what to check, where backups go, what a file is called', async () => {
    const bench = await benchBesideSecret();
    const before = new Set(
      readdirSync(bench.outer, { recursive: true, encoding: 'utf8' }).filter(
        (name) => !name.startsWith('home/'),
      ),
    );
    const forms = pathForms(bench.secret, ['secret.txt', 'rondure.sqlite']);
    const written = [...new Set(forms.flatMap(({ form }) => [form, decoded(form)]))];
    const leaks: string[] = [];
    for (const form of written) {
      const answers = [
        await bench.send('POST', '/api/keeping/check', { of: form }),
        await bench.send('PATCH', `/api/views/${bench.view.id}`, { day: form }),
      ];
      for (const { status, body } of answers) {
        expect(status, form).toBeGreaterThanOrEqual(400);
        expect(status, form).toBeLessThan(500);
        if (isLeak(JSON.stringify(body))) leaks.push(form);
      }
    }
    const bytes = await plantJpeg(3);
    const names = written.filter((_, k) => k % 8 === 0);
    for (const [k, name] of names.entries()) {
      const { body } = await bench.upload(bench.plantId, [
        { name, bytes: k === 0 ? bytes : Buffer.from('no photo') },
      ]);
      // A name that no part of an upload may have is refused whole.
      const entry = body.photos?.[0];
      expect(entry?.fileName ?? entry?.view?.fileName ?? '', name).not.toMatch(/[\\/\0]/);
    }
    const after = readdirSync(bench.outer, { recursive: true, encoding: 'utf8' }).filter(
      (name) => !name.startsWith('home/'),
    );
    expect(after.filter((name) => !before.has(name))).toEqual([]);
    expect(leaks).toEqual([]);
    console.log(
      `fields: ${written.length} forms as what to check and as a day, ${names.length} as a file's name: 0 leaks, 0 files outside the data folder`,
    );
  }, 120_000);
});

function decoded(form: string): string {
  try {
    return decodeURIComponent(form);
  } catch {
    return form;
  }
}

describe('a link placed in the data folder', () => {
  const everything = async (bench: TestBench & { plantId: string; view: { id: string } }) => {
    const paths = ['320', '800', '1600'].map((width) => `/api/views/${bench.view.id}/picture?width=${width}`);
    const bodies = await Promise.all(
      [
        ...paths,
        `/api/views/${bench.view.id}/mask`,
        `/api/plants/${bench.plantId}`,
        `/api/plants/${bench.plantId}/year.csv`,
        '/api/keeping',
        '/secret.txt',
        '/rondure.sqlite',
        '/photos/secret.txt',
      ].map((path) => rawRequest(bench.url, path)),
    );
    return bodies.map(({ body }) => body).join('\n');
  };

  it.each(['photo', 'picture', 'folder of a picture'])(
    'in place of a %s shows nothing of where it leads',
    async (what) => {
      const bench = await benchBesideSecret();
      const { photos, pictures } = bench.services.home;
      const picture = onlyFileBelow(pictures);
      if (what === 'photo') {
        const photo = onlyFileBelow(photos);
        unlinkSync(photo);
        unlinkSync(picture);
        // A photo outside: one that the program could show.
        const outside = join(bench.outer, 'outside.jpg');
        writeFileSync(outside, await plantJpeg(77));
        symlinkSync(outside, photo);
        for (const width of ['320', '800', '1600']) {
          expect((await bench.send('GET', `/api/views/${bench.view.id}/picture?width=${width}`)).status).toBe(
            500,
          );
        }
        unlinkSync(photo);
        symlinkSync(bench.secret, photo);
      } else if (what === 'picture') {
        unlinkSync(picture);
        symlinkSync(bench.secret, picture);
      } else {
        const folder = join(picture, '..');
        const away = join(bench.outer, 'away');
        cpSync(folder, away, { recursive: true });
        rmSync(folder, { recursive: true });
        for (const name of readdirSync(away)) writeFileSync(join(away, name), SECRET);
        symlinkSync(away, folder);
      }
      symlinkSync(bench.secret, join(bench.homePath, 'secret.txt'));
      symlinkSync(bench.secret, join(photos, 'secret.txt'));
      symlinkSync(bench.outer, join(bench.homePath, 'backups', 'outer'));
      expect(isLeak(await everything(bench))).toBe(false);
      if (what === 'photo') return;
      const shown = await bench.send('GET', `/api/views/${bench.view.id}/picture`);
      expect(shown.status).toBe(200);
      expect(shown.headers.get('content-type')).toBe('image/jpeg');
    },
  );
});

describe('a backup that would lead out of itself', () => {
  const outcome = (bench: Awaited<ReturnType<typeof benchBesideSecret>>, backup: string) =>
    layOutBackup({ backup, homeRoot: bench.homePath });
  const backupOf = ({ homePath }: TestBench) => {
    const [name] = readdirSync(join(homePath, 'backups'));
    return join(homePath, 'backups', name as string);
  };

  it('by a name in its list is refused, and nothing is written outside', async () => {
    const bench = await benchBesideSecret();
    const backup = backupOf(bench);
    const list = join(backup, 'SHA256SUMS');
    const good = readFileSync(list, 'utf8');
    const sum = await sha256OfFile(bench.secret);
    const forms = pathForms(bench.secret, ['secret.txt', 'home/rondure.sqlite']);
    const names = [
      ...new Set(
        forms.flatMap(({ form }) => [form, `photos/${form}`, `photos/ab/${decoded(form)}`, decoded(form)]),
      ),
    ];
    const before = readdirSync(bench.outer);
    for (const name of names) {
      writeFileSync(list, `${good}${sum}  ${name}\n`);
      const result = await outcome(bench, backup);
      expect(result, name).toMatchObject({
        ok: false,
        words: expect.stringMatching(/The store was left as it is\.$/),
      });
    }
    expect(readdirSync(bench.outer)).toEqual(before);
    expect(existsSync(join(bench.homePath, 'restored'))).toBe(false);
    writeFileSync(list, good);
    expect((await outcome(bench, backup)).ok).toBe(true);
    console.log(
      `restore: ${names.length} names in the list of a backup, all refused, nothing written outside`,
    );
  }, 60_000);

  it('by a link among its files is refused', async () => {
    const bench = await benchBesideSecret();
    const backup = backupOf(bench);
    const photo = onlyFileBelow(join(backup, 'photos'));
    const bytes = readFileSync(photo);
    unlinkSync(photo);
    // The very bytes, so that only the link is wrong.
    const outside = join(bench.outer, 'outside.jpg');
    writeFileSync(outside, bytes);
    symlinkSync(outside, photo);
    expect(await outcome(bench, backup)).toMatchObject({
      ok: false,
      words: expect.stringContaining('leads out of the backup'),
    });
    expect(existsSync(join(bench.homePath, 'restored'))).toBe(false);
  });

  it('by the name of a photo in its database is refused', async () => {
    const bench = await benchBesideSecret();
    const backup = backupOf(bench);
    const database = join(backup, 'rondure.sqlite');
    const db = new BetterSqlite3(database);
    const name = `/../../../secret.txt${'/.'.repeat(40)}`.slice(0, 64);
    db.prepare(
      `INSERT INTO photos (sha256, format, byte_count, width_px, height_px, kept_at) VALUES (?, 'jpeg', 1, 1, 1, '2026')`,
    ).run(name);
    db.close();
    const list = join(backup, 'SHA256SUMS');
    const others = readFileSync(list, 'utf8')
      .split('\n')
      .filter((line) => line !== '' && !line.endsWith('  rondure.sqlite'));
    writeFileSync(list, `${others.join('\n')}\n`);
    appendFileSync(list, `${await sha256OfFile(database)}  rondure.sqlite\n`);
    expect(await outcome(bench, backup)).toMatchObject({
      ok: false,
      words: expect.stringContaining('names photos in a way that no version does'),
    });
  });
});
