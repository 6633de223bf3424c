/** Milliseconds of each step, run by run, in the order in which the steps were first taken. */
export class StepTimes {
  readonly #times = new Map<string, number[]>();

  add(step: string, ms: number): void {
    this.#times.set(step, [...(this.#times.get(step) ?? []), ms]);
  }

  async time<T>(step: string, work: () => Promise<T> | T): Promise<T> {
    const begun = performance.now();
    const result = await work();
    this.add(step, performance.now() - begun);
    return result;
  }

  of(step: string): readonly number[] {
    return this.#times.get(step) ?? [];
  }

  steps(): readonly string[] {
    return [...this.#times.keys()];
  }

  medianMs(step: string): number {
    return atShare(this.of(step), 0.5);
  }

  /** 95 % of the runs were no slower. */
  highMs(step: string): number {
    return atShare(this.of(step), 0.95);
  }
}

function atShare(values: readonly number[], share: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN;
}
