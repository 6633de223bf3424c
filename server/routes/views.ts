import { Router } from 'express';
import { type Day, day as dayOf } from '../../core/day/day.ts';
import { viewAnswer } from '../bench/view-answer.ts';
import { viewChangeSchema } from '../schemas/sitting.ts';
import type { Services } from '../services.ts';
import { queueLaterViews, queueView } from '../store/due-view.ts';
import { newestMask } from '../store/measurements.ts';
import { settleNormalLeaf } from '../store/normal-leaf.ts';
import { plantById } from '../store/plants.ts';
import { sittingOn } from '../store/sittings.ts';
import { settleFirstPhotos } from '../store/stand-sittings.ts';
import {
  moveView,
  removeView,
  restoreView,
  turnView,
  type ViewRow,
  viewById,
  viewOfPhoto,
} from '../store/views.ts';
import { liveView } from './live-view.ts';
import { sendPicture, sendUnchanging } from './pictures.ts';
import { found, noSuch, RequestProblem, sent } from './problems.ts';

/** The views of the sittings: their facts, their pictures, and measuring them anew. */
export function viewRoutes(services: Services): Router {
  const { db, queue, progress } = services;
  const routes = Router();

  routes.get('/views/:id', (request, response) => {
    response.json(viewAnswer(liveView(db, request.params.id)));
  });

  routes.patch('/views/:id', (request, response) => {
    const view = liveView(db, request.params.id);
    const change = sent(viewChangeSchema, request.body);
    const day = change.day === null ? cameraDay(view) : (change.day ?? view.day);
    const takenFrom = change.day === null ? 'exif' : 'grower';
    const earliest = [day, view.day].sort()[0] as Day;
    db.transaction(() => {
      if (change.day !== undefined && (day !== view.day || change.day === null)) {
        const plant = found('plant', plantById(db, view.plantId));
        moveView(db, view.id, sittingOn(db, plant, day), takenFrom);
        settleBothStands(view);
        settleNormalLeaf(db, view.plantId);
      }
      if (change.turnDeg !== undefined) {
        turnView(db, view.id, change.turnDeg);
        // What its report says of the collar rests on the turn as told.
        if (view.report?.collar != null) queueView(db, view.id);
      }
      if (view.acceptedAt !== null) queueLaterViews(db, view.plantId, earliest);
    })();
    queue.wake();
    response.json(viewAnswer(toldView(view.id)));
  });

  routes.delete('/views/:id', (request, response) => {
    const view = liveView(db, request.params.id);
    db.transaction(() => {
      removeView(db, view.id);
      settleFirstPhotos(db, view.standId);
      settleNormalLeaf(db, view.plantId);
      if (view.acceptedAt !== null) queueLaterViews(db, view.plantId, view.day);
    })();
    queue.wake();
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
    db.transaction(() => {
      restoreView(db, view.id);
      settleFirstPhotos(db, view.standId);
      settleNormalLeaf(db, view.plantId);
      if (view.acceptedAt !== null) queueLaterViews(db, view.plantId, view.day);
    })();
    queue.wake();
    response.json(viewAnswer(toldView(view.id)));
  });

  routes.post('/views/:id/measure', (request, response) => {
    const view = liveView(db, request.params.id);
    queueView(db, view.id);
    response.status(202).json(viewAnswer(toldView(view.id)));
    queue.wake();
  });

  routes.get('/views/:id/picture', async (request, response) => {
    await sendPicture(services, liveView(db, request.params.id).sha256, request, response);
  });

  routes.get('/views/:id/mask', (request, response) => {
    const view = liveView(db, request.params.id);
    const bytes = newestMask(db, view.id);
    if (bytes === null) throw noSuch('canopy mask');
    sendUnchanging(response, { tag: `mask-${view.measurementId}`, type: 'image/png', bytes });
  });

  /** The day that the camera wrote into the photo. */
  function cameraDay({ takenAt }: ViewRow): Day {
    if (takenAt === null) {
      throw new RequestProblem(
        409,
        'The camera wrote no day into this photo. Give the day on which it was taken.',
      );
    }
    return dayOf(takenAt.slice(0, 10));
  }

  /** A photo that went to a sitting on another stand, or on another version of it, is measured as taken there. */
  function settleBothStands(before: ViewRow): void {
    const after = liveView(db, before.id);
    if (after.standVersionId === before.standVersionId) return;
    settleFirstPhotos(db, before.standId);
    settleFirstPhotos(db, after.standId);
    queueView(db, before.id);
  }

  /** The view as it is now, after telling every open screen. */
  function toldView(id: string): ViewRow {
    const view = liveView(db, id);
    progress.tell({ plantId: view.plantId, viewId: view.id, state: view.state });
    return view;
  }

  return routes;
}
