/**
 * How well the days of a bloom are told, on simulated blooms of known days, printed as a table.
 *
 * `node --import tsx tests/core/bloom/figures.ts [BLOOMS] [FIRST]`: BLOOMS simulated blooms a row (default 200), seeds from FIRST (default
 * 5000, seeds that nothing was chosen on). A share of 200 is known to about ± 4 %.
 */

import { type Bloom, type BloomDate, bloomOf } from '../../../core/bloom/bloom.ts';
import type { BloomReading } from '../../../core/bloom/bloom-readings.ts';
import { type Bell, type BloomLesson, expectedBloom } from '../../../core/bloom/expected-bloom.ts';
import { addDays, daysBetween } from '../../../core/day/day.ts';
import { seededNoise } from '../../../core/measures/seeded-noise.ts';
import { count, median, note, share } from '../growth/tally.ts';
import { oracleOff } from './oracle.ts';
import { type BloomOptions, FIRST_DAY, type SimulatedBloom, simulateBloom } from './simulated-blooms.ts';

const blooms = Number(process.argv[2] ?? 200);
const first = Number(process.argv[3] ?? 5000);
const LASTS_DAYS = 21;
const ROWS: [string, BloomOptions][] = [
  ['logistic rise, 8–32 days', { rise: 'logistic', noise: 1, riseDays: [8, 32] }],
  ['Gompertz’s rise', { rise: 'gompertz', noise: 1, riseDays: [8, 32] }],
  ['straight rise', { rise: 'straight', noise: 1, riseDays: [8, 32] }],
  ['scatter × 2', { rise: 'logistic', noise: 2, riseDays: [8, 32] }],
  ['scatter × 0.5', { rise: 'logistic', noise: 0.5, riseDays: [8, 32] }],
  ['no plus-minus', { rise: 'logistic', noise: null, riseDays: [8, 32] }],
  ['quick, 7–12 days', { rise: 'logistic', noise: 1, riseDays: [7, 12] }],
  ['slow, 24–40 days', { rise: 'logistic', noise: 1, riseDays: [24, 40] }],
];

/** Spread of the day of full bloom that a stop lets expect once there are some records, days. */
const STOP_SD_DAYS = 10;

function told(
  readings: readonly BloomReading[],
  lessons: readonly BloomLesson[] = [],
  full: Bell | null = null,
): Bloom | null {
  const bloom = bloomOf({
    readings,
    startsAgain: [],
    today: addDays(FIRST_DAY, 400),
    expected: expectedBloom(LASTS_DAYS, lessons, full),
  });
  return bloom.ok ? bloom : null;
}

function check(
  name: string,
  date: BloomDate,
  trueDays: number,
  readings: readonly BloomReading[],
  within: number,
): void {
  const start = (readings[0] as BloomReading).day;
  const truth = trueDays - daysBetween(FIRST_DAY, start);
  const off = daysBetween(start, date.day) - truth;
  count(`${name} within`, Math.abs(off) <= within);
  // Days are whole: an interval holds the day that the truth lies on.
  count(
    `${name} holds`,
    daysBetween(start, date.from90) - 0.5 <= truth && truth <= daysBetween(start, date.to90) + 0.5,
  );
  note(`${name} off`, off);
  note(`${name} width`, daysBetween(date.from90, date.to90));
}

/** The readings up to a day since the first photo. */
function until({ readings }: SimulatedBloom, days: number): BloomReading[] {
  return readings.filter(({ day }) => daysBetween(FIRST_DAY, day) <= days);
}

