import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { latticeChance } from '../geometry/seeded-random.ts';
import { renderEmptyStand, renderView, type ViewOptions } from '../render-view.ts';
import { encodeMask, encodePhoto, writeJson } from '../write-photo.ts';
import { weeksAfter } from './calendar.ts';
import type { PlantSeason } from './season-spec.ts';
import { type Draft, sittingView } from './sitting-view.ts';

/** Renders and writes all photos of one plant beside their masks and truths; `say` is told each file. */
export async function writePlant(
  season: PlantSeason,
  folder: string,
  draft: Draft,
  scenery: ViewOptions['scenery'],
  weeks: readonly number[],
  say: (line: string) => void,
): Promise<void> {
  await mkdir(join(folder, season.key), { recursive: true });
  const empty = emptyFile(season);
  if (empty) {
    const options = sittingView(season, 0, 0, draft, scenery);
    const photo = renderEmptyStand(options);
    const time = localTime(season, 0, -20);
    await writeFile(join(folder, empty), await encodePhoto(photo, time, season.stand.storedTurned));
    say(empty);
  }
  for (const week of weeks) {
    for (const [view, turnDeg] of turnsOf(season, week).entries()) {
      const file = photoFile(season, week, turnDeg);
      const { raster, canopy, truth } = renderView(sittingView(season, week, turnDeg, draft, scenery));
      const time = localTime(season, week, view);
      const stem = join(folder, file.replace(/\.jpg$/, ''));
      await writeFile(`${stem}.jpg`, await encodePhoto(raster, time, season.stand.storedTurned));
      await writeFile(`${stem}.canopy.png`, await encodeMask(canopy));
      await writeJson(`${stem}.truth.json`, { photo: file, empty, ...truth });
      say(file);
    }
  }
}

export function turnsOf(season: PlantSeason, week: number): readonly number[] {
  return season.turned.get(week) ?? [0];
}

/** Path of a photo under the sample folder. */
export function photoFile(season: PlantSeason, week: number, turnDeg: number): string {
  const turn = turnDeg === 0 ? '' : `-turn${String(turnDeg).padStart(3, '0')}`;
  return `${season.key}/${weeksAfter(season.firstDay, week)}${turn}.jpg`;
}

export function emptyFile(season: PlantSeason): string | null {
  return season.stand.busy ? `${season.key}/empty.jpg` : null;
}

/** A Sunday forenoon by the camera's own clock, `YYYY:MM:DD HH:MM:SS`; later views follow by the minute. */
function localTime(season: PlantSeason, week: number, laterMinutes: number): string {
  const minutes = 10 * 60 + 25 + Math.floor(70 * latticeChance(week, season.plant.seed, 5)) + laterMinutes;
  const seconds = Math.floor(60 * latticeChance(week, season.plant.seed, 6));
  const clock = [Math.floor(minutes / 60), minutes % 60, seconds]
    .map((part) => String(part).padStart(2, '0'))
    .join(':');
  return `${weeksAfter(season.firstDay, week).replaceAll('-', ':')} ${clock}`;
}
