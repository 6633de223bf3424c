import { execFile } from 'node:child_process';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { filledBench, imprint } from './backup/filled-bench.ts';
import { temporaryFolder } from './fixtures/open-bench.ts';

/** Runs the command over a data home; its exit code and all it printed. */
function keep(home: string, ...words: string[]): Promise<{ code: number; printed: string }> {
  return new Promise((resolve) => {
    execFile(
      process.execPath,
      ['--import', 'tsx', 'server/command-line/keep.ts', ...words],
      { cwd: join(import.meta.dirname, '../..'), env: { ...process.env, RONDURE_HOME: home } },
      (fault, out, err) =>
        resolve({ code: fault === null ? 0 : Number(fault.code), printed: `${out}${err}`.trim() }),
    );
  });
}

describe('npm run keep', { timeout: 120_000 }, () => {
  it('backs up a store in use, verifies both, and restores it elsewhere, byte for byte', async () => {
    const { homePath } = await filledBench();
    const folder = temporaryFolder();
    const made = await keep(homePath, 'backup', '--folder', folder);
    expect(made.printed).toMatch(/: 2 plants, 4 photos, \d+\.\d MB\.\nKept: 1 of at most 7\.$/);
    const backup = join(folder, readdirSync(folder)[0] ?? '');
    for (const words of [['verify'], ['verify', backup]]) {
      expect(await keep(homePath, ...words)).toEqual({
        code: 0,
        printed: expect.stringMatching(/^\d+ records and 4 photos were read\. All is as it was written\.$/),
      });
    }
    const elsewhere = temporaryFolder();
    expect(await keep(elsewhere, 'restore', backup)).toEqual({
      code: 0,
      printed: `The backup is restored in ${elsewhere}.`,
    });
    expect(imprint(join(elsewhere, 'photos'))).toEqual(imprint(join(homePath, 'photos')));
    expect(await keep(elsewhere, 'restore', backup)).toEqual({
      code: 1,
      printed: `There is a store in ${elsewhere}. Add --replace to put it aside and the backup in its place.`,
    });
    expect((await keep(elsewhere, 'restore', backup, '--replace')).code).toBe(0);
    expect(readdirSync(elsewhere).filter((name) => name.startsWith('replaced-'))).toHaveLength(1);
  });

  it('names what is damaged and ends with 1', async () => {
    const { homePath } = await filledBench();
    const [photo = ''] = Object.keys(imprint(join(homePath, 'photos')));
    const path = join(homePath, 'photos', photo);
    const bytes = readFileSync(path);
    bytes[100] = (bytes[100] ?? 0) ^ 1;
    writeFileSync(path, bytes);
    const { code, printed } = await keep(homePath, 'verify');
    expect([code, printed]).toEqual([
      1,
      expect.stringContaining(`The photo photos/${photo} is not as it was kept.`),
    ]);
  });

  it('says so when there is no store, no backup, or no such word', async () => {
    const home = temporaryFolder();
    expect(await keep(home, 'verify')).toEqual({
      code: 1,
      printed: `There is no store in ${home}. Set RONDURE_HOME to the folder that holds it.`,
    });
    const none = await keep(home, 'restore', join(home, 'none'));
    expect([none.code, none.printed]).toEqual([
      1,
      expect.stringMatching(/^There is no backup in .*none: its about\.json/),
    ]);
    expect((await keep(home, 'store')).code).toBe(2);
    expect((await keep(home, '--help')).printed).toContain('backup|verify|restore');
  });
});
