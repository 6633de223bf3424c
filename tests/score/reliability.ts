/** Ten bins of what was said (a share from 0 to 1) against what was so, pixel by pixel. */
export interface Reliability {
  readonly said: Float64Array;
  readonly so: Float64Array;
  readonly count: Float64Array;
}

export function newReliability(): Reliability {
  return { said: new Float64Array(10), so: new Float64Array(10), count: new Float64Array(10) };
}

export function addPixel({ said, so, count }: Reliability, share: number, isSo: boolean): void {
  const bin = Math.min(9, Math.floor(10 * share));
  said[bin] = (said[bin] as number) + share;
  so[bin] = (so[bin] as number) + Number(isSo);
  count[bin] = (count[bin] as number) + 1;
}

/**
 * The expected calibration error (Guo and others, 2017, "On calibration of modern neural networks"): the mean
 * distance of what was said from what was so, bins weighted by their pixels; and each bin as "said→was".
 */
export function sayReliability({ said, so, count }: Reliability): string {
  const all = count.reduce((sum, n) => sum + n, 0);
  const error = said.reduce((sum, value, bin) => sum + Math.abs(value - (so[bin] as number)), 0) / all;
  const bins = [...count].map((n, bin) =>
    n === 0 ? '–' : `${((said[bin] as number) / n).toFixed(2)}→${((so[bin] as number) / n).toFixed(2)}`,
  );
  return `calibration error ${error.toFixed(4)}, said→was ${bins.join(' ')}`;
}
