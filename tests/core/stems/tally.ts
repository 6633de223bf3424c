/** What was found against what is there, over many plants. */
export interface Tally {
  /** True stems of the asked excess, and how many of them were found. */
  asked: number;
  found: number;
  /** Stems called so long, and how many of them are none. */
  called: number;
  wrong: number;
  readonly excessOff: number[];
  readonly clockOffDeg: number[];
  /** Whether the true excess lies within the stated plus-minus, 1 or 0 each. */
  readonly insidePlusMinus: number[];
}

export function emptyTally(): Tally {
  return { asked: 0, found: 0, called: 0, wrong: 0, excessOff: [], clockOffDeg: [], insidePlusMinus: [] };
}

/** One line of the table. */
export function tallyLine(name: string, tally: Tally): string {
  const share = (part: number, of: number) => (of === 0 ? '-' : (part / of).toFixed(3));
  const off = tally.excessOff.map(Math.abs);
  return [
    `${name}: recall ${share(tally.found, tally.asked)} (${tally.asked})`,
    `precision ${share(tally.called - tally.wrong, tally.called)} (${tally.called})`,
    `excess off, median ${quantile(off, 0.5)} mm, 90th ${quantile(off, 0.9)}, middle ${quantile(tally.excessOff, 0.5)}`,
    `within its plus-minus ${share(tally.insidePlusMinus.filter((one) => one === 1).length, tally.insidePlusMinus.length)}`,
    `clock off, median ${quantile(tally.clockOffDeg, 0.5)}°, within an hour ${share(tally.clockOffDeg.filter((deg) => deg <= 30).length, tally.clockOffDeg.length)}`,
  ].join('; ');
}

export function quantile(values: readonly number[], share: number): string {
  if (values.length === 0) return '-';
  const sorted = [...values].sort((a, b) => a - b);
  return (sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] as number).toFixed(1);
}
