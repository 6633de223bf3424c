import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { client } from '../server/fixtures/client.ts';
import { openBench, temporaryFolder } from '../server/fixtures/open-bench.ts';
import { plantJpeg } from '../server/fixtures/photos.ts';
import { anotherFile, killServer, killWords } from './kill-server.ts';
import { BARE, startServer } from './running-server.ts';

const KILLS = Number(process.env.RONDURE_KILLS ?? 5);

describe('a photo that was answered as kept', () => {
  it('is there after the server was killed at any moment', { timeout: 600_000 }, async () => {
    const figures = await killServer(temporaryFolder(), KILLS);
    console.log(killWords(figures));
    expect(figures).toMatchObject({
      lost: 0,
      rowsWithoutFile: 0,
      wrongHashes: 0,
      leftovers: 0,
      integrity: 'ok',
    });
    expect(figures.acknowledged).toBeGreaterThan(KILLS / 4);
  });

  it.runIf(process.env.RONDURE_STRACE === 'on' && hasStrace())(
    'was synced as file, as folder and as commit before the answer',
    { timeout: 120_000 },
    async () => {
      const home = temporaryFolder();
      const trace = join(temporaryFolder(), 'trace');
      const calls = 'fsync,fdatasync,rename,renameat,renameat2,write,writev';
      const server = await startServer(home, {
        program: BARE,
        through: ['strace', '-f', '--seccomp-bpf', '-y', '-s', '400', '-e', `trace=${calls}`, '-o', trace],
      });
      const { addPlant, upload } = client(server.url);
      const plant = await addPlant();
      const jpeg = await plantJpeg(1, { width: 400, height: 300 });
      const shas: string[] = [];
      for (let k = 0; k < 3; k += 1) {
        const bytes = anotherFile(jpeg);
        const answer = await upload(plant.id, [{ name: 'a.jpg', bytes }]);
        expect(answer.body.photos[0].outcome).toBe('kept');
        shas.push(createHash('sha256').update(bytes).digest('hex'));
      }
      await server.end('SIGTERM');
      const lines = readFileSync(trace, 'utf8').split('\n');
      const told: string[] = [];
      for (const sha of shas) {
        const renamed = lines.findIndex(
          (line) => /rename/.test(line) && line.includes(`/photos/${sha.slice(0, 2)}/${sha}`),
        );
        const answered = lines.findIndex((line, at) => at > renamed && line.includes('HTTP/1.1 202'));
        const from = Math.max(
          0,
          lines.slice(0, renamed).findLastIndex((line) => line.includes('HTTP/1.1 2')),
        );
        const synced = (part: RegExp, [first, last]: [number, number]) =>
          lines.slice(first, last).filter((line) => /f(data)?sync\(/.test(line) && part.test(line)).length;
        const counts = {
          file: synced(/incoming\/[^>]*\.upload>/, [from, renamed]),
          folder: synced(new RegExp(`photos/${sha.slice(0, 2)}>`), [renamed, answered]),
          commit: synced(/rondure\.sqlite-wal>/, [renamed, answered]),
        };
        told.push(`file ${counts.file}, folder ${counts.folder}, commit ${counts.commit}`);
        expect(answered).toBeGreaterThan(renamed);
        for (const count of Object.values(counts)) expect(count).toBeGreaterThanOrEqual(1);
      }
      console.log(`syncs before each of ${shas.length} answers: ${told.join('; ')}`);
    },
  );
});

describe('the start after a stop at the worst moment', () => {
  it('sweeps unfinished uploads and sets originals without a row aside, where they are shown', async () => {
    const homePath = temporaryFolder();
    const first = await openBench({ homePath });
    const plant = await first.addPlant();
    await first.upload(plant.id, [{ name: 'a.jpg', bytes: await plantJpeg() }]);
    const orphan = await plantJpeg(2);
    const sha = createHash('sha256').update(orphan).digest('hex');
    mkdirSync(join(homePath, 'photos', sha.slice(0, 2)), { recursive: true });
    writeFileSync(join(homePath, 'photos', sha.slice(0, 2), `${sha}.jpg`), orphan);
    writeFileSync(join(homePath, 'incoming', 'half.upload'), 'half');
    const second = await openBench({ homePath });
    expect(readdirSync(join(homePath, 'incoming'))).toEqual([]);
    const { setAside, missing } = (await second.send('GET', '/api/keeping')).body;
    expect([setAside, missing]).toEqual([[`${sha}.jpg`], []]);
    expect(readFileSync(join(homePath, 'set-aside', `${sha}.jpg`)).equals(orphan)).toBe(true);
    // Sent again it is kept, and what was set aside is no longer needed.
    expect((await second.upload(plant.id, [{ name: 'b.jpg', bytes: orphan }])).body.photos[0].outcome).toBe(
      'kept',
    );
    const third = await openBench({ homePath });
    expect((await third.send('GET', '/api/keeping')).body.setAside).toEqual([]);
    expect(readdirSync(join(homePath, 'set-aside'))).toEqual([]);
  });

  it('names a photo of the store whose file is gone, and takes the file back when it is there again', async () => {
    const homePath = temporaryFolder();
    const first = await openBench({ homePath });
    const plant = await first.addPlant();
    const bytes = await plantJpeg();
    await first.upload(plant.id, [{ name: 'a.jpg', bytes }]);
    const sha = createHash('sha256').update(bytes).digest('hex');
    const [place, elsewhere] = [
      join(homePath, 'photos', sha.slice(0, 2), `${sha}.jpg`),
      join(homePath, 'away.jpg'),
    ];
    renameSync(place, elsewhere);
    const second = await openBench({ homePath });
    expect((await second.send('GET', '/api/keeping')).body.missing).toEqual([sha]);
    expect((await second.send('GET', `/api/plants/${plant.id}`)).status).toBe(200);
    renameSync(elsewhere, place);
    const third = await openBench({ homePath });
    expect((await third.send('GET', '/api/keeping')).body.missing).toEqual([]);
  });

  it('refuses a data folder that another Rondure works on', async () => {
    const home = temporaryFolder();
    const server = await startServer(home, { program: BARE });
    await expect(startServer(home, { program: BARE })).rejects.toThrow(
      `A Rondure that is still running uses the data folder ${home}. Stop that one first, or set RONDURE_HOME to another folder.`,
    );
    await server.end('SIGKILL');
    const again = await startServer(home, { program: BARE });
    expect((await again.end('SIGTERM')).code).toBe(0);
    rmSync(home, { recursive: true, force: true });
  });
});

function hasStrace(): boolean {
  try {
    execFileSync('strace', ['-f', '--seccomp-bpf', '-e', 'trace=fsync', '-o', '/dev/null', 'true'], {
      stdio: 'ignore',
    });
    return true;
  } catch {
    console.log('no strace here: the order of syncs is not looked at');
    return false;
  }
}
