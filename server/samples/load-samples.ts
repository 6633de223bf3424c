import { randomUUID } from 'node:crypto';
import { copyFile, readFile, rm } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { addPhotoToPlant } from '../bench/add-view.ts';
import { type AimedPlant, aimAtDay, aimedPlant } from '../bench/aimed-plant.ts';
import { keepPhoto } from '../bench/keep-photo.ts';
import type { Services } from '../services.ts';
import type { Database } from '../store/database.ts';
import { setEntry } from '../store/entries.ts';
import { addNote } from '../store/notes.ts';
import { addPlant, type PlantRow, plantById, setEmptyPhoto } from '../store/plants.ts';
import { addShow, showById } from '../store/shows.ts';
import { addStop } from '../store/stops.ts';
import { addTurn } from '../store/turns.ts';
import { type Season, seasonSchema } from './season-schema.ts';

/** The sample bench cannot be laid out; the message says why. */
export class SamplesMissing extends Error {}

/** Reads the sample season. Throws `SamplesMissing` when it is not there or does not read. */
export async function readSeason(folder: string): Promise<Season> {
  const path = join(folder, 'season.json');
  try {
    return seasonSchema.parse(JSON.parse(await readFile(path, 'utf8')));
  } catch (fault) {
    const why = fault instanceof Error ? fault.message : String(fault);
    throw new SamplesMissing(
      `The sample bench is left out, because ${path} cannot be read. Run "npm run render-samples" to make it. (${why})`,
    );
  }
}

/**
 * Lays out the sample bench through the same intake as the grower's photos. All plants are added at once, so
 * that the bench is whole from the start; their photos follow, the newest sittings first.
 */
export async function loadSamples(services: Services, folder: string, season: Season): Promise<void> {
  const { db } = services;
  const laidOut = db.transaction(() => {
    // Before the plants: a plant's show day then finds the show of that day.
    const showIds = season.shows.map((show) => addShow(db, show));
    const plants = season.plants.map((sample) => {
      const id = addPlant(db, sample, { sample: true });
      aimAtDay(db, aimedOf(services, id), sample.showDay);
      for (const stop of sample.stops) addStop(db, id, stop);
      for (const note of sample.notes) addNote(db, id, note);
      for (const turn of sample.turns) addTurn(db, id, turn);
      return { id, sample };
    });
    for (const [index, { entries }] of season.shows.entries()) {
      for (const entry of entries) enter(db, plants, showIds[index] as string, entry);
    }
    return plants;
  })();
  for (const { id, sample } of laidOut) {
    if (sample.empty !== null)
      await takeEmptyPhoto(services, plantOf(services, id), join(folder, sample.empty));
  }
  const sittings = laidOut
    .flatMap(({ id, sample }) => sample.sittings.map((sitting) => ({ id, ...sitting })))
    .sort((a, b) => b.day.localeCompare(a.day));
  for (const { id, day, views } of sittings) {
    for (const { file, turnDeg } of views) {
      const told = { fileName: basename(file), day, turnDeg };
      await withCopy(services, join(folder, file), async (path) => {
        const outcome = await addPhotoToPlant(services, plantOf(services, id), { path }, told);
        if (outcome.outcome !== 'kept') services.log.warn({ file, outcome }, 'a sample photo was left out');
      });
    }
  }
}

function enter(
  db: Database,
  plants: readonly { readonly id: string; readonly sample: Season['plants'][number] }[],
  showId: string,
  entry: Season['shows'][number]['entries'][number],
): void {
  const plant = plants.find(({ sample }) => sample.key === entry.plant);
  const classes = showById(db, showId)?.classes ?? [];
  const classId = classes.find(({ name }) => name === entry.class)?.id ?? null;
  if (plant === undefined || (entry.class !== null && classId === null)) {
    throw new SamplesMissing(`A sample show has no such plant or class: ${entry.plant}, ${entry.class}.`);
  }
  setEntry(db, { plantId: plant.id, showId, classId, result: '' });
}

async function takeEmptyPhoto(services: Services, plant: PlantRow, file: string): Promise<void> {
  await withCopy(services, file, async (path) => {
    const photo = await services.receive({ path });
    if (!photo.ok) throw new SamplesMissing(`The sample photo ${file} cannot be read: ${photo.hint}`);
    await keepPhoto(services, path, photo, () => setEmptyPhoto(services.db, plant.id, photo.sha256));
  });
}

function aimedOf({ db, today }: Services, id: string): AimedPlant {
  const plant = aimedPlant(db, id, today());
  if (plant === null) throw new RangeError(`Expected a plant for id but received ${id}`);
  return plant;
}

function plantOf({ db }: Services, id: string): PlantRow {
  const plant = plantById(db, id);
  if (plant === null) throw new RangeError(`Expected a plant for id but received ${id}`);
  return plant;
}

/** The intake moves files away, so it is handed a copy that lies where uploads do. */
async function withCopy(
  { home }: Services,
  file: string,
  use: (path: string) => Promise<void>,
): Promise<void> {
  const copy = join(home.incoming, `${randomUUID()}.upload`);
  try {
    await copyFile(file, copy);
    await use(copy);
  } finally {
    await rm(copy, { force: true });
  }
}
