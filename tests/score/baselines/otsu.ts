const BINS = 256;

/**
 * The split of a histogram into a lower and an upper class with the greatest variance between them.
 *
 * @param counts how often each bin occurs, lowest first
 * @returns the first bin of the upper class, 1 to `counts.length - 1`; on a plateau the lowest of the best; 0 when all
 *   lies in one bin
 *
 * Reference: Otsu (1979), A threshold selection method from gray-level histograms, IEEE Trans. SMC 9(1), 62–66.
 * Example: `otsuSplit([8, 7, 2, 6, 9, 4])` is 3.
 */
export function otsuSplit(counts: readonly number[]): number {
  const total = counts.reduce((sum, count) => sum + count, 0);
  const moment = counts.reduce((sum, count, bin) => sum + bin * count, 0);
  let [below, momentBelow, best, split] = [0, 0, 0, 0];
  for (let first = 1; first < counts.length; first++) {
    below += counts[first - 1] as number;
    momentBelow += (first - 1) * (counts[first - 1] as number);
    if (below === 0 || below === total) continue;
    const apart = momentBelow / below - (moment - momentBelow) / (total - below);
    const between = (below / total) * (1 - below / total) * apart ** 2;
    // A plateau's rounding must not move the split.
    if (between > best * (1 + 1e-12)) [best, split] = [between, first];
  }
  return split;
}

/** Otsu's threshold of any numbers, over 256 even bins from the least to the greatest; the upper class is at or above it. */
export function otsuThreshold(values: Float32Array): number {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const value of values) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  const binWidth = (high - low) / BINS || 1;
  const counts = new Array<number>(BINS).fill(0);
  for (const value of values) {
    const bin = Math.min(BINS - 1, Math.floor((value - low) / binWidth));
    counts[bin] = (counts[bin] as number) + 1;
  }
  return low + otsuSplit(counts) * binWidth;
}
