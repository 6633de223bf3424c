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
/** Share of hits under several names together, with one standard error, both in %. */
export function shareOfAll(names: readonly string[]): { percent: number; error: number } {
  const counted = names.flatMap((name) => shares.get(name) ?? []);
  const of = counted.reduce((sum, one) => sum + one.of, 0);
  const part = counted.reduce((sum, { hits }) => sum + hits, 0) / of;
  return { percent: 100 * part, error: 100 * Math.sqrt((part * (1 - part)) / of) };
}
/** Median of the values. */
export const median = (name: string) => {
  const sorted = [...(values.get(name) ?? [])].sort((a, b) => a - b);
  return (sorted[Math.floor(sorted.length / 2)] ?? Number.NaN).toFixed(1);
};
