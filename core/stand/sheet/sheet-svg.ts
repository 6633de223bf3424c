import type { SheetPaper } from '../known-stand.ts';
import { type SheetDrawing, type SheetShape, sheetDrawing } from './sheet-drawing.ts';
import type { PointMm } from './sheet-geometry.ts';
import { SHEET_WORDS, type SheetWords } from './sheet-words.ts';

const FACES = {
  name: "'Piazzolla Variable', 'Iowan Old Style', Georgia, serif",
  text: "'Commissioner Variable', 'Segoe UI', sans-serif",
};

/**
 * The stand sheet as SVG in true size: one user unit is one millimetre.
 *
 * @param paper A4 or Letter
 * @returns a whole SVG document
 */
export function sheetSvg(paper: SheetPaper, words: SheetWords = SHEET_WORDS): string {
  return drawingSvg(sheetDrawing(paper, words), `${words.name}: ${words.title}, ${paper}`);
}

/** A drawing on paper as SVG in true size. */
export function drawingSvg({ widthMm, heightMm, shapes }: SheetDrawing, title: string): string {
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${widthMm}mm" height="${heightMm}mm" viewBox="0 0 ${widthMm} ${heightMm}">`,
    `<title>${escaped(title)}</title>`,
    `<rect width="${widthMm}" height="${heightMm}" fill="#fff"/>`,
    ...shapes.map(shapeSvg),
    '</svg>',
    '',
  ].join('\n');
}

function shapeSvg(shape: SheetShape): string {
  switch (shape.kind) {
    case 'circle': {
      const [x, y] = shape.centreMm;
      return `<circle cx="${short(x)}" cy="${short(y)}" r="${short(shape.radiusMm)}" fill="${hex(shape.fill)}"/>`;
    }
    case 'rect':
      return `<rect x="${short(shape.leftMm)}" y="${short(shape.topMm)}" width="${short(shape.widthMm)}" height="${short(shape.heightMm)}" fill="${hex(shape.fill)}"/>`;
    case 'line':
      return `<polyline points="${pairs(shape.pointsMm)}" fill="none" stroke="${hex(shape.ink)}" stroke-width="${short(shape.widthMm)}"/>`;
    case 'polygon':
      return `<polygon points="${pairs(shape.pointsMm)}" fill="${hex(shape.fill)}"/>`;
    case 'text': {
      const [x, y] = shape.atMm;
      const weight = shape.face === 'name' ? ' font-weight="600"' : '';
      return `<text x="${short(x)}" y="${short(y)}" font-family="${FACES[shape.face]}" font-size="${short(shape.sizeMm)}"${weight} text-anchor="${shape.anchor}" fill="${hex(shape.ink)}">${escaped(shape.words)}</text>`;
    }
  }
}

function pairs(points: readonly PointMm[]): string {
  return points.map(([x, y]) => `${short(x)},${short(y)}`).join(' ');
}

/** A thousandth of a millimetre is finer than any printer. */
function short(value: number): string {
  return String(Number(value.toFixed(3)));
}

function hex(grey: number): string {
  const step = Math.round(255 * grey)
    .toString(16)
    .padStart(2, '0');
  return `#${step}${step}${step}`;
}

function escaped(words: string): string {
  return words.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}
