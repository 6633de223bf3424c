import type { Stroke } from '../../../core/canopy/stroke.ts';

/** All strokes of one photo and the way they came to be: each entry is a whole list, as it is sent. */
export interface StrokeHistory {
  /** Lists before the present one, the latest last. */
  readonly earlier: readonly (readonly Stroke[])[];
  readonly strokes: readonly Stroke[];
  /** Lists that were taken back, the next to come again first. */
  readonly later: readonly (readonly Stroke[])[];
}

export function startHistory(strokes: readonly Stroke[]): StrokeHistory {
  return { earlier: [], strokes, later: [] };
}

/** Adds strokes as one step; what had been taken back is forgotten. */
export function withStrokes(history: StrokeHistory, added: readonly Stroke[]): StrokeHistory {
  return added.length === 0 ? history : onto(history, [...history.strokes, ...added]);
}

/** Takes every stroke away as one step, which undo brings back. */
export function cleared(history: StrokeHistory): StrokeHistory {
  return history.strokes.length === 0 ? history : onto(history, []);
}

export function undone(history: StrokeHistory): StrokeHistory {
  const { earlier, strokes, later } = history;
  const before = earlier.at(-1);
  return before ? { earlier: earlier.slice(0, -1), strokes: before, later: [strokes, ...later] } : history;
}

export function redone(history: StrokeHistory): StrokeHistory {
  const { earlier, strokes, later } = history;
  const [next, ...rest] = later;
  return next ? { earlier: [...earlier, strokes], strokes: next, later: rest } : history;
}

function onto({ earlier, strokes }: StrokeHistory, next: readonly Stroke[]): StrokeHistory {
  return { earlier: [...earlier, strokes], strokes: next, later: [] };
}
