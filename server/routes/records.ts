import { Router } from 'express';
import type { z } from 'zod';
import { turnChangeSchema, turnFormSchema } from '../schemas/light.ts';
import { noteChangeSchema, noteFormSchema, stopChangeSchema, stopFormSchema } from '../schemas/sitting.ts';
import { ownWorkChangeSchema, ownWorkFormSchema } from '../schemas/work.ts';
import type { Services } from '../services.ts';
import type { Database } from '../store/database.ts';
import { addNote, changeNote, noteById, setNoteRemoved } from '../store/notes.ts';
import { addOwnWork, changeOwnWork, ownWorkById, setOwnWorkRemoved } from '../store/own-work.ts';
import { plantById } from '../store/plants.ts';
import { addStop, changeStop, setStopRemoved, stopById } from '../store/stops.ts';
import { addTurn, changeTurn, setTurnRemoved, turnById } from '../store/turns.ts';
import { overlaid } from './overlay.ts';
import { found, noSuch, sent } from './problems.ts';

/** What differs between the kinds of record that a grower writes down. */
interface RecordKind<Form extends object, Kept extends Form> {
  /** The word for one, as problems name it. */
  readonly word: 'stop' | 'note' | 'turn' | 'piece of work';
  readonly address: 'stops' | 'notes' | 'turns' | 'own-work';
  readonly form: z.ZodType<Form>;
  readonly change: z.ZodType<{ readonly [Field in keyof Form]?: Form[Field] | undefined }>;
  readonly byId: (db: Database, id: string) => Kept | null;
  readonly add: (db: Database, plantId: string, form: Form) => string;
  readonly write: (db: Database, id: string, form: Form) => void;
  readonly setRemoved: (db: Database, id: string, removed: boolean) => boolean;
}

/** The stops, notes and turns of a plant, and the work its grower sets. */
export function recordRoutes(services: Services): Router {
  const routes = Router();
  routes.use(
    routesOf(services, {
      word: 'stop',
      address: 'stops',
      form: stopFormSchema,
      change: stopChangeSchema,
      byId: stopById,
      add: addStop,
      write: changeStop,
      setRemoved: setStopRemoved,
    }),
  );
  routes.use(
    routesOf(services, {
      word: 'note',
      address: 'notes',
      form: noteFormSchema,
      change: noteChangeSchema,
      byId: noteById,
      add: addNote,
      write: changeNote,
      setRemoved: setNoteRemoved,
    }),
  );
  routes.use(
    routesOf(services, {
      word: 'turn',
      address: 'turns',
      form: turnFormSchema,
      change: turnChangeSchema,
      byId: turnById,
      add: addTurn,
      write: changeTurn,
      setRemoved: setTurnRemoved,
    }),
  );
  routes.use(
    routesOf(services, {
      word: 'piece of work',
      address: 'own-work',
      form: ownWorkFormSchema,
      change: ownWorkChangeSchema,
      byId: ownWorkById,
      add: addOwnWork,
      write: changeOwnWork,
      setRemoved: setOwnWorkRemoved,
    }),
  );
  return routes;
}

function routesOf<Form extends object, Kept extends Form>(
  { db }: Services,
  kind: RecordKind<Form, Kept>,
): Router {
  const { word } = kind;
  const address: string = `/${kind.address}/:id`;
  const routes = Router();

  routes.post(`/plants/:id/${kind.address}`, (request, response) => {
    const plant = found('plant', plantById(db, String(request.params.id)));
    const id = kind.add(db, plant.id, sent(kind.form, request.body));
    response.status(201).json(found(word, kind.byId(db, id)));
  });

  routes.patch(address, (request, response) => {
    const id = String(request.params.id);
    const kept = found(word, kind.byId(db, id));
    kind.write(db, id, overlaid<Form>(kept, sent(kind.change, request.body)));
    response.json(found(word, kind.byId(db, id)));
  });

  routes.delete(address, (request, response) => {
    if (!kind.setRemoved(db, String(request.params.id), true)) throw noSuch(word);
    response.status(204).end();
  });

  routes.post(`/${kind.address}/:id/restore`, (request, response) => {
    const id = String(request.params.id);
    if (!kind.setRemoved(db, id, false)) throw noSuch(word);
    response.json(found(word, kind.byId(db, id)));
  });

  return routes;
}
