import type { Day } from '../day/day.ts';

/** One sitting's value. */
export interface TrendPoint {
  readonly day: Day;
  readonly value: number;
  /** 95 % repeatability, in the value's unit; `null` when not known. */
  readonly plusMinus: number | null;
}

/** The trend of one stretch between stops, in the value's unit a week. */
export interface TrendSegment {
  readonly fromDay: Day;
  readonly toDay: Day;
  /** Sittings in it. */
  readonly n: number;
  /** Theil–Sen slope; `null` when there are fewer than two days. */
  readonly slopePerWeek: number | null;
  /** 95 % interval of the slope; `null` for so few sittings that nothing bounds it. */
  readonly interval95: readonly [low: number, high: number] | null;
  /** Two-sided p of the Mann–Kendall test; `null` when not tested. */
  readonly p: number | null;
  /** `null` when no trend can be told. */
  readonly direction: 'rising' | 'falling' | 'no change' | null;
  /** Why the direction is what it is. */
  readonly why: string;
}

export interface Trend {
  /** Oldest first; one more than there are stops between the first and the last sitting. */
  readonly segments: readonly TrendSegment[];
}
