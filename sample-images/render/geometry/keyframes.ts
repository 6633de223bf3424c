/** A value over the weeks: pairs of week and value, in order of week, held level outside them. */
export type Keyframes = readonly (readonly [week: number, value: number])[];

/** The value at `week`, joined by straight lines. */
export function valueAt(frames: Keyframes, week: number): number {
  let before = frames[0];
  if (!before) return 0;
  for (const frame of frames) {
    if (frame[0] > week) {
      if (week <= before[0]) return before[1];
      return before[1] + ((frame[1] - before[1]) * (week - before[0])) / (frame[0] - before[0]);
    }
    before = frame;
  }
  return before[1];
}

/** 0 below `low`, 1 above `high`, 3t² − 2t³ between. */
export function smoothStep(low: number, high: number, value: number): number {
  const t = Math.min(1, Math.max(0, (value - low) / (high - low)));
  return t * t * (3 - 2 * t);
}
