/**
 * The median; NaN of none. Of an even count the upper of the two in the middle.
 *
 * Reference: Hoare (1961), Algorithm 65: Find, Comm. ACM 4:321: parts about a guess instead of sorting all, because a photo has a hundred thousand values.
 */
export function middleOf(values: ArrayLike<number>): number {
  const parted = Float64Array.from(values);
  if (parted.length === 0) return Number.NaN;
  const wanted = parted.length >> 1;
  let [from, to] = [0, parted.length - 1];
  while (from < to) {
    const guess = parted[(from + to) >> 1] as number;
    let [low, high] = [from, to];
    while (low <= high) {
      while ((parted[low] as number) < guess) low++;
      while ((parted[high] as number) > guess) high--;
      if (low > high) break;
      [parted[low], parted[high]] = [parted[high] as number, parted[low] as number];
      low++;
      high--;
    }
    if (wanted <= high) to = high;
    else if (wanted >= low) from = low;
    else break;
  }
  return parted[wanted] as number;
}
