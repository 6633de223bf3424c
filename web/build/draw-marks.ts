// Draws the few signs that stand among words and that the shipped typefaces lack, so that a machine without a
// typeface of symbols shows them too: `node --import tsx web/build/draw-marks.ts` writes `web/public/marks.otf`.
import { writeFileSync } from 'node:fs';
import opentype from 'opentype.js';

const UNITS_PER_EM = 1000;
/** A third of the em under the line of writing, as in the typeface that they stand among. */
const DESCENDER = -200;
const ADVANCE = 820;
/** A quarter circle as one cubic curve (Bézier): the handles' length to the radius, from memory. */
const QUARTER = 0.5523;

type Point = readonly [x: number, y: number];

function polygon(points: readonly Point[]): opentype.Path {
  const path = new opentype.Path();
  for (const [k, [x, y]] of points.entries()) {
    if (k === 0) path.moveTo(x, y);
    else path.lineTo(x, y);
  }
  path.close();
  return path;
}

function disc([x, y]: Point, radius: number): opentype.Path {
  const handle = radius * QUARTER;
  const path = new opentype.Path();
  path.moveTo(x + radius, y);
  path.curveTo(x + radius, y + handle, x + handle, y + radius, x, y + radius);
  path.curveTo(x - handle, y + radius, x - radius, y + handle, x - radius, y);
  path.curveTo(x - radius, y - handle, x - handle, y - radius, x, y - radius);
  path.curveTo(x + handle, y - radius, x + radius, y - handle, x + radius, y);
  path.close();
  return path;
}

const MARKS: Readonly<Record<string, opentype.Path>> = {
  '▲': polygon([
    [70, 0],
    [410, 640],
    [750, 0],
  ]),
  '▼': polygon([
    [70, 640],
    [750, 640],
    [410, 0],
  ]),
  '●': disc([410, 320], 280),
  '✓': polygon([
    [80, 300],
    [160, 375],
    [330, 190],
    [660, 660],
    [750, 600],
    [340, 30],
  ]),
  '→': polygon([
    [60, 275],
    [60, 365],
    [575, 365],
    [430, 515],
    [495, 580],
    [755, 320],
    [495, 60],
    [430, 125],
    [575, 275],
  ]),
};

const glyphs = [
  new opentype.Glyph({ name: '.notdef', advanceWidth: ADVANCE, path: new opentype.Path() }),
  ...Object.entries(MARKS).map(([sign, path]) => {
    const unicode = sign.codePointAt(0) as number;
    return new opentype.Glyph({
      name: `uni${unicode.toString(16).toUpperCase()}`,
      unicode,
      advanceWidth: ADVANCE,
      path,
    });
  }),
];
const font = new opentype.Font({
  familyName: 'Rondure Marks',
  styleName: 'Regular',
  unitsPerEm: UNITS_PER_EM,
  ascender: UNITS_PER_EM + DESCENDER,
  descender: DESCENDER,
  glyphs,
});
writeFileSync(new URL('../public/marks.otf', import.meta.url), Buffer.from(font.toArrayBuffer()));
