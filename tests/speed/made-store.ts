import { randomUUID } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { addDays, type Day, day } from '../../core/day/day.ts';
import { METHOD_VERSION } from '../../core/method-version.ts';
import type { PhotoReport } from '../../core/report.ts';
import type { TurnedReport } from '../../core/turned/measure-turned.ts';
import { TURNED_METHOD_VERSION } from '../../core/turned/method-version.ts';
import { joinSitting } from '../../server/measuring/join-sitting.ts';
import { type MeasuredFile, measureFile } from '../../server/measuring/measure-file.ts';
import { openDataHome } from '../../server/store/data-home.ts';
import { type Database, openDatabase } from '../../server/store/database.ts';
import { joiningOfSitting } from '../../server/store/joinings.ts';
import { newestNumber } from '../../server/store/migrate.ts';
import { plainTask } from './plain-task.ts';

/** How much a made store holds. */
export interface StoreSize {
  readonly plants: number;
  readonly years: number;
  /** Photos of a sitting; there is a sitting a week. */
  readonly views: number;
}

/** The grower's day on which a made store is looked at; its last sitting was the day before. */
export const MADE_TODAY = day('2026-06-01');

const SAMPLES = join(import.meta.dirname, '../../sample-images');
const WEEKS_A_YEAR = 52;
const WEEK = 7;
/** Days before each year's show on which the plant is stopped. */
const STOPS = [
  { daysBefore: 180, depth: 'deep' },
  { daysBefore: 129, depth: 'tip' },
] as const;
const KINDS = ['regal', 'zonal', 'angel', 'ivy-leaved', 'fuchsia-single'] as const;
const VARIETIES = ['Lantern Moth', 'Quiet Ferry', 'Thimble Weather', 'Tarn and Tinsel', 'Umber Parade'];
/** The pictures of outline and parts would be two thirds of the file; no page reads them. */
const STUB_PNG = new Uint8Array(64);

/** A photo of the samples as it was really measured, to be copied with small changes. */
type Model = Pick<MeasuredFile, 'report' | 'outlinePx' | 'partsOutlines' | 'lens' | 'leafLook'>;

interface Models {
  readonly method: string;
  readonly photos: readonly Model[];
  readonly turned: TurnedReport;
}

/**
 * The home of a store of that size, made when there is none yet; it lies in the system's folder for what is temporary and is used again
 * until the way of measuring or the size changes.
 */
export async function madeStore(size: StoreSize): Promise<string> {
  const folder = join(tmpdir(), 'rondure-made');
  mkdirSync(folder, { recursive: true });
  const home = join(folder, `${size.plants}x${size.years}x${size.views}-${METHOD_VERSION}-${newestNumber()}`);
  if (existsSync(home)) return home;
  const models = await measuredModels(join(folder, `models-${METHOD_VERSION}.json`));
  const making = `${home}.making`;
  rmSync(making, { recursive: true, force: true });
  openDataHome(making);
  const db = openDatabase(making);
  // A store that is only made to be measured need not outlive a power cut, and everything is written once.
  db.pragma('journal_mode = DELETE');
  db.pragma('journal_mode = OFF');
  db.pragma('synchronous = OFF');
  db.pragma('cache_size = -1000000');
  fill(db, size, models);
  db.pragma('journal_mode = WAL');
  db.close();
  renameSync(making, home);
  return home;
}