function oneBloom(row: string, season: SimulatedBloom): void {
  const looksBack = season.readings;
  const whole = told(looksBack);
  if (whole !== null) {
    check(`${row} first`, whole.firstColour, season.firstColour, looksBack, 4);
    check(`${row} half`, whole.half, season.half, looksBack, 4);
    check(`${row} full`, whole.full, season.full, looksBack, 4);
    count(`${row} oracle full`, Math.abs(oracleOff(looksBack, season, 'pace')) <= 4);
    if (whole.fading !== null) check(`${row} fading`, whole.fading, season.fading, looksBack, 7);
  }
  for (const ahead of [14, 7]) {
    const readings = until(season, season.full - ahead);
    const bloom = told(readings);
    count(`${row} colour ${ahead}`, bloom !== null);
    if (bloom === null) continue;
    check(`${row} ahead ${ahead}`, bloom.full, season.full, readings, 7);
    for (const knows of ['pace', 'all'] as const) {
      count(`${row} oracle ${knows} ${ahead}`, Math.abs(oracleOff(readings, season, knows)) <= 7);
    }
    const known = told(readings, [season.lesson]);
    if (known !== null) check(`${row} known ${ahead}`, known.full, season.full, readings, 7);
    const start = daysBetween(FIRST_DAY, (readings[0] as BloomReading).day);
    const full = { mean: season.full - start + STOP_SD_DAYS * stopSays(), sd: STOP_SD_DAYS };
    const stop = told(readings, [], full);
    if (stop !== null) check(`${row} stop ${ahead}`, stop.full, season.full, readings, 7);
    const both = told(readings, [season.lesson], full);
    if (both !== null) check(`${row} both ${ahead}`, both.full, season.full, readings, 7);
  }
}

const stopSays = seededNoise(first).normal;
const cells = (name: string, within: number) =>
  `within ${within} d ${share(`${name} within`).padStart(5)} %  off ${median(`${name} off`).padStart(5)}  90 % ${share(`${name} holds`).padStart(5)} %  wide ${median(`${name} width`)}`;
const line = (words: string, name: string, within: number, more = '') =>
  console.log(`  ${words.padEnd(28)} ${cells(name, within)}${more}`);

console.log(
  `${blooms} blooms a row, seeds from ${first}; off = median days off, 90 % = intervals that hold the truth, wide = median width, days`,
);
/** Rows of other noise or pace say how far that goes; these three are what is asked of. */
const ASKED = ROWS.slice(0, 3).map(([row]) => row);
const together = (name: string, within: boolean) => {
  const some = ASKED.map((row) => Number(share(`${row} ${name} ${within ? 'within' : 'holds'}`)));
  return `${(some.reduce((sum, one) => sum + one, 0) / some.length).toFixed(0)} %`;
};
ROWS.forEach(([row, options], at) => {
  for (let k = 0; k < blooms; k++) oneBloom(row, simulateBloom(first + 100_000 * at + k, options));
  console.log(`\n${row}`);
  for (const event of ['first', 'half', 'full']) line(`looking back: ${event}`, `${row} ${event}`, 4);
  console.log(
    `    one who knows the pace, not the share: within 4 d of full ${share(`${row} oracle full`)} %`,
  );
  line('looking back: fading', `${row} fading`, 7);
  for (const ahead of [14, 7]) {
    const seen = `  (colour seen in ${share(`${row} colour ${ahead}`)} %)`;
    line(`full bloom, ${ahead} days ahead`, `${row} ahead ${ahead}`, 7, seen);
    line('  one earlier bloom known', `${row} known ${ahead}`, 7);
    line('  days from the stop known', `${row} stop ${ahead}`, 7);
    line('  both', `${row} both ${ahead}`, 7);
    console.log(
      `    one who knows the pace, not the share: within 7 d ${share(`${row} oracle pace ${ahead}`)} %, who knows all but the day: ${share(`${row} oracle all ${ahead}`)} %`,
    );
  }
});
console.log(
  `\nthe first three rows together: full bloom within 4 days ${together('full', true)} (90 asked), 90 % intervals hold it in ${together('full', false)}; two weeks ahead within 7 days with nothing known ${together('ahead 14', true)}, with one earlier bloom ${together('known 14', true)}, with the days from the stop ${together('stop 14', true)}, with both ${together('both 14', true)} (80 asked)`,
);
