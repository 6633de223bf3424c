import { Router } from 'express';
import { z } from 'zod';
import { collarDrawing, collarSvg, collarTitle } from '../../core/turned/collar/collar-drawing.ts';
import { COLLAR_RIMS } from '../../core/turned/collar/collar-geometry.ts';
import { COLLAR_WORDS } from '../../core/turned/collar/collar-words.ts';
import { sheetPaperSchema } from '../schemas/stand.ts';
import { sent } from './problems.ts';

const { leastMm, mostMm } = COLLAR_RIMS;
const WHICH_RIM = `Give the pot rim’s outer diameter in millimetres, ${leastMm} to ${mostMm}, for example rimMm=130.`;

const collarQuerySchema = z.object({
  rimMm: z.coerce.number(WHICH_RIM).min(leastMm, WHICH_RIM).max(mostMm, WHICH_RIM),
  paper: sheetPaperSchema.default('A4'),
});

/** The turn collar to print to a pot's rim, in true size. */
export function turnCollarRoutes(): Router {
  const routes = Router();

  routes.get('/turn-collar.svg', (request, response) => {
    const { rimMm, paper } = sent(collarQuerySchema, request.query);
    response.type('image/svg+xml').send(collarSvg(rimMm, paper));
  });

  routes.get('/turn-collar.pdf', async (request, response) => {
    const { rimMm, paper } = sent(collarQuerySchema, request.query);
    const { drawingPdf } = await import('../sheet/sheet-pdf.ts');
    response
      .type('application/pdf')
      .set('Content-Disposition', `inline; filename="rondure-turn-collar-${rimMm}-${paper}.pdf"`)
      .send(await drawingPdf(collarDrawing(rimMm, paper), `${COLLAR_WORDS.name}: ${collarTitle(rimMm)}`));
  });

  return routes;
}
