import { Router } from 'express';
import type { z } from 'zod';
import { changeStand, type WantedChange } from '../bench/change-stand.ts';
import { keepPhoto } from '../bench/keep-photo.ts';
import { standAnswer } from '../bench/stand-answer.ts';
import { sameSheet } from '../bench/stand-in-words.ts';
import { standOverlay } from '../bench/stand-overlay.ts';
import { newStandSchema, type Stand, type StandPlace, standChangeSchema } from '../schemas/stand.ts';
import type { Services } from '../services.ts';
import { originalPath } from '../store/photo-files.ts';
import { photoBySha256 } from '../store/photos.ts';
import { plantById } from '../store/plants.ts';
import { type StandVersionRow, versionsOfStand } from '../store/stand-versions.ts';
import {
  addStand,
  allStands,
  renameStand,
  setStandPlace,
  setStandPutAway,
  standById,
} from '../store/stands.ts';
import { overlaid } from './overlay.ts';
import { sendPicture } from './pictures.ts';
import { found, noSuch, RequestProblem, sent } from './problems.ts';
import { withUploadedFiles } from './uploaded-files.ts';

/** The stands where plants are photographed. */
export function standRoutes(services: Services): Router {
  const { db, home, queue, today } = services;
  const routes = Router();

  routes.get('/stands', (_request, response) => {
    response.json(allStands(db).map((stand) => standAnswer(db, stand)));
  });

  routes.post('/stands', (request, response) => {
    const { sinceDay, ...form } = sent(newStandSchema, request.body);
    if (sinceDay !== undefined && sinceDay > today()) {
      const detail = `Give today or an earlier day; ${sinceDay} is still to come.`;
      throw new RequestProblem(422, detail, [{ pointer: '/sinceDay', detail }]);
    }
    const id = addStand(db, form, sinceDay ?? today());
    response.status(201).location(`/api/stands/${id}`).json(answer(id));
  });

  routes.get('/stands/:id', (request, response) => {
    response.json(answer(request.params.id));
  });

  routes.patch('/stands/:id', async (request, response) => {
    const stand = found('stand', standById(db, request.params.id));
    const { id } = stand;
    const { name, sinceDay, latitudeDeg, lightBearingDeg, ...facts } = sent(standChangeSchema, request.body);
    const told = withoutUnsent(facts);
    const { sheet } = told;
    const reread = sheet === undefined ? {} : await rereadEmptyPhoto(currentVersion(id), sheet);
    db.transaction(() => {
      if (name !== undefined) renameStand(db, id, name);
      setStandPlace(db, id, overlaid<StandPlace>(stand, { latitudeDeg, lightBearingDeg }));
      change(id, { facts: { ...told, ...reread }, sinceDay: sinceDay ?? null });
    })();
    queue.wake();
    response.json(answer(id));
  });

  routes.put(
    '/stands/:id/empty-photo',
    ...withUploadedFiles(home, { field: 'photo', most: 1 }, async ([file], request) => {
      const { id } = found('stand', standById(db, String(request.params.id)));
      if (!file) throw new RequestProblem(400, 'No photo was sent.');
      const photo = await services.receive(file);
      if (!photo.ok) throw new RequestProblem(422, photo.hint);
      const { sheet } = currentVersion(id);
      const emptyCheck = await services.checkEmptyPhoto({ path: file.path, sheet });
      await keepPhoto(services, file.path, photo, () =>
        change(id, { facts: { emptyPhoto: photo.sha256, emptyCheck }, sinceDay: null }),
      );
      return { status: 200, body: answer(id) };
    }),
  );

  routes.delete('/stands/:id/empty-photo', (request, response) => {
    const { id } = found('stand', standById(db, request.params.id));
    change(id, { facts: { emptyPhoto: null, emptyCheck: null }, sinceDay: null });
    response.json(answer(id));
  });

  // The second address names the very photo, so that a screen shows a new one as soon as it is there.
  for (const address of ['/stands/:id/empty-photo', '/stands/:id/empty-photo/:photo']) {
    routes.get(address, async (request, response) => {
      const { id } = found('stand', standById(db, String(request.params.id)));
      const { emptyPhoto } = currentVersion(id);
      if (emptyPhoto === null) throw noSuch('photo of the empty stand');
      await sendPicture(services, emptyPhoto, request, response);
    });
  }

  for (const [address, away] of [
    ['put-away', true],
    ['bring-back', false],
  ] as const) {
    routes.post(`/stands/:id/${address}`, (request, response) => {
      const { id } = found('stand', standById(db, String(request.params.id)));
      setStandPutAway(db, id, away);
      response.json(answer(id));
    });
  }

  routes.get('/stands/:id/overlay', (request, response) => {
    const stand = found('stand', standById(db, request.params.id));
    const plantId = request.query.plant;
    const plant = plantId === undefined ? null : found('plant', plantById(db, String(plantId)));
    const overlay = standOverlay(db, stand.id, plant?.id ?? null);
    if (overlay === null) {
      throw new RequestProblem(
        404,
        'There is no photo yet of this stand as it is now. Take the empty photo of it first.',
      );
    }
    response.json(overlay);
  });

  function answer(id: string): Stand {
    return standAnswer(db, found('stand', standById(db, id)));
  }

  function currentVersion(id: string): StandVersionRow {
    return found('stand', versionsOfStand(db, id)[0] ?? null);
  }

  function change(id: string, wanted: Omit<WantedChange, 'today'>): void {
    const changed = db.transaction(() => changeStand(db, id, { ...wanted, today: today() }))();
    if (changed.ok) return;
    const { field, hint } = changed;
    throw new RequestProblem(422, hint, [{ pointer: `/${field}`, detail: hint }]);
  }

  /** The empty photo is looked at again when another sheet is told, for what is now to be seen on it. */
  async function rereadEmptyPhoto(
    { emptyPhoto, sheet: before }: StandVersionRow,
    sheet: StandVersionRow['sheet'],
  ): Promise<Partial<Pick<StandVersionRow, 'emptyCheck'>>> {
    const photo = emptyPhoto === null ? null : photoBySha256(db, emptyPhoto);
    if (photo === null || sameSheet(before, sheet)) return {};
    const path = originalPath(home, photo.sha256, photo.format);
    return { emptyCheck: await services.checkEmptyPhoto({ path, sheet }) };
  }

  return routes;
}

type ToldFacts = Omit<z.infer<typeof standChangeSchema>, 'name' | 'sinceDay' | keyof StandPlace>;

/** Only the fields that were sent, so that the others stay. */
function withoutUnsent(facts: ToldFacts): WantedChange['facts'] {
  return Object.fromEntries(Object.entries(facts).filter(([, value]) => value !== undefined));
}