/** Four sides of one sample plant, joined, and another in bloom. */
async function measuredModels(path: string): Promise<Models> {
  if (existsSync(path)) {
    const kept = JSON.parse(readFileSync(path, 'utf8')) as Models;
    if (kept.method === METHOD_VERSION) return kept;
  }
  const turns = [0, 45, 90, 135];
  const sides = turns.map(
    (turn) => `window-regal/2026-11-22${turn === 0 ? '' : `-turn${String(turn).padStart(3, '0')}`}.jpg`,
  );
  const measured: MeasuredFile[] = [];
  for (const [k, file] of [...sides, 'porch-zonal/2026-11-22.jpg'].entries()) {
    measured.push(
      await measureFile(plainTask(join(SAMPLES, file), { photoName: file, turnDeg: turns[k] ?? 0 })),
    );
  }
  const turned = await joinSitting({
    views: measured.slice(0, turns.length),
    cameraHeightMm: null,
    light: null,
  });
  const photos = measured.map(({ report, outlinePx, partsOutlines, lens, leafLook }) => ({
    report,
    outlinePx,
    partsOutlines,
    lens,
    leafLook,
  }));
  const models = { method: METHOD_VERSION, photos, turned };
  writeFileSync(path, JSON.stringify(models));
  return models;
}

/** Straight inserts in one transaction, week by week as they come in life, so that a plant's rows lie scattered over the file. */
function fill(db: Database, size: StoreSize, models: Models): void {
  const chance = seededChance(7);
  const add = inserts(db);
  const weeks = size.years * WEEKS_A_YEAR;
  const lastDay = addDays(MADE_TODAY, -1);
  db.transaction(() => {
    const plants = Array.from({ length: size.plants }, (_, k) => {
      const plant = {
        id: randomUUID(),
        kind: KINDS[k % KINDS.length] as string,
        variety: VARIETIES[k % 25] ?? '',
      };
      add.plant(
        plant.id,
        `Plant ${k + 1}`,
        plant.kind,
        plant.variety,
        130,
        `${addDays(lastDay, -WEEK * weeks)}T08:00:00.000Z`,
      );
      return plant;
    });
    for (let year = 0; year < size.years; year++) {
      const showDay = addDays(MADE_TODAY, 20 - WEEK * WEEKS_A_YEAR * year);
      const showId = randomUUID();
      add.show(showId, `Show ${year + 1}`, showDay);
      for (const { id } of plants) {
        add.entry(id, showId);
        for (const { daysBefore, depth } of STOPS)
          add.stop(randomUUID(), id, addDays(showDay, -daysBefore), depth);
        if (year > 0) {
          add.note(randomUUID(), id, addDays(showDay, -20), 'first-flower');
          add.note(randomUUID(), id, addDays(showDay, -3), 'full-bloom');
        }
        for (let k = 0; k < 8; k++) add.note(randomUUID(), id, addDays(showDay, -40 * (k + 1)), 'fed');
      }
    }
    const insertSitting = sittingInserts(add, size, models, chance);
    for (let week = weeks - 1; week >= 0; week--) {
      const on = addDays(lastDay, -WEEK * week);
      for (const { id } of plants) insertSitting(id, on, week);
    }
  })();
  const some = db.prepare('SELECT sitting_id AS id FROM joinings LIMIT 1').get() as
    | { id: string }
    | undefined;
  if (some !== undefined && joiningOfSitting(db, some.id)?.isCurrent !== true) {
    throw new Error('Expected the made sittings to be joined already, but the app would join them anew');
  }
}

