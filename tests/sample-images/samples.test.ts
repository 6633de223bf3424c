import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { isDay } from '../../core/day/day.ts';
import { PLANT_KINDS } from '../../core/plant.ts';
import { PLANT_SEASONS } from '../../sample-images/render/season/plants.ts';
import { seasonList } from '../../sample-images/render/season/season-list.ts';
import { SHOWS } from '../../sample-images/render/season/shows.ts';
import { FULL, SMALL } from '../../sample-images/render/season/sitting-view.ts';
import { writePlant } from '../../sample-images/render/season/write-plant.ts';
import { readUprightPhoto } from '../../server/intake/read-upright-photo.ts';

const SAMPLES = join(import.meta.dirname, '../../sample-images');
const COMMITTED_BYTES_AT_MOST = 30e6;

const committed = JSON.parse(readFileSync(join(SAMPLES, 'season.json'), 'utf8')) as {
  plants: {
    key: string;
    kind: string;
    rimMm: number;
    showDay: string;
    empty: string | null;
    sittings: { day: string; views: { file: string; turnDeg: number }[] }[];
    stops: { day: string; depth: string }[];
  }[];
};

describe('the sample season', () => {
  const views = committed.plants.flatMap(({ sittings }) => sittings.flatMap((sitting) => sitting.views));

  it('is the one that its program tells', () => {
    expect(committed).toEqual(JSON.parse(JSON.stringify(seasonList(PLANT_SEASONS, SHOWS))));
  });

  it('has at least four plants of known kinds with 8 to 16 weekly sittings each', () => {
    expect(committed.plants.length).toBeGreaterThanOrEqual(4);
    for (const { kind, sittings, showDay } of committed.plants) {
      expect(PLANT_KINDS).toContain(kind);
      expect(isDay(showDay)).toBe(true);
      expect(sittings.length).toBeGreaterThanOrEqual(8);
      expect(sittings.length).toBeLessThanOrEqual(16);
      for (const { day } of sittings) expect(isDay(day)).toBe(true);
    }
  });

  it('has a photo, a mask and a truth for every view, and nothing beside', () => {
    const expected = new Set(committed.plants.flatMap(({ empty }) => (empty === null ? [] : [empty])));
    for (const { file } of views) {
      const stem = file.replace(/\.jpg$/, '');
      for (const ending of ['.jpg', '.canopy.png', '.truth.json']) expected.add(`${stem}${ending}`);
    }
    const found = committed.plants.flatMap(({ key }) =>
      readdirSync(join(SAMPLES, key)).map((name) => `${key}/${name}`),
    );
    expect(new Set(found)).toEqual(expected);
  });

  it(`weighs at most ${COMMITTED_BYTES_AT_MOST / 1e6} MB`, () => {
    const bytes = readdirSync(SAMPLES, { recursive: true, encoding: 'utf8' }).reduce(
      (sum, name) => sum + statSync(join(SAMPLES, name)).size,
      0,
    );
    expect(bytes).toBeLessThan(COMMITTED_BYTES_AT_MOST);
  });

  it('says its truth in px of the upright photo', async () => {
    for (const { sittings } of committed.plants) {
      const { file } = (sittings[0] as (typeof sittings)[number]).views[0] as { file: string };
      const photo = await readUprightPhoto(readFileSync(join(SAMPLES, file)));
      const truth = JSON.parse(readFileSync(join(SAMPLES, file.replace('.jpg', '.truth.json')), 'utf8'));
      const { xPx, rimLeftPx, rimRightPx } = truth.axis;
      expect(rimLeftPx[0]).toBeLessThan(xPx);
      expect(rimRightPx[0]).toBeGreaterThan(xPx);
      expect(rimRightPx[0]).toBeLessThan(photo.widthPx);
      expect(rimRightPx[1]).toBeLessThan(photo.heightPx);
      // A rim seen from near its own height is as wide as its diameter, a little more for standing nearer than its middle.
      const seenMm = (rimRightPx[0] - rimLeftPx[0]) * truth.mmPerPx;
      expect(seenMm / truth.rimMm).toBeGreaterThan(0.995);
      expect(seenMm / truth.rimMm).toBeLessThan(1.02);
    }
  });
});

describe('the render program', () => {
  const folder = mkdtempSync(join(tmpdir(), 'rondure-renders-'));
  const season = PLANT_SEASONS.find(({ stand }) => !stand.busy) as (typeof PLANT_SEASONS)[number];
  const again = join(folder, 'again');
  const first = join(folder, 'first');
  const full = join(folder, 'full');

  beforeAll(async () => {
    const silent = () => undefined;
    await writePlant(season, first, SMALL, null, [2], silent);
    await writePlant(season, again, SMALL, null, [2], silent);
    await writePlant(season, full, FULL, null, [0], silent);
  }, 300_000);

  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it('makes the same bytes from the same seed', () => {
    const names = readdirSync(join(first, season.key));
    expect(names.length).toBe(3);
    for (const name of names) {
      expect(
        readFileSync(join(first, season.key, name)).equals(readFileSync(join(again, season.key, name))),
      ).toBe(true);
    }
  });

  it('makes the committed files again, byte for byte', () => {
    for (const name of readdirSync(join(full, season.key))) {
      const made = readFileSync(join(full, season.key, name));
      expect(made.equals(readFileSync(join(SAMPLES, season.key, name))), name).toBe(true);
    }
  });
});
