import type { Evidence } from '../../../core/canopy/evidence.ts';
import type { Mask } from '../../../core/raster/raster.ts';

/** Pixels that are more likely inside than not. */
export function masked({ width, height, logOdds }: Evidence): Mask {
  return { width, height, data: Uint8Array.from(logOdds, (odds) => (odds > 0 ? 1 : 0)) };
}

/** Chance that a pixel inside has higher odds than one outside (area under the receiver's operating curve), to 1/20. */
export function areaUnderCurve({ logOdds }: Evidence, truth: Mask): number {
  const counts = new Map<number, [outside: number, inside: number]>();
  logOdds.forEach((odds, i) => {
    const step = Math.round(20 * odds);
    const here = counts.get(step) ?? [0, 0];
    here[truth.data[i] as 0 | 1]++;
    counts.set(step, here);
  });
  let [below, pairs, inside] = [0, 0, 0];
  for (const [, [outsideHere, insideHere]] of [...counts].sort(([one], [other]) => one - other)) {
    pairs += insideHere * (below + outsideHere / 2);
    below += outsideHere;
    inside += insideHere;
  }
  return pairs / (below * inside);
}
