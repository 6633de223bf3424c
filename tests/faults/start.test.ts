import { spawn } from 'node:child_process';
import { chmodSync, existsSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import { describe, expect, it, onTestFinished } from 'vitest';
import { temporaryFolder } from '../server/fixtures/open-bench.ts';

/** Starts the program; what it printed and its exit code, or that it served and ended well when told to stop. */
async function start(environment: Record<string, string>): Promise<{ code: number | null; printed: string }> {
  const program = spawn(process.execPath, ['--import', 'tsx', 'server/main.ts'], {
    cwd: join(import.meta.dirname, '../..'),
    env: { ...process.env, ...environment },
  });
  let printed = '';
  for (const stream of [program.stdout, program.stderr]) {
    stream.on('data', (part: Buffer) => {
      printed += part.toString('utf8');
      if (printed.includes('Rondure is at')) program.kill('SIGTERM');
    });
  }
  const code = await new Promise<number | null>((resolve) => program.on('close', resolve));
  return { code, printed: printed.trim() };
}

describe('starting', () => {
  it('prints its address in one line and ends cleanly when told to stop', async () => {
    const home = temporaryFolder();
    // A store with a plant, so that no sample bench is laid out.
    const { openDatabase } = await import('../../server/store/database.ts');
    const { addPlant } = await import('../../server/store/plants.ts');
    const db = openDatabase(home);
    const facts = {
      name: 'A',
      kind: 'other',
      variety: '',
      rimMm: null,
      showDay: null,
      standId: null,
    } as const;
    addPlant(db, facts, { sample: false });
    db.close();
    const { code, printed } = await start({ PORT: '0', RONDURE_HOME: home });
    expect(printed).toMatch(/^Rondure is at http:\/\/127\.0\.0\.1:\d+$/);
    expect(code).toBe(0);
    expect(existsSync(join(home, 'rondure.sqlite-wal'))).toBe(false);
  });

  it('says so when the port is taken', async () => {
    const other = createServer();
    await new Promise<void>((resolve) => other.listen(0, '127.0.0.1', resolve));
    onTestFinished(() => void other.close());
    const { port } = other.address() as AddressInfo;
    const { code, printed } = await start({ PORT: String(port), RONDURE_HOME: temporaryFolder() });
    expect(code).toBe(1);
    expect(printed).toBe(
      `Port ${port} is already taken, perhaps by a Rondure that is still running. Stop that one, or start with another port: PORT=${port + 1} npm start`,
    );
  });

  it('says so when the data folder cannot be made', async () => {
    const file = join(temporaryFolder(), 'a-file');
    writeFileSync(file, '');
    const { code, printed } = await start({ PORT: '0', RONDURE_HOME: join(file, 'home') });
    expect(code).toBe(1);
    expect(printed).toContain(`The data folder ${join(file, 'home')} cannot be written (ENOTDIR).`);
    expect(printed).toContain('set RONDURE_HOME to another folder');
    expect(printed.split('\n').length).toBe(1);
  });

  it.skipIf(process.getuid?.() === 0)('says so when the data folder is read-only', async () => {
    const home = temporaryFolder();
    chmodSync(home, 0o500);
    const { code, printed } = await start({ PORT: '0', RONDURE_HOME: home });
    expect([code, printed]).toEqual([1, expect.stringContaining('cannot be written (EACCES)')]);
  });

  it('says so when the store is newer than the program, and leaves it alone', async () => {
    const home = temporaryFolder();
    const db = new BetterSqlite3(join(home, 'rondure.sqlite'));
    db.pragma('user_version = 999');
    db.close();
    const { code, printed } = await start({ PORT: '0', RONDURE_HOME: home });
    expect(code).toBe(1);
    expect(printed).toContain('The store was written by a newer version');
  });

  it.each([
    [{ PORT: 'high' }, 'PORT must be a number from 0 to 65535.'],
    [{ PORT: '70000' }, 'PORT must be 65535 or less.'],
    [{ RONDURE_LOG: 'loud' }, 'RONDURE_LOG must be silent, fatal, error, warn, info, debug or trace.'],
    [{ PORT: '0', HOST: 'no.such.host.invalid' }, 'This machine has no address no.such.host.invalid.'],
  ])('says so when a setting is wrong: %j', async (setting, sentence) => {
    const { code, printed } = await start({ RONDURE_HOME: temporaryFolder(), ...setting });
    expect(code).toBe(1);
    expect(printed).toContain(sentence);
  });
});
