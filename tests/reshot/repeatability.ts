import { changeSince, type Repeatable } from '../../core/trend/change-since.ts';

/** How well one measure of one plant repeats, and whether that was said beforehand. */
export interface Repeatability {
  readonly shots: number;
  readonly mean: number;
  /** Standard deviation of one reading, s of ISO 5725-2. */
  readonly spread: number;
  /** The stated plus-minus as a standard deviation: root mean square ÷ 1.96. */
  readonly statedSpread: number;
  /** How many readings have the plant's mean within their own plus-minus. */
  readonly inside: number;
  /** Pairs of shots, and how many of them were called unchanged. */
  readonly pairs: number;
  readonly unchanged: number;
}

/**
 * Repeatability of readings of one plant that did not change.
 *
 * @param readings at least two, each with its stated plus-minus
 * @returns spread, how many readings hold the mean in their plus-minus, and for each pair of readings whether `changeSince`
 *   calls them unchanged: both should be 95 of 100
 *
 * Notes: a reading is nearer to a mean that it is part of than to the true one, by √(1 − 1 ÷ n); that is taken off again.
 *
 * Reference: ISO 5725-2:1994, 7.4 (repeatability standard deviation); ISO 5725-6:1994, 4.1 (two readings differ by less than
 * 1.96·√2·s in 95 of 100).
 */
export function repeatabilityOf(readings: readonly Repeatable[]): Repeatability {
  const shots = readings.length;
  if (shots < 2) throw new RangeError(`Expected two readings or more but received ${shots}`);
  const mean = readings.reduce((sum, { value }) => sum + value, 0) / shots;
  const squares = readings.reduce((sum, { value }) => sum + (value - mean) ** 2, 0);
  const stated = readings.reduce((sum, { plusMinus }) => sum + plusMinus ** 2, 0) / shots;
  let [pairs, unchanged] = [0, 0];
  readings.forEach((one, k) => {
    for (const other of readings.slice(0, k)) {
      pairs++;
      if (changeSince(other, one).direction === 'none') unchanged++;
    }
  });
  const drawn = Math.sqrt(1 - 1 / shots);
  const inside = readings.filter(
    ({ value, plusMinus }) => Math.abs(value - mean) <= drawn * plusMinus,
  ).length;
  const spread = Math.sqrt(squares / (shots - 1));
  return { shots, mean, spread, statedSpread: Math.sqrt(stated) / 1.96, inside, pairs, unchanged };
}

/** Share of readings with the mean inside, and of pairs called unchanged, each plant counting alike. */
export function coverageOf(plants: readonly Repeatability[]): {
  readonly inside: number;
  readonly unchanged: number;
} {
  const meanOf = (share: (plant: Repeatability) => number) =>
    plants.reduce((sum, plant) => sum + share(plant), 0) / plants.length;
  return {
    inside: meanOf(({ inside, shots }) => inside / shots),
    unchanged: meanOf(({ unchanged, pairs }) => unchanged / pairs),
  };
}
