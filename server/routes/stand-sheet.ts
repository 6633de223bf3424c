import { Router } from 'express';
import { z } from 'zod';
import { sheetSvg } from '../../core/stand/sheet/sheet-svg.ts';
import { sheetPaperSchema } from '../schemas/stand.ts';
import { sent } from './problems.ts';

const sheetQuerySchema = z.object({ paper: sheetPaperSchema.default('A4') });

/** The stand sheet to print, in true size. */
export function standSheetRoutes(): Router {
  const routes = Router();

  routes.get('/stand-sheet.svg', (request, response) => {
    const { paper } = sent(sheetQuerySchema, request.query);
    response.type('image/svg+xml').send(sheetSvg(paper));
  });

  routes.get('/stand-sheet.pdf', async (request, response) => {
    const { paper } = sent(sheetQuerySchema, request.query);
    // What makes PDFs takes half a second to load, and few ask for it.
    const { sheetPdf } = await import('../sheet/sheet-pdf.ts');
    response
      .type('application/pdf')
      .set('Content-Disposition', `inline; filename="rondure-stand-sheet-${paper}.pdf"`)
      .send(await sheetPdf(paper));
  });

  return routes;
}
