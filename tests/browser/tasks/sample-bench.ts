import { join } from 'node:path';
import { day } from '../../../core/day/day.ts';
import { loadSamples, readSeason } from '../../../server/samples/load-samples.ts';
import type { Season } from '../../../server/samples/season-schema.ts';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import type { Plant } from '../../../server/schemas/plant.ts';
import { asJson, ask } from '../grown-plant.ts';
import { type ServedHome, serveHome } from '../start-on-day.ts';

/** The day of the sample bench's newest photos. */
export const TODAY = '2026-11-22';

const SAMPLES = join(import.meta.dirname, '../../../sample-images');

/** Days kept of each sample plant, by its key: enough for a trend, a film and a curve of the bloom, few enough to be measured in a minute. */
const DAYS: Readonly<Record<string, readonly string[]>> = {
  'window-regal': ['2026-08-23', '2026-09-20', '2026-10-18', '2026-11-08', TODAY],
  'corner-angel': ['2026-10-18', '2026-11-08', TODAY],
  'old-regal': ['2026-09-27', TODAY],
  'porch-zonal': ['2026-10-25', '2026-11-08', '2026-11-15', TODAY],
  'greenhouse-regal': [TODAY],
};

/** The days of the bloom are left to be read off the photos. */
const READ_OFF: readonly (string | undefined)[] = ['first-flower', 'full-bloom'];

/** Two plants are to be turned on the day: one that was turned last week as well, and this one. */
const LAST_WEEKS_TURN = { day: day('2026-11-15'), facesLightDeg: 90, note: '' };

/** The sample bench with fewer weeks, every photo measured: all that the tasks need. */
export async function layBench(home: string): Promise<ServedHome> {
  const served = await serveHome(home, TODAY);
  await loadSamples(served.services, SAMPLES, thinned(await readSeason(SAMPLES)));
  await served.services.queue.whenIdle();
  return served;
}

function thinned(season: Season): Season {
  const plants = season.plants.map((plant) => ({
    ...plant,
    notes: plant.notes.filter(({ kind }) => !READ_OFF.includes(kind)),
    turns: plant.key === 'corner-angel' ? [LAST_WEEKS_TURN] : plant.turns.filter(({ day }) => day < TODAY),
    sittings: plant.sittings.filter(({ day }) => DAYS[plant.key]?.includes(day)),
  }));
  return { ...season, plants };
}

/** Has the sample plants on the bench, or put away. */
export async function setOut(appUrl: string, isOut: boolean): Promise<void> {
  await ask(appUrl, `/sample/${isOut ? 'bring-back' : 'put-away'}`, asJson('POST', {}));
}

export async function plantNamed(appUrl: string, name: string): Promise<Plant> {
  const { plants } = await ask<{ plants: { plant: Plant }[] }>(appUrl, '/bench');
  const found = plants.find(({ plant }) => plant.name === name)?.plant;
  if (!found) throw new RangeError(`Expected a plant named ${name} on the bench`);
  return found;
}

/** The newest photo of a plant as the server has it. */
export async function newestView(appUrl: string, plantId: string) {
  const { sittings } = await ask<PlantPage>(appUrl, `/plants/${plantId}`);
  const view = sittings[0]?.views[0];
  if (!view) throw new RangeError(`Expected a photo of plant ${plantId}`);
  return view;
}
