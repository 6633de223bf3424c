/** The median; NaN of none. */
export function middleOf(values: ArrayLike<number>): number {
  const sorted = Float64Array.from(values).sort();
  return sorted.length === 0 ? Number.NaN : (sorted[sorted.length >> 1] as number);
}
