import compression from 'compression';
import express, { type Express, type Request, type Response } from 'express';
import { type Machine, THIS_MACHINE } from '../pairing/known-names.ts';
import { createPairing } from '../pairing/pairing.ts';
import type { Services } from '../services.ts';
import { conditionRoutes } from './condition.ts';
import { cutRoutes } from './cuts.ts';
import { onlyLetIn } from './door.ts';
import { eventRoutes } from './events.ts';
import { filmRoutes } from './films.ts';
import { onlyKnownNames, onlyOwnPages, securityHeaders } from './guards.ts';
import { keepingRoutes } from './keeping.ts';
import { mendingRoutes } from './mending.ts';
import { phoneRoutes } from './phones.ts';
import { photoRoutes } from './photos.ts';
import { plantRoutes } from './plants.ts';
import { noSuchAddress, problemAnswers } from './problems.ts';
import { recordRoutes } from './records.ts';
import { seasonRoutes } from './season.ts';
import { seasonNoteRoutes } from './season-notes.ts';
import { showRoutes } from './shows.ts';
import { sittingRoutes } from './sittings.ts';
import { standSheetRoutes } from './stand-sheet.ts';
import { standRoutes } from './stands.ts';
import { turnCollarRoutes } from './turn-collar.ts';
import { viewRoutes } from './views.ts';
import { webPages } from './web-pages.ts';

/** The whole HTTP interface over the given services. `host` is the address it will be bound to. */
export function createApp(
  services: Services,
  {
    webFolder,
    host,
    machine = THIS_MACHINE,
  }: { readonly webFolder: string; readonly host: string; readonly machine?: Machine },
): Express {
  const app = express();
  const pairing = createPairing(services.db, services.log);
  app.disable('x-powered-by');
  app.use(securityHeaders);
  app.use(compression({ filter: isPacked }));
  app.use(onlyKnownNames(host, machine));
  app.use(onlyOwnPages);

  const api = express.Router();
  api.use((_request, response, next) => {
    response.set('Cache-Control', 'no-store');
    next();
  });
  api.use(onlyLetIn(pairing));
  // Before the general limit: the strokes of a photo are more than a form.
  api.use(mendingRoutes(services));
  api.use(express.json({ limit: '64kb' }));
  api.get('/openapi.json', async (_request, response) => {
    const { openApiDocument } = await import('../openapi/document.ts');
    response.json(openApiDocument());
  });
  api.use(phoneRoutes(services, pairing, { host, machine }));
  api.use(keepingRoutes(services));
  api.use(plantRoutes(services), photoRoutes(services), viewRoutes(services), recordRoutes(services));
  api.use(
    standRoutes(services),
    standSheetRoutes(),
    turnCollarRoutes(),
    sittingRoutes(services),
    cutRoutes(services),
    filmRoutes(services),
    conditionRoutes(services),
    eventRoutes(services),
    showRoutes(services),
    seasonNoteRoutes(services),
    seasonRoutes(services),
  );
  api.use(noSuchAddress);

  app.use('/api', api);
  app.use(webPages(webFolder));
  app.use(noSuchAddress);
  app.use(problemAnswers(services.log));
  return app;
}

/** Texts are sent packed, for a phone at the end of the garden; not the stream of events, each of which must leave at once. */
function isPacked(request: Request, response: Response): boolean {
  return (
    !String(response.getHeader('Content-Type')).startsWith('text/event-stream') &&
    compression.filter(request, response)
  );
}
