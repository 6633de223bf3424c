import type { SheetPaper } from '../known-stand.ts';
import { RING_EDGES, RING_UNIT_MM } from './ring-kinds.ts';
import { type PlacedMark, type PointMm, type SheetGeometry, sheetGeometry } from './sheet-geometry.ts';
import { SHEET_WORDS, type SheetWords } from './sheet-words.ts';

/** Ink from 0, black, to 1, bare paper, in the display's own steps (sRGB), as printers are fed. */
export type Grey = number;

export type SheetShape =
  | { readonly kind: 'circle'; readonly centreMm: PointMm; readonly radiusMm: number; readonly fill: Grey }
  | {
      readonly kind: 'rect';
      readonly leftMm: number;
      readonly topMm: number;
      readonly widthMm: number;
      readonly heightMm: number;
      readonly fill: Grey;
    }
  | {
      readonly kind: 'line';
      readonly pointsMm: readonly PointMm[];
      readonly widthMm: number;
      readonly ink: Grey;
    }
  | { readonly kind: 'polygon'; readonly pointsMm: readonly PointMm[]; readonly fill: Grey }
  | {
      readonly kind: 'text';
      readonly words: string;
      /** Where the writing's foot line begins, or its middle. */
      readonly atMm: PointMm;
      readonly anchor: 'start' | 'middle';
      /** Height of the type (em), mm. */
      readonly sizeMm: number;
      readonly face: 'name' | 'text';
      readonly ink: Grey;
    };

/** The sheet as a list of shapes, later ones on top, for any writer of pictures. Mm on the paper. */
export interface SheetDrawing {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly shapes: readonly SheetShape[];
}

export const INK = 0.1;
export const SOFT_INK = 0.3;
export const BLACK = 0;
const PAPER = 1;

/**
 * Everything printed on the stand sheet.
 *
 * Notes: rings are drawn as full circles, dark and light in turn. Line ends are square: a line is as long as its points
 * are apart.
 */
export function sheetDrawing(paper: SheetPaper, words: SheetWords = SHEET_WORDS): SheetDrawing {
  const geometry = sheetGeometry(paper);
  return {
    widthMm: geometry.widthMm,
    heightMm: geometry.heightMm,
    shapes: [
      ...geometry.marks.flatMap(ringShapes),
      ...arrowShapes(geometry, words),
      ...headShapes(geometry, words),
      ...greyShapes(geometry, words),
      ...checkLineShapes(geometry, words),
    ],
  };
}

function ringShapes({ kind, centreMm }: PlacedMark): SheetShape[] {
  return RING_EDGES[kind].toReversed().map((edge, k) => ({
    kind: 'circle',
    centreMm,
    radiusMm: edge * RING_UNIT_MM,
    fill: k % 2 === 0 ? BLACK : PAPER,
  }));
}

function arrowShapes({ arrow }: SheetGeometry, words: SheetWords): SheetShape[] {
  const [x, tip] = arrow.tipMm;
  const tail = arrow.tailMm[1];
  const [shaft, head, headHeight] = [3.5, 13, 20];
  return [
    {
      kind: 'polygon',
      fill: INK,
      pointsMm: [
        [x, tip],
        [x + head, tip + headHeight],
        [x + shaft, tip + headHeight],
        [x + shaft, tail - 7],
        [x - shaft, tail - 7],
        [x - shaft, tip + headHeight],
        [x - head, tip + headHeight],
      ],
    },
    {
      kind: 'text',
      words: words.light,
      atMm: [x, tail],
      anchor: 'middle',
      sizeMm: 6,
      face: 'text',
      ink: INK,
    },
  ];
}

