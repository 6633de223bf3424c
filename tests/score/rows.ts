/** One way of cutting, on all photos of a folder. */
export interface Row {
  readonly ious: number[];
  /** Empty where the time says nothing. */
  readonly ms: number[];
}

/** Rows by their names, in the order in which they were first noted. */
export type Rows = Map<string, Row>;

export function noteRow(rows: Rows, name: string, iou: number, ms: number | null = null): void {
  const row = rows.get(name) ?? { ious: [], ms: [] };
  rows.set(name, row);
  row.ious.push(iou);
  if (ms !== null) row.ms.push(ms);
}
