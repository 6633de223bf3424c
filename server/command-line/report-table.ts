import type { PhotoReport } from '../../core/report.ts';

/** A column of the readable table. */
interface Column {
  readonly head: string;
  readonly cell: (report: PhotoReport) => string;
  readonly right?: true;
}

const UNKNOWN = '–';

const COLUMNS: readonly Column[] = [
  { head: 'photo', cell: ({ photo }) => photo },
  { head: 'turn', cell: ({ turnDeg }) => (turnDeg === null ? UNKNOWN : `${turnDeg}°`), right: true },
  { head: 'status', cell: ({ status }) => status },
  { head: 'sure', cell: sure, right: true },
  { head: 'unsure zones', cell: unsureZones, right: true },
  { head: 'roundness', cell: ({ roundness }) => score(roundness), right: true },
  { head: 'symmetry', cell: ({ symmetry }) => score(symmetry), right: true },
  { head: 'lopsided %', cell: lopsided, right: true },
  { head: 'scale', cell: ({ scale }) => (scale === null ? UNKNOWN : scale.from), right: true },
  { head: 'ball radius', cell: ({ ball }) => length(ball?.radiusMm, ball?.radiusPx), right: true },
  { head: 'out of round', cell: ({ ball }) => length(ball?.outOfRoundMm, ball?.outOfRoundPx), right: true },
  { head: 'long stems', cell: longStems, right: true },
];

/** Reports as an aligned table; under it what the photos need and what is to know about the figures. */
export function reportTable(reports: readonly PhotoReport[]): string {
  const rows = [COLUMNS.map(({ head }) => head), ...reports.map(cells)];
  const widths = COLUMNS.map((_, at) => Math.max(...rows.map((row) => row[at]?.length ?? 0)));
  const lines = rows.map((row) =>
    row
      .map((text, at) => (COLUMNS[at]?.right ? text.padStart(widths[at] ?? 0) : text.padEnd(widths[at] ?? 0)))
      .join('  ')
      .trimEnd(),
  );
  const remarks = reports.flatMap((report) => remarksOn(report).map((text) => `${report.photo}: ${text}`));
  return [...lines, ...(remarks.length > 0 ? ['', ...remarks] : [])].join('\n');
}

/** What to do, how the camera stood, and what is to know; the notes may have told of the camera already. */
function remarksOn({ hint, frame, notes }: PhotoReport): string[] {
  const remarks = [hint, frame?.words ?? null, ...notes].filter((text) => text !== null);
  return [...new Set(remarks)];
}

function cells(report: PhotoReport): string[] {
  return COLUMNS.map(({ cell }) => cell(report));
}

function sure({ confidence }: PhotoReport): string {
  return confidence === null ? UNKNOWN : `${Math.round(100 * confidence)} %`;
}

function unsureZones({ confidence, unsure }: PhotoReport): string {
  if (confidence === null) return UNKNOWN;
  return unsure.length === 0 ? 'none' : String(unsure.length);
}

function score(value: PhotoReport['roundness']): string {
  return value === null ? UNKNOWN : `${value.score.toFixed(1)} ± ${value.plusMinus.toFixed(1)}`;
}

function lopsided({ lopsidedness }: PhotoReport): string {
  if (lopsidedness === null) return UNKNOWN;
  const { percent, plusMinus, side } = lopsidedness;
  return `${side} ${Math.abs(percent).toFixed(1)} ± ${plusMinus.toFixed(1)}`;
}

function length(mm: number | null | undefined, px: number | undefined): string {
  if (mm !== null && mm !== undefined) return `${mm.toFixed(0)} mm`;
  return px === undefined ? UNKNOWN : `${px.toFixed(0)} px`;
}

function longStems({ longStems, status }: PhotoReport): string {
  if (status !== 'measured') return UNKNOWN;
  if (longStems.length === 0) return 'none';
  return longStems
    .map(({ clock, excessMm, excessPx }) => `${clock}h ${length(excessMm, excessPx)}`)
    .join(', ');
}
