import { Router } from 'express';
import { seasonNoteFormSchema } from '../schemas/season-note.ts';
import type { Services } from '../services.ts';
import {
  addSeasonNote,
  allSeasonNotes,
  changeSeasonNote,
  seasonNoteById,
  setSeasonNoteRemoved,
} from '../store/season-notes.ts';
import { found, noSuch, sent } from './problems.ts';

/** Words on stretches of time: a cold dark winter, a warm spring. */
export function seasonNoteRoutes({ db }: Services): Router {
  const routes = Router();

  routes.get('/season-notes', (_request, response) => {
    response.json(allSeasonNotes(db));
  });

  routes.post('/season-notes', (request, response) => {
    const id = addSeasonNote(db, sent(seasonNoteFormSchema, request.body));
    response.status(201).json(found('note', seasonNoteById(db, id)));
  });

  routes.put('/season-notes/:id', (request, response) => {
    const { id } = found('note', seasonNoteById(db, request.params.id));
    changeSeasonNote(db, id, sent(seasonNoteFormSchema, request.body));
    response.json(found('note', seasonNoteById(db, id)));
  });

  routes.delete('/season-notes/:id', (request, response) => {
    if (!setSeasonNoteRemoved(db, request.params.id, true)) throw noSuch('note');
    response.status(204).end();
  });

  routes.post('/season-notes/:id/restore', (request, response) => {
    if (!setSeasonNoteRemoved(db, request.params.id, false)) throw noSuch('note');
    response.json(found('note', seasonNoteById(db, request.params.id)));
  });

  return routes;
}
