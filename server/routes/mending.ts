import express, { Router } from 'express';
import { viewAnswer } from '../bench/view-answer.ts';
import { rimOn } from '../schemas/rim-by-hand.ts';
import { acceptedFormSchema, strokesOn } from '../schemas/stroke.ts';
import type { Services } from '../services.ts';
import { queueLaterViews, setAccepted, setRimByHand, setStrokes } from '../store/due-view.ts';
import { liveView } from './live-view.ts';
import { RequestProblem, sent } from './problems.ts';

/** All strokes that a photo may have, with every point in full. */
export const STROKES_LIMIT = '12mb';

/** Mending an outline: the strokes over a view, and the grower's word that the outline is right. */
export function mendingRoutes({ db, queue, corrections, progress }: Services): Router {
  const routes = Router();

  routes.put('/views/:id/strokes', express.json({ limit: STROKES_LIMIT }), async (request, response) => {
    const view = liveView(db, String(request.params.id));
    const { strokes } = sent(strokesOn(view), request.body);
    // Kept before anything is measured: should the program stop now, they are measured at the next start.
    db.transaction(() => {
      setStrokes(db, view.id, strokes);
      if (view.acceptedAt !== null) queueLaterViews(db, view.plantId, view.day);
    })();
    await corrections.recut(view.id);
    response.json(viewAnswer(liveView(db, view.id)));
    queue.wake();
  });

  routes.put('/views/:id/rim', express.json(), async (request, response) => {
    const view = liveView(db, String(request.params.id));
    const { rim } = sent(rimOn(view), request.body);
    db.transaction(() => {
      setRimByHand(db, view.id, rim);
      if (view.acceptedAt !== null) queueLaterViews(db, view.plantId, view.day);
    })();
    await corrections.recut(view.id);
    response.json(viewAnswer(liveView(db, view.id)));
    queue.wake();
  });

  routes.post('/views/:id/warm', async (request, response) => {
    await corrections.warm(liveView(db, request.params.id).id);
    response.status(204).end();
  });

  routes.put('/views/:id/accepted', express.json(), (request, response) => {
    const view = liveView(db, String(request.params.id));
    const { accepted } = sent(acceptedFormSchema, request.body);
    if (accepted && !view.hasMask) {
      throw new RequestProblem(
        409,
        'There is no outline yet that could be right. Let the photo be measured, or mend its outline, first.',
      );
    }
    if (accepted !== (view.acceptedAt !== null)) {
      db.transaction(() => {
        setAccepted(db, view.id, accepted);
        queueLaterViews(db, view.plantId, view.day);
      })();
      progress.tell({ plantId: view.plantId, viewId: view.id, state: view.state });
    }
    response.json(viewAnswer(liveView(db, view.id)));
    queue.wake();
  });

  return routes;
}
