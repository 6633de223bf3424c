import type { StemsOfSitting } from '../../core/stems/match-stems.ts';
import { clockOfAzimuth } from '../../core/turned/clock-of-azimuth.ts';
import type { TurnedReport } from '../../core/turned/measure-turned.ts';
import { sittingCutLines } from './sitting-cuts.ts';

const UNKNOWN = '–';
/** Azimuths in the table; the JSON has them all. */
const STEP_DEG = 45;

/** A turned sitting as readable text, to stand under the table of its views. */
export function sittingTable({ plan, turn, faults, notes }: TurnedReport, placed: StemsOfSitting): string {
  return [
    ...facts(plan),
    ...reach(plan),
    ...sittingCutLines(placed),
    ...(turn === null ? [] : ['', turn.words, turn.why]),
    ...section(
      'Put right first',
      faults.map(({ words }) => words),
    ),
    ...section('Notes', [...notes, ...placed.notes]),
  ].join('\n');
}

function facts({ directions, lopsidedness, hull }: TurnedReport['plan']): string[] {
  const rows = [
    ['directions', String(directions)],
    ['lopsided', lopsidedness === null ? UNKNOWN : lopsidedInWords(lopsidedness)],
    ['ball radius', mm(hull?.radiusMm)],
    ['out of round', outOfRound(hull)],
    ['hull volume', volume(hull)],
    [
      'sphericity',
      hull === null
        ? UNKNOWN
        : `${hull.sphericity.toFixed(3)} (a ball reads ${hull.sphericityOfABall.toFixed(3)})`,
    ],
  ] as const;
  return rows.map(([name, value]) => `${name.padEnd(13)} ${value}`);
}

function lopsidedInWords({
  percent,
  azimuthDeg,
  plusMinus,
  plusMinusDeg,
  even,
}: NonNullable<TurnedReport['plan']['lopsidedness']>): string {
  const size = `${percent.toFixed(1)} ± ${plusMinus.toFixed(1)} %`;
  if (even) return `${size}, even`;
  return `${size} to ${azimuthDeg.toFixed(0)}° ± ${plusMinusDeg.toFixed(0)}° (${clockOfAzimuth(azimuthDeg)} o’clock from above, mark at 6)`;
}

function outOfRound(hull: TurnedReport['plan']['hull']): string {
  if (hull === null) return UNKNOWN;
  if (hull.outOfRoundMm !== null) return mm(hull.outOfRoundMm);
  return hull.outOfRoundPercent === null ? UNKNOWN : `${hull.outOfRoundPercent.toFixed(1)} % of the radius`;
}

function volume(hull: TurnedReport['plan']['hull']): string {
  if (hull?.volumeMl == null || hull.correctedVolumeMl === null) return UNKNOWN;
  return `${hull.volumeMl.toFixed(0)} ml (for a round plant ${hull.correctedVolumeMl.toFixed(0)} ml)`;
}

function reach({ reach }: TurnedReport['plan']): string[] {
  if (reach.length === 0) return [];
  const shown = reach.filter(({ azimuthDeg }) => azimuthDeg % STEP_DEG === 0);
  const cells = shown.map((one) => [
    `${one.azimuthDeg}°`,
    one.mm === null ? `${one.percent.toFixed(0)} %` : `${one.mm.toFixed(0)} mm`,
    `± ${(one.plusMinusMm ?? one.plusMinusPercent).toFixed(0)}`,
  ]);
  const widths = cells.map((column) => Math.max(...column.map((text) => text.length)));
  const heads = ['azimuth', 'reach', ''];
  return [
    '',
    ...heads.map((head, row) =>
      [head.padEnd(8), ...cells.map((column, at) => (column[row] ?? '').padStart(widths[at] ?? 0))]
        .join('  ')
        .trimEnd(),
    ),
  ];
}

function section(head: string, lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : ['', `${head}:`, ...lines.map((line) => `- ${line}`)];
}

function mm(length: number | null | undefined): string {
  return length === null || length === undefined ? UNKNOWN : `${length.toFixed(0)} mm`;
}
