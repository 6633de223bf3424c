const shares = new Map<string, { hits: number; of: number }>();
const values = new Map<string, number[]>();

/** Counts a hit or a miss under a name. */
export function count(name: string, isHit: boolean): void {
  const { hits, of } = shares.get(name) ?? { hits: 0, of: 0 };
  shares.set(name, { hits: hits + (isHit ? 1 : 0), of: of + 1 });
}

/** Keeps a value under a name. */
export function note(name: string, value: number): void {
  values.set(name, [...(values.get(name) ?? []), value]);
}

/** Share of hits, %. */
export const share = (name: string) => {
  const { hits, of } = shares.get(name) ?? { hits: 0, of: 0 };
  return of === 0 ? '–' : ((100 * hits) / of).toFixed(1);
};
/** Median of the values. */
export const median = (name: string) => {
  const sorted = [...(values.get(name) ?? [])].sort((a, b) => a - b);
  return (sorted[Math.floor(sorted.length / 2)] ?? Number.NaN).toFixed(1);
};
