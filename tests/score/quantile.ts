/** The value below which `share` of the values lie, straight-line between ranks; NaN of nothing. */
export function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((one, other) => one - other);
  const place = share * (sorted.length - 1);
  const low = sorted[Math.floor(place)] ?? Number.NaN;
  const high = sorted[Math.ceil(place)] ?? Number.NaN;
  return low + (place - Math.floor(place)) * (high - low);
}

export const median = (values: readonly number[]): number => quantile(values, 0.5);
