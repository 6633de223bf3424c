import { cpSync, existsSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { makeBackup } from '../../../server/backup/make-backup.ts';
import { layOutBackup, swapInRestored } from '../../../server/backup/restore.ts';
import { homeFolders } from '../../../server/store/data-home.ts';
import { openBench, type TestBench, temporaryFolder } from '../fixtures/open-bench.ts';
import { plantJpeg } from '../fixtures/photos.ts';
import { allAnswers, filledBench, imprint } from './filled-bench.ts';

async function backedUp(bench: TestBench): Promise<string> {
  expect((await bench.send('POST', '/api/keeping/backups')).status).toBe(202);
  await bench.services.keeping.whenIdle();
  const { backups, failure } = (await bench.send('GET', '/api/keeping')).body;
  expect(failure).toBeNull();
  return join(bench.homePath, 'backups', backups[0].name);
}

/** A home in which a backup has taken the place of what was there. */
async function restoredHome(backup: string, homePath = temporaryFolder()): Promise<string> {
  expect(await layOutBackup({ backup, homeRoot: homePath })).toEqual({ ok: true });
  expect(swapInRestored(homePath)).toBe(true);
  return homePath;
}

describe('a backup', () => {
  it('restored into an empty home gives the same photos byte for byte, and the same answers', async () => {
    const bench = await filledBench();
    const backup = await backedUp(bench);
    const [photos, answers] = [imprint(join(bench.homePath, 'photos')), await allAnswers(bench)];
    const homePath = await restoredHome(backup);
    expect(imprint(join(homePath, 'photos'))).toEqual(photos);
    expect(existsSync(join(homePath, 'restored'))).toBe(false);
    const again = await openBench({ homePath });
    expect(await allAnswers(again)).toEqual(answers);
    await again.services.queue.whenIdle();
    expect(again.measured).toEqual([]);
    console.log(
      `backup and restore: ${Object.keys(photos).length} photos equal, ${Object.keys(answers as object).length} addresses answer the same`,
    );
  });

  it('made while photos come in holds a whole store of one moment', async () => {
    const bench = await filledBench();
    const [plantId = ''] = bench.plantIds;
    const photos = await Promise.all(Array.from({ length: 6 }, (_, k) => plantJpeg(100 + k)));
    const sending = photos.map((bytes, k) => bench.upload(plantId, [{ name: `${k}.jpg`, bytes }]));
    const backup = await backedUp(bench);
    await Promise.all(sending);
    const again = await openBench({ homePath: await restoredHome(backup) });
    const check = (await again.send('GET', '/api/keeping')).body;
    expect([check.missing, check.setAside]).toEqual([[], []]);
    expect((await again.send('GET', `/api/plants/${plantId}`)).status).toBe(200);
  });

  it('shares unchanged photos with the one before, and no photo with the store', async () => {
    const bench = await filledBench();
    const [first, second] = [await backedUp(bench), await backedUp(bench)];
    const [photo = ''] = Object.keys(imprint(join(first, 'photos')));
    const inode = (folder: string) => statSync(join(folder, 'photos', photo)).ino;
    expect(inode(second)).toBe(inode(first));
    expect(inode(first)).not.toBe(inode(bench.homePath));
  });

  it('gives way to newer ones, as many as the grower keeps', async () => {
    const bench = await filledBench();
    const plan = { everyDays: 3, keepCount: 2, folder: null };
    expect((await bench.send('PUT', '/api/keeping/plan', plan)).body.plan).toEqual(plan);
    const made = [await backedUp(bench), await backedUp(bench), await backedUp(bench)];
    expect(made.map((folder) => existsSync(folder))).toEqual([false, true, true]);
    const { backups, nextAt } = (await bench.send('GET', '/api/keeping')).body;
    expect(Date.parse(nextAt) - Date.parse(backups[0].madeAt)).toBe(3 * 24 * 3_600_000);
    expect(readdirSync(join(bench.homePath, 'backups'))).toHaveLength(2);
  });

  it('goes to the folder that the grower names, and says when that is not there', async () => {
    const bench = await filledBench();
    const folder = join(temporaryFolder(), 'stick');
    const plan = { everyDays: 1, keepCount: 7, folder };
    expect((await bench.send('PUT', '/api/keeping/plan', plan)).status).toBe(200);
    await bench.send('POST', '/api/keeping/backups');
    await bench.services.keeping.whenIdle();
    expect(readdirSync(folder)).toHaveLength(1);
    rmSync(folder, { recursive: true });
    const { folderFault, backups } = (await bench.send('GET', '/api/keeping')).body;
    expect([folderFault, backups]).toEqual([
      `${folder} is not there. See that its disk is plugged in, or choose another folder.`,
      [],
    ]);
    const wrong = await bench.send('PUT', '/api/keeping/plan', { ...plan, folder: 'stick' });
    expect([wrong.status, wrong.body.errors[0].pointer]).toEqual([422, '/folder']);
    const inPhotos = { ...plan, folder: bench.services.home.photos };
    expect((await bench.send('PUT', '/api/keeping/plan', inPhotos)).status).toBe(422);
    for (const bad of [{ everyDays: 0 }, { keepCount: 61 }, { everyDays: 1.5 }]) {
      expect((await bench.send('PUT', '/api/keeping/plan', { ...plan, ...bad })).status).toBe(422);
    }
  });

  it('leaves out a photo that is gone or spoilt, and names it', async () => {
    const bench = await filledBench();
    const [gone = '', spoilt = ''] = Object.keys(imprint(join(bench.homePath, 'photos')));
    rmSync(join(bench.homePath, 'photos', gone));
    writeFileSync(join(bench.homePath, 'photos', spoilt), 'not the photo');
    const outcome = await makeBackup({
      home: homeFolders(bench.homePath),
      folder: temporaryFolder(),
      keepCount: 2,
    });
    const names = [gone, spoilt].map((path) => path.slice(3, 67)).sort();
    expect(outcome).toMatchObject({ ok: true, backup: { photoCount: 2 } });
    expect(outcome.ok && [...outcome.backup.leftOut].sort()).toEqual(names);
  });
});

describe('a restore', () => {
  it('over a store puts that store aside, whole', async () => {
    const bench = await filledBench();
    const backup = await backedUp(bench);
    const other = await filledBench();
    const before = await allAnswers(other);
    const homePath = temporaryFolder();
    cpSync(other.homePath, homePath, { recursive: true });
    await restoredHome(backup, homePath);
    const again = await openBench({ homePath });
    expect(await allAnswers(again)).toEqual(await allAnswers(bench));
    const { replaced } = (await again.send('GET', '/api/keeping')).body;
    expect(replaced).toHaveLength(1);
    const old = await openBench({ homePath: join(homePath, replaced[0]) });
    expect(await allAnswers(old)).toEqual(before);
  });

  it.each([
    ['a photo is spoilt', (backup: string) => spoil(firstPhoto(backup)), /is not as it was kept/],
    ['a photo is gone', (backup: string) => rmSync(firstPhoto(backup)), /is not there/],
    [
      'the database is spoilt',
      (backup: string) => spoil(join(backup, 'rondure.sqlite')),
      /rondure\.sqlite is not/,
    ],
    ['the list is cut', (backup: string) => cut(join(backup, 'SHA256SUMS')), /breaks off|damaged|lacks/],
    ['there is no list', (backup: string) => rmSync(join(backup, 'SHA256SUMS')), /cannot be read \(ENOENT\)/],
    ['it is of a newer version', (backup: string) => makeNewer(backup), /made by a newer version/],
  ])('is refused when %s, and leaves the old store and nothing else', async (_, harm, sentence) => {
    const bench = await filledBench();
    const backup = await backedUp(bench);
    const before = await allAnswers(bench);
    harm(backup);
    const outcome = await layOutBackup({ backup, homeRoot: bench.homePath });
    expect(outcome).toEqual({ ok: false, words: expect.stringMatching(sentence) });
    expect(outcome.ok || outcome.words).toContain('The store was left as it is.');
    expect(readdirSync(bench.homePath).filter((name) => name.startsWith('restored'))).toEqual([]);
    expect(swapInRestored(bench.homePath)).toBe(false);
    expect(await allAnswers(bench)).toEqual(before);
  });

  it('that is stopped between any two of its moves is finished by the next start', async () => {
    const bench = await filledBench();
    const backup = await backedUp(bench);
    const answers = await allAnswers(bench);
    const other = await filledBench();
    const laidOut = temporaryFolder();
    cpSync(other.homePath, laidOut, { recursive: true });
    await layOutBackup({ backup, homeRoot: laidOut });
    const { renameSync } = await import('node:fs');
    const { replaced } = JSON.parse(readFileSync(join(laidOut, 'restored', 'swap.json'), 'utf8'));
    const moves = [
      ['rondure.sqlite', join(replaced, 'rondure.sqlite')],
      ['restored/rondure.sqlite', 'rondure.sqlite'],
      ['photos', join(replaced, 'photos')],
      ['restored/photos', 'photos'],
    ] as const;
    rmSync(join(laidOut, 'rondure.sqlite-wal'), { force: true });
    rmSync(join(laidOut, 'rondure.sqlite-shm'), { force: true });
    for (let made = 0; made <= moves.length; made += 1) {
      const homePath = temporaryFolder();
      cpSync(laidOut, homePath, { recursive: true });
      const { mkdirSync } = await import('node:fs');
      mkdirSync(join(homePath, replaced));
      for (const [from, to] of moves.slice(0, made)) renameSync(join(homePath, from), join(homePath, to));
      swapInRestored(homePath);
      const again = await openBench({ homePath });
      expect(await allAnswers(again)).toEqual(answers);
      expect(readdirSync(join(homePath, replaced)).sort()).toEqual(['photos', 'rondure.sqlite']);
    }
  });

  it('from the app lays the backup out and asks for the house to be opened anew', async () => {
    let asked = 0;
    const bench = await openBench({
      onRestored: () => {
        asked += 1;
      },
    });
    const plant = await bench.addPlant();
    await bench.upload(plant.id, [{ name: 'a.jpg', bytes: await plantJpeg() }]);
    const name = (await backedUp(bench)).split('/').at(-1);
    expect((await bench.send('POST', '/api/keeping/backups/2001-01-01-000000/restore')).status).toBe(404);
    expect((await bench.send('POST', '/api/keeping/backups/..%2f..%2fphotos/restore')).status).toBe(404);
    const answer = await bench.send('POST', `/api/keeping/backups/${name}/restore`);
    expect([answer.status, answer.body.underWay.what]).toEqual([202, 'restore']);
    expect((await bench.send('POST', '/api/keeping/backups')).status).toBe(409);
    await bench.services.keeping.whenIdle();
    expect([asked, existsSync(join(bench.homePath, 'restored', 'swap.json'))]).toEqual([1, true]);
  });
});

function firstPhoto(backup: string): string {
  const [photo = ''] = Object.keys(imprint(join(backup, 'photos')));
  return join(backup, 'photos', photo);
}

function spoil(path: string): void {
  const bytes = readFileSync(path);
  const middle = bytes.length >> 1;
  bytes[middle] = (bytes[middle] ?? 0) ^ 1;
  writeFileSync(path, bytes);
}

function cut(path: string): void {
  writeFileSync(path, readFileSync(path).subarray(0, -30));
}

function makeNewer(backup: string): void {
  const about = JSON.parse(readFileSync(join(backup, 'about.json'), 'utf8'));
  writeFileSync(join(backup, 'about.json'), JSON.stringify({ ...about, storeNumber: 999 }));
}
