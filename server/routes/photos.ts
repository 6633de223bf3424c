import { Router } from 'express';
import { addPhotoToPlant } from '../bench/add-view.ts';
import { aimedPlant } from '../bench/aimed-plant.ts';
import { keepPhoto } from '../bench/keep-photo.ts';
import { plantAnswer } from '../bench/plant-answer.ts';
import { type Upload, uploadFormSchema } from '../schemas/pages.ts';
import type { Services } from '../services.ts';
import { queuePlant } from '../store/due-view.ts';
import { type PlantRow, plantById, setEmptyPhoto } from '../store/plants.ts';
import { versionsOfStand } from '../store/stand-versions.ts';
import { standById } from '../store/stands.ts';
import { sendPicture } from './pictures.ts';
import { found, noSuch, RequestProblem, sent } from './problems.ts';
import { withUploadedFiles } from './uploaded-files.ts';

/** A season of weekly photos in one go. */
const MOST_PHOTOS = 100;

/** Photos on their way to a plant: of the plant, and of its empty stand. */
export function photoRoutes(services: Services): Router {
  const { db, home, queue, today } = services;
  const routes = Router();

  routes.post(
    '/plants/:id/photos',
    (request, _response, next) => {
      // Asked before the files are taken in, so that a wrong address costs no upload.
      found('plant', plantById(db, String(request.params.id)));
      next();
    },
    ...withUploadedFiles(home, { field: 'photos', most: MOST_PHOTOS }, async (files, request) => {
      const plant = found('plant', plantById(db, String(request.params.id)));
      const told = sent(uploadFormSchema, request.body ?? {});
      const photos: Upload['photos'] = [];
      for (const file of files) {
        photos.push(
          await addPhotoToPlant(services, plant, file, {
            fileName: file.fileName,
            day: told.day ?? null,
            turnDeg: told.turnDeg ?? null,
            chosenDay: told.chosenDay ?? null,
          }),
        );
      }
      return { status: 202, body: { photos } satisfies Upload };
    }),
  );

  routes.put(
    '/plants/:id/empty-photo',
    ...withUploadedFiles(home, { field: 'photo', most: 1 }, async ([file], request) => {
      const plant = found('plant', plantById(db, String(request.params.id)));
      if (!file) throw new RequestProblem(400, 'No photo was sent.');
      refuseBesideStand(plant);
      const photo = await services.receive(file);
      if (!photo.ok) throw new RequestProblem(422, photo.hint);
      await keepPhoto(services, file.path, photo, () => changeEmptyPhoto(plant.id, photo.sha256));
      queue.wake();
      return { status: 200, body: plantAnswer(found('plant', aimedPlant(db, plant.id, today()))) };
    }),
  );

  routes.delete('/plants/:id/empty-photo', (request, response) => {
    const plant = found('plant', plantById(db, request.params.id));
    if (plant.emptyPhoto !== null) {
      db.transaction(() => changeEmptyPhoto(plant.id, null))();
      queue.wake();
    }
    response.json(plantAnswer(found('plant', aimedPlant(db, plant.id, today()))));
  });

  routes.get('/plants/:id/empty-photo', async (request, response) => {
    const plant = found('plant', plantById(db, request.params.id));
    if (plant.emptyPhoto === null) throw noSuch('photo of the empty stand');
    await sendPicture(services, plant.emptyPhoto, request, response);
  });

  /** A photo that would change nothing is not taken. */
  function refuseBesideStand({ standId }: PlantRow): void {
    const stand = standId === null ? null : standById(db, standId);
    if (stand === null || versionsOfStand(db, stand.id)[0]?.emptyPhoto == null) return;
    throw new RequestProblem(
      409,
      `This plant stands on “${stand.name}”, whose own empty photo counts. Give the new empty photo to the stand.`,
    );
  }

  function changeEmptyPhoto(plantId: string, sha256: string | null): void {
    setEmptyPhoto(db, plantId, sha256);
    queuePlant(db, plantId);
  }

  return routes;
}
