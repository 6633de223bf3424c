import { Router } from 'express';
import { addPhotoToPlant } from '../bench/add-view.ts';
import { keepPhoto } from '../bench/keep-photo.ts';
import { plantAnswer } from '../bench/plant-answer.ts';
import { type Upload, uploadFormSchema } from '../schemas/pages.ts';
import type { Services } from '../services.ts';
import { queuePlant } from '../store/due-view.ts';
import { plantById, setEmptyPhoto } from '../store/plants.ts';
import { sendPicture } from './pictures.ts';
import { found, noSuch, RequestProblem, sent } from './problems.ts';
import { withUploadedFiles } from './uploaded-files.ts';

/** A season of weekly photos in one go. */
const MOST_PHOTOS = 100;

/** Photos on their way to a plant: of the plant, and of its empty stand. */
export function photoRoutes(services: Services): Router {
  const { db, home, queue } = services;
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
      for (const { path, fileName } of files) {
        photos.push(
          await addPhotoToPlant(services, plant, path, {
            fileName,
            day: told.day ?? null,
            turnDeg: told.turnDeg ?? null,
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
      const photo = await services.receive(file.path);
      if (!photo.ok) throw new RequestProblem(422, photo.hint);
      await keepPhoto(services, file.path, photo);
      changeEmptyPhoto(plant.id, plant.standId, photo.sha256);
      return { status: 200, body: plantAnswer(found('plant', plantById(db, plant.id))) };
    }),
  );

  routes.delete('/plants/:id/empty-photo', (request, response) => {
    const plant = found('plant', plantById(db, request.params.id));
    if (plant.emptyPhoto !== null) changeEmptyPhoto(plant.id, plant.standId, null);
    response.json(plantAnswer(found('plant', plantById(db, plant.id))));
  });

  routes.get('/plants/:id/empty-photo', async (request, response) => {
    const plant = found('plant', plantById(db, request.params.id));
    if (plant.emptyPhoto === null) throw noSuch('photo of the empty stand');
    await sendPicture(services, plant.emptyPhoto, request, response);
  });

  function changeEmptyPhoto(plantId: string, standId: string, sha256: string | null): void {
    db.transaction(() => {
      setEmptyPhoto(db, standId, sha256);
      queuePlant(db, plantId);
    })();
    queue.wake();
  }

  return routes;
}
