import type { PhotoReport } from '../../../core/report.ts';
import { clockWords } from '../words/plant-words.ts';

type Gaps = NonNullable<PhotoReport['gaps']>;

/** Neighbouring hours of the clock where the canopy is thin, from the first to the last clockwise. */
export interface ThinRun {
  readonly fromClock: number;
  readonly toClock: number;
  /** The largest gap among its hours, 0–1. */
  readonly gapFraction: number;
}

/** The thin hours joined where they touch, over 12 o’clock too. */
export function thinRuns({ sectors }: Pick<Gaps, 'sectors'>): ThinRun[] {
  const thin = new Map(sectors.filter(({ isThin }) => isThin).map((one) => [one.clock, one.gapFraction]));
  if (thin.size === 0) return [];
  // Begins after an hour that is not thin, so that no run is cut in two at 12.
  const hours = Array.from({ length: 12 }, (_, at) => at + 1);
  const gap = hours.find((hour) => !thin.has(hour)) ?? 0;
  const runs: ThinRun[] = [];
  let isOpen = false;
  for (let step = 1; step <= 12; step++) {
    const clock = ((gap + step - 1) % 12) + 1;
    const gapFraction = thin.get(clock);
    const last = runs.at(-1);
    if (gapFraction === undefined) isOpen = false;
    else if (isOpen && last) {
      runs[runs.length - 1] = {
        ...last,
        toClock: clock,
        gapFraction: Math.max(last.gapFraction, gapFraction),
      };
    } else {
      runs.push({ fromClock: clock, toClock: clock, gapFraction });
      isOpen = true;
    }
  }
  return runs;
}

/** "2 o’clock", "2 to 4 o’clock". */
export function clockRunWords({ fromClock, toClock }: ThinRun): string {
  return fromClock === toClock ? clockWords(fromClock) : `${fromClock} to ${clockWords(toClock)}`;
}
