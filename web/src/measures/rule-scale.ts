import type { PhotoReport } from '../../../core/report.ts';
import type { Measure } from './reading.ts';

/** What a graduated rule shows: its ends, the place of the number and its plus-minus. */
export interface RuleScale {
  readonly from: number;
  readonly to: number;
  readonly step: number;
  readonly value: number;
  readonly plusMinus: number;
  readonly before: number | null;
}

/** Lopsidedness beyond this many % is drawn at the end of its rule. */
const LEAN_END = 30;

/** Only the measures with a plus-minus and fixed ends have a rule; `null` for the others and for no number. */
export function ruleScaleOf(
  report: PhotoReport,
  before: PhotoReport | null,
  measure: Measure,
): RuleScale | null {
  if (measure === 'roundness' || measure === 'symmetry') {
    const score = report[measure];
    if (!score) return null;
    return {
      from: 0,
      to: 100,
      step: 10,
      value: score.score,
      plusMinus: score.plusMinus,
      before: before?.[measure]?.score ?? null,
    };
  }
  if (measure !== 'lopsidedness' || !report.lopsidedness) return null;
  const hold = (percent: number) => Math.min(Math.max(percent, -LEAN_END), LEAN_END);
  const earlier = before?.lopsidedness?.percent;
  return {
    from: -LEAN_END,
    to: LEAN_END,
    step: 5,
    value: hold(report.lopsidedness.percent),
    plusMinus: report.lopsidedness.plusMinus,
    before: earlier === undefined ? null : hold(earlier),
  };
}

/** Share of the way along the rule, 0–1, held at the ends. */
export function along(scale: RuleScale, value: number): number {
  return Math.min(Math.max((value - scale.from) / (scale.to - scale.from), 0), 1);
}
