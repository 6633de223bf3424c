import type { Cut, StopDepth } from './cut.ts';

/**
 * Cuts in the order of working round the plant.
 *
 * Seen from above with the mark at 6 and the grower before it: from 6 on clockwise, and at each hour from the top down. In one photo: up the left side, over the
 * top and down the right side, from 6 to 6.
 *
 * @param cuts in any order
 * @returns the same cuts, sorted
 */
export function inWorkingOrder(cuts: readonly Cut[]): Cut[] {
  return [...cuts].sort(
    (one, other) => hoursFromSix(one) - hoursFromSix(other) || (other.heightMm ?? 0) - (one.heightMm ?? 0),
  );
}

/** The two passes of working carefully: tips first; look again (or photograph again), then what is to go deeper. */
export function inTwoPasses<Listed extends Pick<Cut, 'stop'>>(
  cuts: readonly Listed[],
): { readonly stop: StopDepth; readonly cuts: Listed[] }[] {
  return (['tip', 'deep'] as const)
    .map((stop) => ({ stop, cuts: cuts.filter((cut) => cut.stop === stop) }))
    .filter((pass) => pass.cuts.length > 0);
}

function hoursFromSix({ clockFromAbove, clockInPhoto }: Cut): number {
  return ((clockFromAbove ?? clockInPhoto ?? 6) + 6) % 12;
}
