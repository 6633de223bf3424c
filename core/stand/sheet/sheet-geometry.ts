import type { SheetPaper } from '../known-stand.ts';
import { type RingKind, ringRadiusMm } from './ring-kinds.ts';
import type { MarkId } from './ring-mark.ts';

/** A point on the paper, mm: x right, y down from the top-left corner. */
export type PointMm = readonly [x: number, y: number];

export interface PlacedMark {
  readonly id: MarkId;
  readonly kind: RingKind;
  readonly centreMm: PointMm;
  readonly radiusMm: number;
}

export interface GreyPatch {
  readonly leftMm: number;
  readonly topMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  /** Share of the paper's own light that the patch should give back: nominal, depends on the printer. */
  readonly nominalReflectance: number;
}

/** All that the sheet holds, in mm on the paper. */
export interface SheetGeometry {
  readonly paper: SheetPaper;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly marks: readonly PlacedMark[];
  readonly greys: readonly GreyPatch[];
  /** The line to hold a ruler against: 100 mm between its ends. */
  readonly checkLine: { readonly fromMm: PointMm; readonly toMm: PointMm; readonly tickEveryMm: number };
  /** The arrow that points to the light: it always points to the paper's top edge. */
  readonly arrow: { readonly tailMm: PointMm; readonly tipMm: PointMm };
}

/** Sizes of the paper, mm: A4 by ISO 216; Letter 8.5 × 11 inches (ANSI/ASME Y14.1, size A). */
export const PAPER_SIZES: Readonly<
  Record<SheetPaper, { readonly widthMm: number; readonly heightMm: number }>
> = {
  A4: { widthMm: 210, heightMm: 297 },
  Letter: { widthMm: 215.9, heightMm: 279.4 },
};

/** Nothing is printed nearer than this to the paper's edge, mm: most printers leave out less. */
export const SHEET_MARGIN_MM = 8;

/** Nominal reflectances of the patches as shares of the paper's, lightest first: even steps to the eye. */
export const GREY_STEPS = [0.6, 0.36, 0.18, 0.07] as const;

const PATCH = { widthMm: 26, heightMm: 20, gapMm: 4 };

/** The fifth mark stands in from the right edge, so that it makes no straight row with the corners above and below it. */
const RIGHT_INSET_MM = 52;

/** From the paper's bottom edge to the foot of the strip that holds greys and line: above the lower marks. */
const STRIP_FOOT_MM = 82;

/**
 * Where everything stands on the stand sheet.
 *
 * @param paper A4 or Letter, upright
 * @returns places and sizes, mm
 *
 * Notes: five marks of three kinds. No turn of the paper brings the kinds back onto themselves, also with any one or two
 * marks hidden; of the ten pairs only the two dots at the right are alike from both ends. Each mark keeps one ring's
 * width of white paper about it.
 *
 * Example: on A4 the top-left mark has its centre at (40, 40), radius 32.
 */
export function sheetGeometry(paper: SheetPaper): SheetGeometry {
  const { widthMm, heightMm } = PAPER_SIZES[paper];
  const left = SHEET_MARGIN_MM;
  return {
    paper,
    widthMm,
    heightMm,
    marks: [
      cornerMark('top-left', 'eye', widthMm, heightMm),
      cornerMark('top-right', 'dot', widthMm, heightMm),
      {
        ...cornerMark('right', 'dot', widthMm, heightMm),
        centreMm: [widthMm - RIGHT_INSET_MM, 0.43 * heightMm],
      },
      cornerMark('bottom-left', 'dot', widthMm, heightMm),
      cornerMark('bottom-right', 'disc', widthMm, heightMm),
    ],
    greys: GREY_STEPS.map((nominalReflectance, k) => ({
      leftMm: left + k * (PATCH.widthMm + PATCH.gapMm),
      topMm: heightMm - STRIP_FOOT_MM - 42,
      widthMm: PATCH.widthMm,
      heightMm: PATCH.heightMm,
      nominalReflectance,
    })),
    checkLine: {
      fromMm: [left + 0.5, heightMm - STRIP_FOOT_MM],
      toMm: [left + 100.5, heightMm - STRIP_FOOT_MM],
      tickEveryMm: 10,
    },
    arrow: { tailMm: [widthMm / 2 + 8, 64], tipMm: [widthMm / 2 + 8, 12] },
  };
}

/** A mark as far out in its corner as the margin lets it; `right` is placed by the caller. */
function cornerMark(id: MarkId, kind: RingKind, widthMm: number, heightMm: number): PlacedMark {
  const radiusMm = ringRadiusMm(kind);
  const inset = SHEET_MARGIN_MM + radiusMm;
  const x = id.endsWith('left') ? inset : widthMm - inset;
  const y = id.startsWith('top') ? inset : heightMm - inset;
  return { id, kind, centreMm: [x, y], radiusMm };
}
