import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import exifReader from 'exif-reader';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { day, daysBetween } from '../../core/day/day.ts';

const SAMPLES = join(import.meta.dirname, '../../sample-images');

interface Listed {
  readonly key: string;
  readonly rimMm: number;
  readonly showDay: string;
  readonly empty: string | null;
  readonly sittings: readonly {
    readonly day: string;
    readonly views: readonly { readonly file: string; readonly turnDeg: number }[];
  }[];
}

const season = JSON.parse(readFileSync(join(SAMPLES, 'season.json'), 'utf8')) as { plants: Listed[] };
const views = season.plants.flatMap((plant) =>
  plant.sittings.flatMap((sitting) =>
    sitting.views.map((view) => ({
      plant,
      day: sitting.day,
      ...view,
      stem: view.file.replace(/\.jpg$/, ''),
    })),
  ),
);

describe('the files of the sample season', () => {
  it('has a sitting every seventh day up to 2026-11-22, each plant before its show', () => {
    for (const { sittings, showDay } of season.plants) {
      expect(sittings[sittings.length - 1]?.day).toBe('2026-11-22');
      expect(daysBetween(day('2026-11-22'), day(showDay))).toBeGreaterThan(0);
      for (let week = 1; week < sittings.length; week++) {
        const gap = daysBetween(day(sittings[week - 1]?.day ?? ''), day(sittings[week]?.day ?? ''));
        expect(gap).toBe(7);
      }
    }
  });

  it('has beside each photo a mask of its upright size whose area is the truth, and a truth of the same rim', async () => {
    for (const { file, stem, turnDeg, plant } of views) {
      const truth = JSON.parse(readFileSync(join(SAMPLES, `${stem}.truth.json`), 'utf8'));
      const photo = await sharp(join(SAMPLES, file)).metadata();
      const turned = (photo.orientation ?? 1) >= 5;
      const { data, info } = await sharp(join(SAMPLES, `${stem}.canopy.png`))
        .raw()
        .toBuffer({ resolveWithObject: true });
      expect([info.width, info.height]).toEqual(
        turned ? [photo.height, photo.width] : [photo.width, photo.height],
      );
      let area = 0;
      for (let at = 0; at < data.length; at += info.channels) {
        const value = data[at] as number;
        if (value !== 0 && value !== 255) throw new Error(`${stem}: mask value ${value}`);
        if (value === 255) area++;
      }
      expect(area).toBe(truth.canopy.areaPx);
      expect(truth.photo).toBe(file);
      expect([truth.turnDeg, truth.rimMm, truth.empty]).toEqual([turnDeg, plant.rimMm, plant.empty]);
    }
  });

  it('carries the sitting’s day in EXIF, and no place', async () => {
    for (const { file, day: sittingDay } of views) {
      const { exif } = await sharp(join(SAMPLES, file)).metadata();
      const tags = exifReader(exif as Buffer);
      expect((tags.Photo?.DateTimeOriginal as Date | undefined)?.toISOString().slice(0, 10)).toBe(sittingDay);
      expect(tags.GPSInfo).toBeUndefined();
    }
  });
});
