import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Day } from '../../core/day/day.ts';
import { type Season, seasonSchema } from '../../server/samples/season-schema.ts';

export const SAMPLES = join(import.meta.dirname, '../../sample-images');

type Plant = Season['plants'][number];

/** One photo of the sample season, with what the grower would know of it. */
export interface SamplePhoto {
  readonly plant: Pick<Plant, 'key' | 'name' | 'kind' | 'variety' | 'rimMm'>;
  readonly day: Day;
  readonly turnDeg: number | null;
  /** From the folder of samples, as is `empty`. */
  readonly file: string;
  readonly empty: string | null;
}

/** Every photo of the sample season, plant by plant and day by day. */
export async function samplePhotos(): Promise<SamplePhoto[]> {
  const season = seasonSchema.parse(JSON.parse(await readFile(join(SAMPLES, 'season.json'), 'utf8')));
  return season.plants.flatMap((plant) =>
    plant.sittings.flatMap(({ day, views }) =>
      views.map(({ file, turnDeg }) => ({ plant, day, turnDeg, file, empty: plant.empty })),
    ),
  );
}
