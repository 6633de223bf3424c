import { Router } from 'express';
import { WIDEST_PICTURE_PX } from '../bench/keep-photo.ts';
import { uprightPicture } from '../bench/upright-picture.ts';
import { createFilmMaker } from '../film/film-maker.ts';
import { filmOfPlant } from '../film/film-of-plant.ts';
import { MOST_PICTURES, thinned } from '../film/film-size.ts';
import { filmFormSchema } from '../schemas/film.ts';
import type { Services } from '../services.ts';
import { plantById } from '../store/plants.ts';
import { found, RequestProblem, sent } from './problems.ts';

/** A plant's film as a file that moves: made on asking, fetched when it is ready. */
export function filmRoutes(services: Services): Router {
  const { db, log } = services;
  const maker = createFilmMaker(log);
  const routes = Router();

  routes.post('/plants/:id/films', (request, response) => {
    const plant = found('plant', plantById(db, request.params.id));
    const { format, perSecond, sideDeg, place } = sent(filmFormSchema, request.body);
    const film = filmOfPlant(db, plant.id, {
      ...(sideDeg === undefined ? {} : { sideDeg }),
      ...(place === undefined ? {} : { place }),
    });
    if (film === null || film.frames.length < 2) {
      throw new RequestProblem(
        409,
        'A film needs two photos at least, measured and from one camera place. Add more photos, or choose another side.',
      );
    }
    const frames = thinned(film.frames, MOST_PICTURES);
    const [first, last] = [frames[0]?.photo.day, frames.at(-1)?.photo.day];
    const begun = maker.begin({
      frames,
      window: film.window,
      format,
      perSecond,
      pictureOf: (sha256) => uprightPicture(services, sha256, WIDEST_PICTURE_PX),
      fileName: `${plainName(plant.name)}-${first}-to-${last}.${format}`,
      thinnedFrom: frames.length < film.frames.length ? film.frames.length : null,
    });
    if (begun === null) {
      throw new RequestProblem(409, 'Another film is being made. Wait until it is done, then ask again.');
    }
    response.status(202).json(begun);
  });

  routes.get('/films/:id', (request, response) => {
    response.json(found('film', maker.byId(request.params.id)).answer);
  });

  routes.get('/films/:id/file', (request, response) => {
    const { answer, bytes } = found('film', maker.byId(request.params.id));
    if (bytes === null) throw new RequestProblem(409, 'The film is not ready yet.');
    response.type(`image/${answer.fileName.endsWith('.gif') ? 'gif' : 'webp'}`);
    response.attachment(answer.fileName).send(bytes);
  });

  return routes;
}

function plainName(name: string): string {
  const plain = name
    .normalize('NFKD')
    .replace(/[^\w-]+/g, '-')
    .replace(/^-+|-+$/g, '');
  return plain || 'plant';
}
