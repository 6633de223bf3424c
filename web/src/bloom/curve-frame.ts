import { addDays, type Day, day, daysBetween } from '../../../core/day/day.ts';
import { isShowDrawn } from '../trend/trend-marks.ts';
import type { ToldBloom } from './bloom-words.ts';

/** What part of the calendar and of the canopy the curve is drawn over. */
export interface CurveFrame {
  readonly from: Day;
  readonly to: Day;
  /** The highest share, %. */
  readonly top: number;
  /** Height of a row of the days of the bloom below the ground line, in % of canopy as drawn. */
  readonly rowHeight: number;
  readonly ticks: readonly number[];
  /** The show stands at the right edge. */
  readonly isShowAtEnd: boolean;
}

/** Weeks without colour that are still drawn before the first. */
const BEFORE_DAYS = 28;
/** A row of numbered marks, as a part of the height above the ground. */
const ROW_SHARE = 0.115;
/** A small bloom is not drawn as a mountain, %. */
const LEAST_TOP = 8;
const STEPS = [2, 5, 10, 20, 25];
const MOST_TICKS = 5;

/** From a month before the first colour to the end of the curve, or to the show where it stands near. */
export function curveFrame(bloom: ToldBloom, showDay: string | null, today: Day): CurveFrame {
  const firstColour = day(bloom.firstColour.from90);
  const days = [...bloom.readings, ...bloom.curve].map((one) => day(one.day)).sort();
  const first = days[0] ?? firstColour;
  const from = latest(
    first,
    addDays(earliest(firstColour, day(bloom.readings.at(-1)?.day ?? first)), -BEFORE_DAYS),
  );
  const end = latest(days.at(-1) ?? today, today);
  const show = showDay !== null && isShowDrawn(day(showDay), from, end) ? day(showDay) : null;
  const to = show === null ? end : latest(end, show);
  const highest = Math.max(
    ...bloom.curve.map(({ high90 }) => high90),
    ...bloom.readings
      .filter((one) => one.day >= from)
      .map(({ share, plusMinus }) => share + (plusMinus ?? 0)),
  );
  const top = Math.min(Math.max(105 * highest, LEAST_TOP), 100);
  const step = STEPS.find((one) => top / one <= MOST_TICKS) ?? 25;
  return {
    from,
    to,
    top,
    rowHeight: ROW_SHARE * top,
    ticks: Array.from({ length: Math.floor(top / step) + 1 }, (_, at) => at * step),
    isShowAtEnd: show !== null && daysBetween(show, to) < daysBetween(from, to) / 12,
  };
}

/** The curve's share on a day, between its points; at its ends theirs. */
export function shareOn(curve: ToldBloom['curve'], on: string): number {
  const after = curve.findIndex((point) => point.day >= on);
  const next = curve[after < 0 ? curve.length - 1 : after];
  const before = curve[after - 1];
  if (!next) return 0;
  if (after <= 0 || !before) return next.share;
  const days = daysBetween(day(before.day), day(next.day));
  const along = daysBetween(day(before.day), day(on)) / days;
  return before.share + along * (next.share - before.share);
}

function latest(one: Day, other: Day): Day {
  return one > other ? one : other;
}

function earliest(one: Day, other: Day): Day {
  return one < other ? one : other;
}
