import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { openDatabase } from '../../../server/store/database.ts';
import { viewsOfPlant } from '../../../server/store/views.ts';
import { openBench, sampleReport, temporaryFolder } from '../fixtures/open-bench.ts';

const MIGRATIONS = join(import.meta.dirname, '../../../server/store/migrations');
const PLANT_SHA = 'a1'.repeat(32);
const EMPTY_SHA = 'e0'.repeat(32);
const [WITH_EMPTY, WITHOUT] = ['plant-with-empty', 'plant-without'];

/** Tables whose rows must come through unchanged. */
const KEPT = ['photos', 'views', 'measurements', 'stops', 'notes', 'learned_colours'];

/** A store as the first two migrations made it, in use. */
function writeOldStore(home: string): void {
  const db = new BetterSqlite3(join(home, 'rondure.sqlite'));
  db.pragma('foreign_keys = ON');
  for (const name of ['001-bench.sql', '002-mending.sql'])
    db.exec(readFileSync(join(MIGRATIONS, name), 'utf8'));
  db.pragma('user_version = 2');
  const photo = db.prepare(
    `INSERT INTO photos VALUES (?, 'jpeg', 9, 640, 480, '2026-03-01T10:00:00', '2026-03-01')`,
  );
  for (const sha of [PLANT_SHA, EMPTY_SHA]) photo.run(sha);
  for (const [id, empty] of [
    [WITH_EMPTY, EMPTY_SHA],
    [WITHOUT, null],
  ]) {
    db.prepare(
      `INSERT INTO plants VALUES (?, 'Evening Bramble', 'regal', 'Plum', 130, '2026-06-20', 't', 0, 0)`,
    ).run(id);
    db.prepare('INSERT INTO stands VALUES (?, ?, ?)').run(`stand-of-${id}`, id, empty);
    db.prepare('INSERT INTO sittings VALUES (?, ?, ?, ?)').run(
      `sitting-${id}`,
      id,
      `stand-of-${id}`,
      '2026-03-01',
    );
    db.prepare(`INSERT INTO stops VALUES (?, ?, '2026-02-01', 'tip', 'all but the smallest', NULL)`).run(
      `stop-${id}`,
      id,
    );
    db.prepare(`INSERT INTO notes VALUES (?, ?, '2026-02-02', 'dry for a week', NULL)`).run(`note-${id}`, id);
  }
  db.prepare(
    `INSERT INTO views (id, sitting_id, photo, file_name, turn_deg, taken_from, received_at, state, strokes, accepted_at)
     VALUES ('view-1', ?, ?, 'a.jpg', 90, 'exif', 't', 'measured', ?, '2026-03-02')`,
  ).run(`sitting-${WITH_EMPTY}`, PLANT_SHA, '[{"kind":"keep","widthPx":8,"pointsPx":[[1,2]]}]');
  db.prepare(
    `INSERT INTO measurements (view_id, method_version, measured_at, report, outline, mask_png)
     VALUES ('view-1', '1', 't', ?, '[[1,1],[5,1],[5,5]]', x'89504e47')`,
  ).run(JSON.stringify(sampleReport('a.jpg')));
  db.prepare(`INSERT INTO learned_colours VALUES ('[1]', x'01')`).run();
  db.close();
}

function rowsOf(home: string): Record<string, unknown[]> {
  const db = new BetterSqlite3(join(home, 'rondure.sqlite'), { readonly: true });
  const rows = Object.fromEntries(KEPT.map((table) => [table, db.prepare(`SELECT * FROM ${table}`).all()]));
  db.close();
  return rows;
}

describe('a store from before the stands', () => {
  it('keeps every row, and each plant its own empty photo', () => {
    const home = temporaryFolder();
    writeOldStore(home);
    const before = rowsOf(home);
    const db = openDatabase(home);
    expect(db.pragma('foreign_key_check')).toEqual([]);
    expect(db.pragma('integrity_check', { simple: true })).toBe('ok');
    expect(
      db
        .prepare(
          `SELECT plants.id, plants.name, rim_mm, shows.day AS show_day, empty_photo, stand_id
           FROM plants JOIN entries ON plant_id = plants.id JOIN shows ON shows.id = show_id ORDER BY plants.id`,
        )
        .all(),
    ).toEqual([
      {
        id: WITH_EMPTY,
        name: 'Evening Bramble',
        rim_mm: 130,
        show_day: '2026-06-20',
        empty_photo: EMPTY_SHA,
        stand_id: null,
      },
      {
        id: WITHOUT,
        name: 'Evening Bramble',
        rim_mm: 130,
        show_day: '2026-06-20',
        empty_photo: null,
        stand_id: null,
      },
    ]);
    expect(db.prepare('SELECT id, plant_id, day, stand_version_id FROM sittings ORDER BY id').all()).toEqual(
      [WITH_EMPTY, WITHOUT].map((id) => ({
        id: `sitting-${id}`,
        plant_id: id,
        day: '2026-03-01',
        stand_version_id: null,
      })),
    );
    expect(viewsOfPlant(db, WITH_EMPTY)[0]).toMatchObject({ id: 'view-1', standId: null, turnDeg: 90 });
    db.close();
    // Later migrations may add columns; none may change what was there.
    expect(rowsOf(home)).toMatchObject(before);
  });

  it('goes on measuring against that empty photo', async () => {
    const home = temporaryFolder();
    writeOldStore(home);
    const { services, measured, send } = await openBench({ homePath: home });
    // The method is a newer one than the store's, so the photo is measured anew.
    await services.queue.whenIdle();
    expect(measured).toHaveLength(1);
    expect(measured[0]?.emptyPath).toContain(EMPTY_SHA);
    expect(measured[0]?.stand).toMatchObject({ referencePath: measured[0]?.emptyPath, sheet: null });
    const page = (await send('GET', `/api/plants/${WITH_EMPTY}`)).body;
    expect(page.plant).toMatchObject({
      standId: null,
      emptyPhotoUrl: expect.stringContaining('empty-photo'),
    });
    expect(page.sittings[0]).toMatchObject({ standId: null, standVersion: null });
    expect(page.sittings[0].views[0]).toMatchObject({ acceptedOutline: true, strokes: [{ kind: 'keep' }] });
  });

  it('is left as it was when the migration breaks off', () => {
    const home = temporaryFolder();
    writeOldStore(home);
    const before = rowsOf(home);
    const blocked = new BetterSqlite3(join(home, 'rondure.sqlite'));
    blocked.exec('CREATE TABLE stand_versions (taken INTEGER)');
    blocked.close();
    expect(() => openDatabase(home)).toThrow('stand_versions already exists');
    const db = new BetterSqlite3(join(home, 'rondure.sqlite'));
    expect(db.pragma('user_version', { simple: true })).toBe(2);
    expect(db.prepare('SELECT empty_photo FROM stands WHERE plant_id = ?').get(WITH_EMPTY)).toEqual({
      empty_photo: EMPTY_SHA,
    });
    db.close();
    expect(rowsOf(home)).toEqual(before);
  });
});
