import type { PhotoReport } from '../../../core/report.ts';

export const MEASURES = [
  'roundness',
  'symmetry',
  'lopsidedness',
  'fill',
  'size',
  'outOfRound',
  'bloom',
] as const;
export type Measure = (typeof MEASURES)[number];

/** One number as the screen shows it; `null` value when the report does not know it. */
export interface Reading {
  readonly value: number | null;
  readonly plusMinus: number | null;
  /** "of 100", "%" or "mm". */
  readonly unit: string;
  /** What else belongs to the number, for example the side it leans to. */
  readonly aside: string | null;
}

/** Takes one measure out of a photo's report. Size is the ball's diameter in mm. */
export function readMeasure(report: PhotoReport, measure: Measure): Reading {
  switch (measure) {
    case 'roundness':
    case 'symmetry':
      return {
        value: report[measure]?.score ?? null,
        plusMinus: report[measure]?.plusMinus ?? null,
        unit: 'of 100',
        aside: null,
      };
    case 'lopsidedness':
      return {
        value: report.lopsidedness ? Math.abs(report.lopsidedness.percent) : null,
        plusMinus: report.lopsidedness?.plusMinus ?? null,
        unit: '%',
        aside: report.lopsidedness ? LEAN_WORDS[report.lopsidedness.side] : null,
      };
    case 'fill':
      return {
        value: report.canopy ? report.canopy.solidity * 100 : null,
        plusMinus: null,
        unit: '%',
        aside: report.canopy ? `gaps ${(report.canopy.gapFraction * 100).toFixed(1)} %` : null,
      };
    case 'size':
      return {
        value: report.ball?.radiusMm ? report.ball.radiusMm * 2 : null,
        plusMinus: report.ball?.radiusPlusMinusMm ? report.ball.radiusPlusMinusMm * 2 : null,
        unit: 'mm',
        aside: canopySizeWords(report),
      };
    case 'bloom':
      return {
        value: report.flower ? report.flower.share * 100 : null,
        plusMinus: report.flower ? report.flower.plusMinus * 100 : null,
        unit: '%',
        aside: null,
      };
    case 'outOfRound':
      return { value: report.ball?.outOfRoundMm ?? null, plusMinus: null, unit: 'mm', aside: null };
  }
}

/** "84", "6.1": whole numbers where a tenth would promise too much. */
export function numberWords(value: number, measure: Measure): string {
  const tenths = measure === 'lopsidedness' || measure === 'outOfRound';
  return value.toFixed(tenths && value < 10 ? 1 : 0);
}

/** "±2", "±1.6"; null when the plus-minus is not known. Never rounded down to ±0. */
export function plusMinusWords(plusMinus: number | null): string | null {
  if (plusMinus === null) return null;
  return `±${plusMinus < 10 ? Math.max(plusMinus, 0.1).toFixed(1).replace(/\.0$/, '') : plusMinus.toFixed(0)}`;
}

const LEAN_WORDS = { left: 'to the left', right: 'to the right', even: 'even' } as const;

function canopySizeWords(report: PhotoReport): string | null {
  const { widthMm = null, heightMm = null } = report.canopy ?? {};
  if (widthMm === null || heightMm === null) return null;
  return `canopy ${widthMm.toFixed(0)} mm wide, ${heightMm.toFixed(0)} mm high`;
}
