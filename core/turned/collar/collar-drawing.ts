import type { SheetPaper } from '../../stand/known-stand.ts';
import {
  BLACK,
  checkLineShapes,
  INK,
  type SheetDrawing,
  type SheetShape,
  SOFT_INK,
  signShapes,
} from '../../stand/sheet/sheet-drawing.ts';
import { type PointMm, SHEET_MARGIN_MM } from '../../stand/sheet/sheet-geometry.ts';
import { drawingSvg } from '../../stand/sheet/sheet-svg.ts';
import { clockOfAzimuth } from '../clock-of-azimuth.ts';
import { COLLAR_STEPS } from './collar-code.ts';
import {
  type CollarGeometry,
  type CollarPiece,
  collarGeometry,
  EDGE_MM,
  isUpperDark,
  TAB_MM,
} from './collar-geometry.ts';
import { COLLAR_WORDS, type CollarWords } from './collar-words.ts';

const STEP_DEG = 360 / COLLAR_STEPS;
const LINE_MM = 0.2;
const GAP_MM = 5;
const HEAD = { nameMm: 13, firstStepMm: 20, stepMm: 4.4 };

/** The name of a collar as a document. */
export function collarTitle(rimMm: number, words: CollarWords = COLLAR_WORDS): string {
  return `${words.title}, ${rimInWords(rimMm, words)}`;
}

/**
 * The turn collar as SVG in true size: one user unit is one millimetre.
 *
 * @param rimMm outer diameter of the pot's rim, within `COLLAR_RIMS`
 */
export function collarSvg(rimMm: number, paper: SheetPaper, words: CollarWords = COLLAR_WORDS): string {
  return drawingSvg(collarDrawing(rimMm, paper, words), `${words.name}: ${collarTitle(rimMm, words)}`);
}

/** Everything printed on the collar's page: the pieces of the strip one below the other, and how to put it on. */
export function collarDrawing(
  rimMm: number,
  paper: SheetPaper,
  words: CollarWords = COLLAR_WORDS,
): SheetDrawing {
  const geometry = collarGeometry(rimMm, paper);
  const { pageMm, pieces, heightMm } = geometry;
  const top = HEAD.firstStepMm + HEAD.stepMm * words.steps.length + 3;
  const checkY = pageMm.heightMm - SHEET_MARGIN_MM - 1;
  return {
    ...pageMm,
    shapes: [
      ...headShapes(rimMm, words),
      ...pieces.flatMap((piece, k) =>
        pieceShapes(geometry, piece, [SHEET_MARGIN_MM, top + k * (heightMm + GAP_MM)], words),
      ),
      ...checkLineShapes(
        {
          checkLine: {
            fromMm: [SHEET_MARGIN_MM + 0.5, checkY],
            toMm: [SHEET_MARGIN_MM + 100.5, checkY],
            tickEveryMm: 10,
          },
        },
        words,
      ),
    ],
  };
}

function rimInWords(rimMm: number, words: CollarWords): string {
  return words.rim.replace('{rim}', String(Math.round(rimMm * 10) / 10));
}

function headShapes(rimMm: number, words: CollarWords): SheetShape[] {
  const left = SHEET_MARGIN_MM + 0.5;
  return [
    ...signShapes([left + 4.2, HEAD.nameMm - 2]),
    writing(words.name, [left + 12, HEAD.nameMm], 8, { face: 'name' }),
    writing(collarTitle(rimMm, words), [left + 56, HEAD.nameMm], 5, { ink: SOFT_INK }),
    ...words.steps.map((step, k) => writing(step, [left, HEAD.firstStepMm + HEAD.stepMm * k], 3.5)),
  ];
}

