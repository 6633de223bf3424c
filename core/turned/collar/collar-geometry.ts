import { expectation } from '../../errors/expect.ts';
import type { SheetPaper } from '../../stand/known-stand.ts';
import { PAPER_SIZES, SHEET_MARGIN_MM } from '../../stand/sheet/sheet-geometry.ts';
import { COLLAR_CODE, COLLAR_STEPS } from './collar-code.ts';

/** Rims that a collar is made for, mm. */
export const COLLAR_RIMS = { leastMm: 60, mostMm: 200 } as const;

/** Height of one of the two code rows ÷ rim diameter: a step is then 1.3 times as high as it is wide. */
export const ROW_SHARE = 0.065;
/** Bare paper above the code, and the band with the hours below it, mm. */
export const EDGE_MM = 2;
export const HOURS_MM = 6;
/** What goes under the next piece when it is glued, mm. */
export const TAB_MM = 14;

/** One piece of the strip as it is cut out. Azimuths in degrees from the mark, to the right on the paper. */
export interface CollarPiece {
  readonly fromDeg: number;
  readonly toDeg: number;
  /** Without its tab. */
  readonly lengthMm: number;
}

/** The strip that goes round the pot. */
export interface CollarGeometry {
  readonly rimMm: number;
  /** Once round the rim. */
  readonly lengthMm: number;
  readonly heightMm: number;
  readonly rowMm: number;
  /** Width of one step of the code. */
  readonly stepMm: number;
  /** From the strip's upper edge to the line between the two rows. */
  readonly middleMm: number;
  /** From azimuth −180 on. */
  readonly pieces: readonly CollarPiece[];
  /** Paper, laid on its side. */
  readonly pageMm: { readonly widthMm: number; readonly heightMm: number };
}

/** Joins between pieces are looked for here only: clear of the mark, the hours and the eighths. */
const CUTS_DEG = [-165, -105, -75, -15, 15, 75, 105, 165] as const;

/**
 * The turn collar for one pot.
 *
 * @param rimMm outer diameter of the pot's rim, mm
 * @param paper laid on its side; the strip is cut into as few pieces as fit, closed opposite the mark
 *
 * Errors: a `RangeError` for a rim outside `COLLAR_RIMS`.
 *
 * Example: a rim of 130 mm needs a strip of 408.4 mm, in two pieces on A4.
 */
export function collarGeometry(rimMm: number, paper: SheetPaper): CollarGeometry {
  const { leastMm, mostMm } = COLLAR_RIMS;
  if (!(rimMm >= leastMm && rimMm <= mostMm)) {
    throw new RangeError(expectation(`${leastMm} to ${mostMm}`, 'rimMm', rimMm));
  }
  const { widthMm, heightMm } = PAPER_SIZES[paper];
  const lengthMm = Math.PI * rimMm;
  const rowMm = ROW_SHARE * rimMm;
  return {
    rimMm,
    lengthMm,
    heightMm: EDGE_MM + 2 * rowMm + HOURS_MM,
    rowMm,
    stepMm: lengthMm / COLLAR_STEPS,
    middleMm: EDGE_MM + rowMm,
    pieces: piecesOf(lengthMm, heightMm - 2 * SHEET_MARGIN_MM - TAB_MM),
    pageMm: { widthMm: heightMm, heightMm: widthMm },
  };
}

/** Whether the upper row is dark in the step at a strip's azimuth. */
export function isUpperDark(azimuthDeg: number): boolean {
  const step = Math.floor(((((azimuthDeg + 180) % 360) + 360) % 360) / (360 / COLLAR_STEPS));
  return COLLAR_CODE[step] === 1;
}

/** As few pieces as fit, of those the ones whose longest is shortest. */
function piecesOf(lengthMm: number, mostMm: number): CollarPiece[] {
  for (let count = 1; ; count++) {
    const fits = choices(CUTS_DEG, count - 1)
      .map((cuts) => piecesBetween([-180, ...cuts, 180], lengthMm))
      .filter((pieces) => longestOf(pieces) <= mostMm)
      .sort((one, other) => longestOf(one) - longestOf(other));
    if (fits[0] !== undefined) return fits[0];
  }
}

function piecesBetween(ends: readonly number[], lengthMm: number): CollarPiece[] {
  return ends.slice(1).map((toDeg, k) => {
    const fromDeg = ends[k] as number;
    return { fromDeg, toDeg, lengthMm: ((toDeg - fromDeg) / 360) * lengthMm };
  });
}

function longestOf(pieces: readonly CollarPiece[]): number {
  return Math.max(...pieces.map((piece) => piece.lengthMm));
}

/** All ways to take `count` of a list, in its order. */
function choices(list: readonly number[], count: number): number[][] {
  if (count === 0) return [[]];
  return list.flatMap((first, k) => choices(list.slice(k + 1), count - 1).map((rest) => [first, ...rest]));
}
