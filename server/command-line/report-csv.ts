import type { PhotoReport } from '../../core/report.ts';

type Cell = string | number | null | undefined;

const COLUMNS: Readonly<Record<string, (report: PhotoReport) => Cell>> = {
  photo: (report) => report.photo,
  widthPx: (report) => report.widthPx,
  heightPx: (report) => report.heightPx,
  turnDeg: (report) => report.turnDeg,
  status: (report) => report.status,
  confidence: (report) => report.confidence,
  unsureZones: (report) => (report.confidence === null ? null : report.unsure.length),
  unsureAreaPx: (report) =>
    report.confidence === null ? null : report.unsure.reduce((sum, { areaPx }) => sum + areaPx, 0),
  mmPerPx: (report) => report.scale?.mmPerPx,
  scaleFrom: (report) => report.scale?.from,
  frameFrom: (report) => report.frame?.from,
  frameStanding: (report) => report.frame?.standing,
  frameShiftXPx: (report) => report.frame?.shiftPx[0],
  frameShiftYPx: (report) => report.frame?.shiftPx[1],
  frameShiftXMm: (report) => report.frame?.shiftMm?.[0],
  frameShiftYMm: (report) => report.frame?.shiftMm?.[1],
  frameTurnDeg: (report) => report.frame?.turnDeg,
  frameZoom: (report) => report.frame?.zoom,
  canopyAreaPx: (report) => report.canopy?.areaPx,
  canopyWidthMm: (report) => report.canopy?.widthMm,
  canopyHeightMm: (report) => report.canopy?.heightMm,
  solidity: (report) => report.canopy?.solidity,
  gapFraction: (report) => report.canopy?.gapFraction,
  flowerShare: (report) => report.canopy?.flowerShare,
  rimEllipseXPx: (report) => report.axis?.rimEllipse?.centrePx[0],
  rimEllipseYPx: (report) => report.axis?.rimEllipse?.centrePx[1],
  rimHalfWidthPx: (report) => report.axis?.rimEllipse?.halfWidthPx,
  rimHalfHeightPx: (report) => report.axis?.rimEllipse?.halfHeightPx,
  ballRadiusPx: (report) => report.ball?.radiusPx,
  ballRadiusMm: (report) => report.ball?.radiusMm,
  ballRadiusPlusMinusPx: (report) => report.ball?.radiusPlusMinusPx,
  ballRadiusPlusMinusMm: (report) => report.ball?.radiusPlusMinusMm,
  outOfRoundPx: (report) => report.ball?.outOfRoundPx,
  outOfRoundMm: (report) => report.ball?.outOfRoundMm,
  roundness: (report) => report.roundness?.score,
  roundnessPlusMinus: (report) => report.roundness?.plusMinus,
  symmetry: (report) => report.symmetry?.score,
  symmetryPlusMinus: (report) => report.symmetry?.plusMinus,
  lopsidednessPercent: (report) => report.lopsidedness?.percent,
  lopsidednessPlusMinus: (report) => report.lopsidedness?.plusMinus,
  longStems: (report) => (report.status === 'measured' ? report.longStems.length : null),
  maskFile: (report) => report.maskFile,
  hint: (report) => report.hint,
  notes: (report) => report.notes.join(' '),
};

/** Head line of the CSV (RFC 4180). */
export function csvHead(): string {
  return Object.keys(COLUMNS).join(',');
}

/** One report as a CSV line; what is not known is an empty field. */
export function csvLine(report: PhotoReport): string {
  return Object.values(COLUMNS)
    .map((cell) => quoted(cell(report)))
    .join(',');
}

function quoted(cell: Cell): string {
  const text = String(cell ?? '');
  // A spreadsheet takes such a start for a formula, and file names come from anywhere.
  const safe = typeof cell === 'string' && /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return /[",\n\r]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
