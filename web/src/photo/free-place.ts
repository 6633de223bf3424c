import type { Point } from './points.ts';

export interface Plate {
  readonly at: Point;
  readonly size: { readonly width: number; readonly height: number };
}

/** Of a plate's height, between plates one over the other. */
const GAP = 1.12;
const MOST_STEPS = 6;

/** The place next to `at`, straight up or down, where a plate overlaps none that is taken; `at` itself where none is near. */
export function freePlace({ at, size }: Plate, taken: readonly Plate[]): Point {
  const [x, y] = at;
  for (let step = 0; step <= MOST_STEPS; step++) {
    for (const way of step === 0 ? [0] : [step, -step]) {
      const place: Point = [x, y + way * GAP * size.height];
      if (isFree({ at: place, size }, taken)) return place;
    }
  }
  return at;
}

/** Whether a plate overlaps none of those taken. */
export function isFree(plate: Plate, taken: readonly Plate[]): boolean {
  return taken.every((other) => !overlap(plate, other));
}

function overlap(one: Plate, other: Plate): boolean {
  return (
    Math.abs(one.at[0] - other.at[0]) < (one.size.width + other.size.width) / 2 &&
    Math.abs(one.at[1] - other.at[1]) < (one.size.height + other.size.height) / 2
  );
}