function sittingInserts(
  add: ReturnType<typeof inserts>,
  { views }: StoreSize,
  { photos, turned }: Models,
  chance: () => number,
) {
  let count = 0;
  const inBloom = photos.length - 1;
  const texts = photos.map(({ outlinePx, partsOutlines, lens, leafLook }) => ({
    outline: JSON.stringify(outlinePx),
    parts: JSON.stringify(partsOutlines),
    lens: JSON.stringify(lens),
    leafLook: leafLook && JSON.stringify(leafLook),
  }));
  const turnedText = JSON.stringify(turned);
  return (plantId: string, on: Day, week: number): void => {
    const sittingId = randomUUID();
    const viewIds: string[] = [];
    const facts: string[] = [];
    add.sitting(sittingId, plantId, on);
    for (let k = 0; k < views; k++) {
      const turnDeg = (k * 180) / views;
      // In bloom from five weeks before the show to three after it.
      const which = (week + 3) % WEEKS_A_YEAR < 8 ? inBloom : k % inBloom;
      const { report } = photos[which] as Model;
      const text = texts[which] as (typeof texts)[number];
      const viewId = randomUUID();
      const sha256 = (++count).toString(16).padStart(64, '0');
      add.photo(sha256, report.widthPx, report.heightPx, `${on}T10:00:00.000Z`);
      add.view(viewId, sittingId, sha256, `${on}-${k}.jpg`, turnDeg, `${on}T10:0${k % 10}:00.000Z`);
      const measured = add.measurement(
        viewId,
        METHOD_VERSION,
        `${on}T10:10:00.000Z`,
        JSON.stringify({ ...varied(report, chance), turnDeg }),
        text.outline,
        text.parts,
        STUB_PNG,
        STUB_PNG,
        text.lens,
        text.leafLook,
      );
      viewIds.push(viewId);
      facts.push(`${viewId} ${measured.lastInsertRowid} ${turnDeg.toFixed(1)}`);
    }
    if (views < 2) return;
    const joinedFacts = `["${TURNED_METHOD_VERSION}",null]${facts.join(';')}`;
    add.joining(sittingId, joinedFacts, turnedText, JSON.stringify(viewIds));
  };
}

/** A report with its scores and sizes changed by a few in a hundred, as they do from week to week. */
function varied(report: PhotoReport, chance: () => number): PhotoReport {
  const by = 1 + 0.06 * (chance() - 0.5);
  const { roundness, symmetry, lopsidedness, ball, canopy, flower } = report;
  return {
    ...report,
    roundness: roundness && { ...roundness, score: Math.min(100, roundness.score * by) },
    symmetry: symmetry && { ...symmetry, score: Math.min(100, symmetry.score * by) },
    lopsidedness: lopsidedness && { ...lopsidedness, percent: lopsidedness.percent * by },
    ball: ball && { ...ball, radiusMm: ball.radiusMm && ball.radiusMm * by },
    canopy: canopy && { ...canopy, heightMm: canopy.heightMm && canopy.heightMm * by },
    flower: flower && { ...flower, share: Math.min(1, flower.share * by) },
  };
}

function inserts(db: Database) {
  const prepared = (sql: string) => {
    const statement = db.prepare(sql);
    return (...values: unknown[]) => statement.run(...values);
  };
  return {
    plant: prepared(
      'INSERT INTO plants (id, name, kind, variety, rim_mm, created_at) VALUES (?, ?, ?, ?, ?, ?)',
    ),
    show: prepared(`INSERT INTO shows (id, name, day, place, rules, classes) VALUES (?, ?, ?, '', '', '[]')`),
    entry: prepared(`INSERT INTO entries (plant_id, show_id, class_id, result) VALUES (?, ?, NULL, '')`),
    stop: prepared(`INSERT INTO stops (id, plant_id, day, depth, note) VALUES (?, ?, ?, ?, '')`),
    note: prepared(`INSERT INTO notes (id, plant_id, day, kind, text) VALUES (?, ?, ?, ?, '')`),
    sitting: prepared('INSERT INTO sittings (id, plant_id, day) VALUES (?, ?, ?)'),
    photo: prepared(
      `INSERT INTO photos (sha256, format, byte_count, width_px, height_px, kept_at) VALUES (?, 'jpeg', 3000000, ?, ?, ?)`,
    ),
    view: prepared(
      `INSERT INTO views (id, sitting_id, photo, file_name, turn_deg, turn_from, taken_from, received_at, state, look_up)
       VALUES (?, ?, ?, ?, ?, 'grower', 'exif', ?, 'measured', 0)`,
    ),
    measurement: prepared(
      `INSERT INTO measurements (view_id, method_version, measured_at, report, outline, parts, mask_png, parts_png, lens, leaf_look)
       VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
    ),
    joining: prepared(
      `INSERT INTO joinings (sitting_id, facts, state, report, view_ids) VALUES (?, ?, 'ready', ?, ?)`,
    ),
  };
}

/** The same numbers from 0 to 1 every time. */
function seededChance(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}
