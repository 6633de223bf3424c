import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Router } from 'express';
import { describe, expect, it } from 'vitest';
import { openApiDocument } from '../../server/openapi/document.ts';
import { OPERATIONS } from '../../server/openapi/operations.ts';
import { THIS_MACHINE } from '../../server/pairing/known-names.ts';
import { createPairing } from '../../server/pairing/pairing.ts';
import { conditionRoutes } from '../../server/routes/condition.ts';
import { cutRoutes } from '../../server/routes/cuts.ts';
import { eventRoutes } from '../../server/routes/events.ts';
import { filmRoutes } from '../../server/routes/films.ts';
import { keepingRoutes } from '../../server/routes/keeping.ts';
import { mendingRoutes } from '../../server/routes/mending.ts';
import { phoneRoutes } from '../../server/routes/phones.ts';
import { photoRoutes } from '../../server/routes/photos.ts';
import { plantRoutes } from '../../server/routes/plants.ts';
import { recordRoutes } from '../../server/routes/records.ts';
import { seasonRoutes } from '../../server/routes/season.ts';
import { seasonNoteRoutes } from '../../server/routes/season-notes.ts';
import { showRoutes } from '../../server/routes/shows.ts';
import { sittingRoutes } from '../../server/routes/sittings.ts';
import { standSheetRoutes } from '../../server/routes/stand-sheet.ts';
import { standRoutes } from '../../server/routes/stands.ts';
import { turnCollarRoutes } from '../../server/routes/turn-collar.ts';
import { viewRoutes } from '../../server/routes/views.ts';
import { openBench } from './fixtures/open-bench.ts';

interface Layer {
  readonly route?: { readonly path: string; readonly methods: Record<string, boolean> };
  readonly handle?: Router;
}

/** Every method and path that a router answers. */
function answered(router: Router): string[] {
  return (router.stack as unknown as Layer[]).flatMap(({ route, handle }) => {
    if (route) return Object.keys(route.methods).map((method) => `${method} ${route.path}`);
    return handle?.stack ? answered(handle) : [];
  });
}

describe('the description of the interface', () => {
  it('is the one in server/openapi.json; run "npm run openapi" when this fails', () => {
    const file = readFileSync(join(import.meta.dirname, '../../server/openapi.json'), 'utf8');
    expect(JSON.parse(file)).toEqual(JSON.parse(JSON.stringify(openApiDocument())));
  });

  it('names every address that is answered, and no other', async () => {
    const { services } = await openBench();
    const pairing = createPairing(services.db, services.log);
    const phones = phoneRoutes(services, pairing, { host: '127.0.0.1', machine: THIS_MACHINE });
    const routes = [
      () => phones,
      keepingRoutes,
      plantRoutes,
      photoRoutes,
      standRoutes,
      standSheetRoutes,
      sittingRoutes,
      cutRoutes,
      filmRoutes,
      conditionRoutes,
      turnCollarRoutes,
      viewRoutes,
      mendingRoutes,
      recordRoutes,
      eventRoutes,
      showRoutes,
      seasonRoutes,
      seasonNoteRoutes,
    ].flatMap((make) => answered(make(services)));
    const described = OPERATIONS.map(({ method, path }) => `${method} ${path.replace(/\{(\w+)\}/g, ':$1')}`);
    expect([...new Set(routes), 'get /openapi.json'].sort()).toEqual(described.toSorted());
  });

  it('is served, and every reference in it leads somewhere', async () => {
    const { send } = await openBench();
    const { body } = await send('GET', '/api/openapi.json');
    expect(body.openapi).toBe('3.1.0');
    const text = JSON.stringify(body);
    const names = [...text.matchAll(/"#\/components\/schemas\/(\w+)"/g)].map(([, name]) => name ?? '');
    expect(names.length).toBeGreaterThan(30);
    for (const name of names) expect(body.components.schemas).toHaveProperty(name);
  });
});
