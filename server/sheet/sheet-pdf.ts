import PdfDocument from 'pdfkit';
import type { SheetPaper } from '../../core/stand/known-stand.ts';
import { type SheetDrawing, type SheetShape, sheetDrawing } from '../../core/stand/sheet/sheet-drawing.ts';
import type { PointMm } from '../../core/stand/sheet/sheet-geometry.ts';
import { SHEET_WORDS } from '../../core/stand/sheet/sheet-words.ts';

/** Points of PDF (ISO 32000-1, 8.3.2.3) a millimetre. */
const POINTS_A_MM = 72 / 25.4;

/** Two of the fonts that every PDF reader has, so that none need be sent along. */
const FACES = { name: 'Times-Bold', text: 'Helvetica' } as const;

/** A document that is being drawn. */
type Page = InstanceType<typeof PdfDocument>;

/** The stand sheet as a one-page PDF in true size. The same paper gives the same bytes. */
export function sheetPdf(paper: SheetPaper): Promise<Buffer> {
  return drawingPdf(sheetDrawing(paper), `${SHEET_WORDS.name}: ${SHEET_WORDS.title}, ${paper}`);
}

/** A drawing on paper as a one-page PDF in true size. */
export function drawingPdf({ widthMm, heightMm, shapes }: SheetDrawing, title: string): Promise<Buffer> {
  const page = new PdfDocument({
    size: [widthMm * POINTS_A_MM, heightMm * POINTS_A_MM],
    margin: 0,
    displayTitle: true,
    info: { Title: title, CreationDate: new Date(0) },
  });
  forbidFitting(page);
  page.scale(POINTS_A_MM);
  for (const shape of shapes) drawShape(page, shape);
  return bytesOf(page);
}

/** Asks the reader not to fit the page to the paper when printing (ISO 32000-1, 12.2): the library has no word for it. */
function forbidFitting(page: Page): void {
  type Catalogue = { data: { ViewerPreferences: { data: Record<string, unknown> } } };
  const { _root } = page as unknown as { _root: Catalogue };
  _root.data.ViewerPreferences.data.PrintScaling = 'None';
}

function drawShape(page: Page, shape: SheetShape): void {
  switch (shape.kind) {
    case 'circle':
      page.circle(...shape.centreMm, shape.radiusMm).fill(colour(shape.fill));
      return;
    case 'rect':
      page.rect(shape.leftMm, shape.topMm, shape.widthMm, shape.heightMm).fill(colour(shape.fill));
      return;
    case 'polygon':
      page.polygon(...corners(shape.pointsMm)).fill(colour(shape.fill));
      return;
    case 'line':
      trace(page, shape.pointsMm).lineWidth(shape.widthMm).lineCap('butt').stroke(colour(shape.ink));
      return;
    case 'text':
      writeWords(page, shape);
      return;
  }
}

function writeWords(page: Page, shape: Extract<SheetShape, { kind: 'text' }>): void {
  page.font(FACES[shape.face]).fontSize(shape.sizeMm).fillColor(colour(shape.ink));
  const [x, y] = shape.atMm;
  const left = shape.anchor === 'middle' ? x - page.widthOfString(shape.words) / 2 : x;
  page.text(shape.words, left, y, { baseline: 'alphabetic', lineBreak: false });
}

function trace(page: Page, [first, ...others]: readonly PointMm[]): Page {
  if (first !== undefined) page.moveTo(...first);
  for (const point of others) page.lineTo(...point);
  return page;
}

function corners(points: readonly PointMm[]): number[][] {
  return points.map(([x, y]) => [x, y]);
}

function colour(grey: number): [number, number, number] {
  const step = Math.round(255 * grey);
  return [step, step, step];
}

function bytesOf(page: Page): Promise<Buffer> {
  return new Promise((resolve, reject) => {
    const parts: Buffer[] = [];
    page.on('data', (part: Buffer) => parts.push(part));
    page.on('end', () => resolve(Buffer.concat(parts)));
    page.on('error', reject);
    page.end();
  });
}
