import { changeSince } from '../trend/change-since.ts';
import type { Gaps } from './gaps.ts';

/**
 * What a clean-up did for the light at the base.
 *
 * @param before, @param after gaps of the same side before and after the leaf was cleared
 *
 * Example: 10 % open before and 25 % after, each ± 4: "More light reaches the base: 25 % of the lowest third is open, 10 % before."
 */
export function lightToBaseWords(before: Gaps, after: Gaps): string {
  const { direction } = changeSince(
    { value: before.openBase, plusMinus: before.openBasePlusMinus },
    { value: after.openBase, plusMinus: after.openBasePlusMinus },
  );
  const shares = `${percent(after.openBase)} of the lowest third is open, ${percent(before.openBase)} before.`;
  switch (direction) {
    case 'up':
      return `More light reaches the base: ${shares}`;
    case 'down':
      return `Less light reaches the base: ${shares}`;
    case 'none':
      return `No change in the light at the base that a photo can tell: ${shares}`;
  }
}

/**
 * How tight a plant is beside the grower's earlier ones.
 *
 * @param gaps of the plant
 * @param earlier tightness of other plants about as long after their last stop, 0–1
 * @returns a sentence; `null` with fewer than three to compare with
 *
 * Example: tighter than 4 of 5.
 */
export function tightnessWords(gaps: Gaps, earlier: readonly number[]): string | null {
  if (earlier.length < LEAST_EARLIER) return null;
  const looser = earlier.filter((one) => one < gaps.tightness - gaps.tightnessPlusMinus).length;
  const tighter = earlier.filter((one) => one > gaps.tightness + gaps.tightnessPlusMinus).length;
  const alike = earlier.length - looser - tighter;
  const others = `your ${earlier.length} earlier plants`;
  return `The canopy fills ${percent(gaps.tightness)} of its ball: tighter than ${looser} of ${others}, about like ${alike}, looser than ${tighter}.`;
}

const LEAST_EARLIER = 3;

function percent(share: number): string {
  return `${Math.round(100 * share)} %`;
}