/** The sign, the sheet's name and what to do with it. */
function headShapes({ paper }: SheetGeometry, words: SheetWords): SheetShape[] {
  const left = 8.5;
  const foot = 95;
  const steps = words.steps.map(
    (step, k): SheetShape => ({
      kind: 'text',
      words: step,
      atMm: [left, foot + 11 + 6.4 * k],
      anchor: 'start',
      sizeMm: 4.15,
      face: 'text',
      ink: INK,
    }),
  );
  return [
    ...signShapes([left + 4.2, foot - 2.2]),
    {
      kind: 'text',
      words: words.name,
      atMm: [left + 12, foot],
      anchor: 'start',
      sizeMm: 9,
      face: 'name',
      ink: INK,
    },
    {
      kind: 'text',
      words: `${words.title}, ${paper}`,
      atMm: [left + 60, foot],
      anchor: 'start',
      sizeMm: 5,
      face: 'text',
      ink: SOFT_INK,
    },
    ...steps,
  ];
}

/** The sign: the ball, and one arc outside it. */
export function signShapes(centreMm: PointMm): SheetShape[] {
  return [
    { kind: 'line', pointsMm: arc(centreMm, 3, 0, 360), widthMm: 1.1, ink: INK },
    { kind: 'line', pointsMm: arc(centreMm, 5, -75, -15), widthMm: 1.1, ink: INK },
  ];
}

function arc([x, y]: PointMm, radiusMm: number, fromDeg: number, toDeg: number): PointMm[] {
  const steps = Math.ceil(Math.abs(toDeg - fromDeg) / 6);
  return Array.from({ length: steps + 1 }, (_, k) => {
    const turn = ((fromDeg + ((toDeg - fromDeg) * k) / steps) * Math.PI) / 180;
    return [x + radiusMm * Math.cos(turn), y + radiusMm * Math.sin(turn)];
  });
}

function greyShapes({ greys }: SheetGeometry, words: SheetWords): SheetShape[] {
  const foot = (greys[0]?.topMm ?? 0) + (greys[0]?.heightMm ?? 0);
  const shapes = greys.flatMap((patch): SheetShape[] => [
    {
      kind: 'rect',
      leftMm: patch.leftMm,
      topMm: patch.topMm,
      widthMm: patch.widthMm,
      heightMm: patch.heightMm,
      fill: displayStep(patch.nominalReflectance),
    },
    caption(`${Math.round(100 * patch.nominalReflectance)} %`, [patch.leftMm, foot + 4.6]),
  ]);
  return [...shapes, caption(words.greys, [greys[0]?.leftMm ?? 0, foot + 9.6])];
}

function caption(words: string, atMm: PointMm): SheetShape {
  return { kind: 'text', words, atMm, anchor: 'start', sizeMm: 3.6, face: 'text', ink: SOFT_INK };
}

/** The line to hold a ruler against, with a tick every so often. */
export function checkLineShapes(
  { checkLine }: Pick<SheetGeometry, 'checkLine'>,
  words: Pick<SheetWords, 'checkLine'>,
): SheetShape[] {
  const [left, y] = checkLine.fromMm;
  const right = checkLine.toMm[0];
  const count = Math.round((right - left) / checkLine.tickEveryMm);
  const ticks = Array.from({ length: count + 1 }, (_, k): SheetShape => {
    const x = left + k * checkLine.tickEveryMm;
    const height = k === 0 || k === count ? 5 : k * 2 === count ? 3.5 : 2;
    return {
      kind: 'line',
      pointsMm: [
        [x, y - height],
        [x, y],
      ],
      widthMm: 0.25,
      ink: INK,
    };
  });
  return [
    {
      kind: 'line',
      pointsMm: [
        [left, y],
        [right, y],
      ],
      widthMm: 0.25,
      ink: INK,
    },
    ...ticks,
    {
      kind: 'text',
      words: words.checkLine,
      atMm: [right + 3, y],
      anchor: 'start',
      sizeMm: 5,
      face: 'text',
      ink: INK,
    },
  ];
}

/** sRGB step of a linear share of light (IEC 61966-2-1). */
function displayStep(share: number): Grey {
  return share <= 0.0031308 ? 12.92 * share : 1.055 * share ** (1 / 2.4) - 0.055;
}
