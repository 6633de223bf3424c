import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { copyBeforeUpgrade } from '../../../server/store/before-upgrade.ts';
import { checkDatabase } from '../../../server/store/copy-database.ts';
import { openDatabase } from '../../../server/store/database.ts';
import { allMigrations, migrate, newestNumber } from '../../../server/store/migrate.ts';
import { checkRows, digestEveryRow } from '../../../server/store/row-digests.ts';
import { temporaryFolder } from '../fixtures/open-bench.ts';

/** A store as the first `number` migrations make it, with a plant, a photo, a stop and a note in it. */
function storeOf(number: number): string {
  const home = temporaryFolder();
  const db = new BetterSqlite3(join(home, 'rondure.sqlite'));
  db.pragma('journal_mode = WAL');
  migrate(db, { to: 1 });
  db.exec(`
    INSERT INTO plants (id, name, kind, variety, rim_mm, show_day, created_at)
      VALUES ('plant', 'Evening Bramble', 'regal', 'Plum', 130, '2026-06-20', 't');
    INSERT INTO stands VALUES ('stand', 'plant', NULL);
    INSERT INTO photos VALUES ('${'a1'.repeat(32)}', 'jpeg', 9, 640, 480, NULL, '2026-03-01');
    INSERT INTO sittings VALUES ('sitting', 'plant', 'stand', '2026-03-01');
    INSERT INTO views (id, sitting_id, photo, file_name, taken_from, received_at, state)
      VALUES ('view', 'sitting', '${'a1'.repeat(32)}', 'a.jpg', 'upload', 't', 'received');
    INSERT INTO stops VALUES ('stop', 'plant', '2026-02-01', 'tip', 'all', NULL);
    INSERT INTO notes VALUES ('note', 'plant', '2026-02-02', 'dry', NULL);
  `);
  migrate(db, { to: number });
  db.close();
  return home;
}

const sha256 = (path: string) => createHash('sha256').update(readFileSync(path)).digest('hex');

describe('a store of an earlier version', () => {
  it.each(allMigrations().slice(0, -1))(
    'as $name left it is copied, opens, and is brought up to date',
    ({ number }) => {
      const home = storeOf(number);
      const before = sha256(join(home, 'rondure.sqlite'));
      openDatabase(home).close();
      const [copy = '', ...more] = readdirSync(join(home, 'before-upgrade'));
      expect(more).toEqual([]);
      expect(copy).toMatch(
        new RegExp(`^\\d{4}-\\d{2}-\\d{2}-\\d{6}-from-${String(number).padStart(3, '0')}\\.sqlite$`),
      );
      expect(sha256(join(home, 'before-upgrade', copy))).toBe(before);
      const db = new BetterSqlite3(join(home, 'rondure.sqlite'), { readonly: true });
      expect(db.pragma('user_version', { simple: true })).toBe(newestNumber());
      for (const table of ['plants', 'photos', 'sittings', 'views', 'stops', 'notes']) {
        expect(db.prepare(`SELECT count(*) FROM ${table}`).pluck().get(), table).toBe(1);
      }
      expect(db.prepare('SELECT name, rim_mm FROM plants').get()).toEqual({
        name: 'Evening Bramble',
        rim_mm: 130,
      });
      db.close();
      expect(checkDatabase(join(home, 'rondure.sqlite')).faults).toEqual([]);
    },
  );

  it('keeps what was damaged before known as damaged', () => {
    const db = new BetterSqlite3(join(storeOf(newestNumber()), 'rondure.sqlite'));
    // Changed behind the store's back: no digest is written over this connection.
    db.exec(`UPDATE notes SET text = 'wet'`);
    const { damaged } = checkRows(db);
    expect(damaged).toEqual([{ table: 'notes', rowId: 1, wrong: 'changed' }]);
    digestEveryRow(db, damaged);
    expect(checkRows(db).damaged).toEqual(damaged);
    db.close();
  });

  it('is left alone when it cannot be copied first', () => {
    const home = storeOf(3);
    const db = new BetterSqlite3(join(home, 'rondure.sqlite'));
    expect(() => copyBeforeUpgrade(db, join(home, 'no-such-folder'), 3)).toThrow(
      /was to be copied .* before its upgrade, which failed \(ENOENT\)\. Nothing was changed\./,
    );
    expect(db.pragma('user_version', { simple: true })).toBe(3);
    db.close();
  });

  it('from a newer version is refused in plain words, byte for byte as it was', () => {
    const home = storeOf(newestNumber());
    const db = new BetterSqlite3(join(home, 'rondure.sqlite'));
    db.pragma('user_version = 999');
    db.pragma('wal_checkpoint(TRUNCATE)');
    db.close();
    const before = sha256(join(home, 'rondure.sqlite'));
    expect(() => openDatabase(home)).toThrow(
      `The store was written by a newer version (its number is 999, this version knows ${newestNumber()}). Start that version, or another data home.`,
    );
    expect(sha256(join(home, 'rondure.sqlite'))).toBe(before);
    expect(readdirSync(home)).not.toContain('before-upgrade');
  });
});
