import { existsSync } from 'node:fs';
import { join } from 'node:path';
import express, { Router } from 'express';
import { RequestProblem } from './problems.ts';

/** The built screen; every address that is no file is a page of it. */
export function webPages(folder: string): Router {
  const routes = Router();
  const page = join(folder, 'index.html');
  routes.use('/assets', express.static(join(folder, 'assets'), { immutable: true, maxAge: '1y' }));
  routes.use(express.static(folder, { index: false }));
  routes.get('/{*address}', (request, response) => {
    // A file that is missing is missing; only pages fall back to the one page.
    if (/\.\w+$/.test(request.path)) throw new RequestProblem(404, `There is no file ${request.path}.`);
    if (!existsSync(page)) {
      throw new RequestProblem(503, 'The screen has not been built yet. Run "npm run build", then reload.');
    }
    response.set('Cache-Control', 'no-cache').sendFile(page);
  });
  return routes;
}