/** One piece with its tab at the right; `left`, `top` of the strip on the page. */
function pieceShapes(
  geometry: CollarGeometry,
  piece: CollarPiece,
  [left, top]: PointMm,
  words: CollarWords,
): SheetShape[] {
  const { heightMm, lengthMm, rimMm } = geometry;
  const xOf = (azimuthDeg: number) => left + ((azimuthDeg - piece.fromDeg) / 360) * lengthMm;
  const right = xOf(piece.toDeg);
  const tabRight = right + TAB_MM;
  const foot = top + heightMm;
  return [
    ...codeShapes(geometry, piece, xOf, top),
    ...hourShapes(piece, xOf, foot, Math.min(3.4, Math.max(2, rimMm / 40)), words),
    frame(left, top, tabRight, foot),
    line([right, top], [right, foot]),
    writing(words.tab, [(right + tabRight) / 2, top + heightMm / 2 + 1], 3, {
      anchor: 'middle',
      ink: SOFT_INK,
    }),
  ];
}

/** In each step one of the two rows is dark; neighbours of one kind make one bar. */
function codeShapes(
  { middleMm, rowMm }: CollarGeometry,
  { fromDeg, toDeg }: CollarPiece,
  xOf: (azimuthDeg: number) => number,
  top: number,
): SheetShape[] {
  const ends = [fromDeg];
  for (let k = 1; k < COLLAR_STEPS; k++) {
    const at = -180 + k * STEP_DEG;
    const turns = isUpperDark(at - STEP_DEG / 2) !== isUpperDark(at + STEP_DEG / 2);
    if (turns && at > fromDeg && at < toDeg) ends.push(at);
  }
  ends.push(toDeg);
  return ends.slice(1).map((end, k): SheetShape => {
    const begin = ends[k] as number;
    return {
      kind: 'rect',
      leftMm: xOf(begin),
      topMm: top + (isUpperDark((begin + end) / 2) ? EDGE_MM : middleMm),
      widthMm: xOf(end) - xOf(begin),
      heightMm: rowMm,
      fill: BLACK,
    };
  });
}

/** Ticks and hours along the lower edge: the mark, the hours, and a point at each eighth of a turn. */
function hourShapes(
  { fromDeg, toDeg }: CollarPiece,
  xOf: (azimuthDeg: number) => number,
  foot: number,
  sizeMm: number,
  words: CollarWords,
): SheetShape[] {
  const shapes: SheetShape[] = [];
  for (let azimuth = Math.ceil(fromDeg / 15) * 15; azimuth < toDeg; azimuth += 15) {
    const x = xOf(azimuth);
    const quarter = azimuth % 90 === 0;
    // The strip's own end is the line at 12 o'clock.
    if (azimuth % 45 === 0 && azimuth !== -180) {
      shapes.push(point(x, foot, azimuth === 0 ? 5.2 : quarter ? 4 : 1.8));
    }
    if (azimuth === 0) shapes.push(writing(words.mark, [x + 1.6, foot - 1.6], sizeMm));
    else if (azimuth % 30 === 0) {
      const hour = String(clockOfAzimuth(azimuth));
      const place: PointMm = [quarter ? x + 1.6 : x, foot - 1.9];
      shapes.push(writing(hour, place, 3.6, { anchor: quarter ? 'start' : 'middle' }));
    }
  }
  return shapes;
}

function point(x: number, foot: number, heightMm: number): SheetShape {
  return {
    kind: 'polygon',
    fill: INK,
    pointsMm: [
      [x - 0.9, foot],
      [x, foot - heightMm],
      [x + 0.9, foot],
    ],
  };
}

function frame(left: number, top: number, right: number, foot: number): SheetShape {
  return {
    kind: 'line',
    widthMm: LINE_MM,
    ink: INK,
    pointsMm: [
      [left, top],
      [right, top],
      [right, foot],
      [left, foot],
      [left, top],
    ],
  };
}

function line(fromMm: PointMm, toMm: PointMm): SheetShape {
  return { kind: 'line', widthMm: LINE_MM, ink: INK, pointsMm: [fromMm, toMm] };
}

function writing(
  words: string,
  atMm: PointMm,
  sizeMm: number,
  { anchor = 'start', face = 'text', ink = INK }: Partial<Extract<SheetShape, { kind: 'text' }>> = {},
): SheetShape {
  return { kind: 'text', words, atMm, anchor, sizeMm, face, ink };
}
