import { Router } from 'express';
import { viewAnswer } from '../bench/view-answer.ts';
import { viewChangeSchema } from '../schemas/sitting.ts';
import type { Services } from '../services.ts';
import { newestMask, queueView } from '../store/measurements.ts';
import { plantById } from '../store/plants.ts';
import { sittingOn } from '../store/sittings.ts';
import {
  moveView,
  removeView,
  restoreView,
  turnView,
  type ViewRow,
  viewById,
  viewOfPhoto,
} from '../store/views.ts';
import { sendPicture, sendUnchanging } from './pictures.ts';
import { found, noSuch, RequestProblem, sent } from './problems.ts';

/** The views of the sittings: their facts, their pictures, and measuring them anew. */
export function viewRoutes(services: Services): Router {
  const { db, queue, progress } = services;
  const routes = Router();

  routes.get('/views/:id', (request, response) => {
    response.json(viewAnswer(liveView(request.params.id)));
  });

  routes.patch('/views/:id', (request, response) => {
    const view = liveView(request.params.id);
    const change = sent(viewChangeSchema, request.body);
    db.transaction(() => {
      if (change.day !== undefined && change.day !== view.day) {
        const plant = found('plant', plantById(db, view.plantId));
        moveView(db, view.id, sittingOn(db, plant, change.day));
      }
      if (change.turnDeg !== undefined) turnView(db, view.id, change.turnDeg);
    })();
    response.json(viewAnswer(toldView(view.id)));
  });

  routes.delete('/views/:id', (request, response) => {
    removeView(db, liveView(request.params.id).id);
    response.status(204).end();
  });

  routes.post('/views/:id/restore', (request, response) => {
    const view = found('photo', viewById(db, request.params.id));
    const shown = viewOfPhoto(db, view.sha256);
    if (shown && shown.id !== view.id) {
      throw new RequestProblem(
        409,
        'The same photo was added again since; remove that one first to bring this one back.',
      );
    }
    restoreView(db, view.id);
    queue.wake();
    response.json(viewAnswer(toldView(view.id)));
  });

  routes.post('/views/:id/measure', (request, response) => {
    const view = liveView(request.params.id);
    queueView(db, view.id);
    response.status(202).json(viewAnswer(toldView(view.id)));
    queue.wake();
  });

  routes.get('/views/:id/picture', async (request, response) => {
    await sendPicture(services, liveView(request.params.id).sha256, request, response);
  });

  routes.get('/views/:id/mask', (request, response) => {
    const view = liveView(request.params.id);
    const bytes = newestMask(db, view.id);
    if (bytes === null) throw noSuch('canopy mask');
    sendUnchanging(response, { tag: `mask-${view.measurementId}`, type: 'image/png', bytes });
  });

  function liveView(id: string): ViewRow {
    const view = viewById(db, id);
    if (view === null) throw noSuch('photo');
    if (view.removedAt !== null) {
      throw new RequestProblem(404, 'This photo was removed. Bring it back first.');
    }
    return view;
  }

  /** The view as it is now, after telling every open screen. */
  function toldView(id: string): ViewRow {
    const view = liveView(id);
    progress.tell({ plantId: view.plantId, viewId: view.id, state: view.state });
    return view;
  }

  return routes;
}
