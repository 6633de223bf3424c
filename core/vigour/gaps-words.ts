import type { Gaps } from './gaps.ts';

/**
 * Where light falls through, in words.
 *
 * Example: "Thin at 3 and 4 o’clock in the photo. 18 % (± 3) of the lowest third is open; the canopy fills 91 % (± 2) of its ball."
 */
export function gapsWords(gaps: Gaps): string {
  const clocks = thinClocks(gaps);
  const thin =
    clocks.length === 0
      ? 'No side is much thinner than the rest.'
      : `Thin at ${listed(clocks)} o’clock in the photo.`;
  return `${thin} ${percent(gaps.openBase, gaps.openBasePlusMinus)} of the lowest third is open; the canopy fills ${percent(gaps.tightness, gaps.tightnessPlusMinus)} of its ball.`;
}

/** Hours of the sectors that are much thinner than the rest. */
export function thinClocks({ sectors }: Gaps): number[] {
  return sectors.filter(({ isThin }) => isThin).map(({ clock }) => clock);
}

function listed(clocks: readonly number[]): string {
  return clocks.length === 1 ? String(clocks[0]) : `${clocks.slice(0, -1).join(', ')} and ${clocks.at(-1)}`;
}

function percent(share: number, plusMinus: number): string {
  return `${Math.round(100 * share)} % (± ${Math.max(1, Math.round(100 * plusMinus))})`;
}
