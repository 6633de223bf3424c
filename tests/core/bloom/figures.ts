/**
 * How well the days of a bloom are told, on simulated blooms of known days, printed as a table.
 *
 * `node --import tsx tests/core/bloom/figures.ts [BLOOMS] [FIRST] [asked]`: BLOOMS simulated blooms a row (default 200), seeds from FIRST (default
 * 5000, seeds that nothing was chosen on); `asked`: only the three rows that something is asked of. A share of 200 is known to about ± 4 %.
 */

import { type Bloom, type BloomDate, bloomOf } from '../../../core/bloom/bloom.ts';
import type { BloomReading } from '../../../core/bloom/bloom-readings.ts';
import { type Bell, type BloomLesson, expectedBloom } from '../../../core/bloom/expected-bloom.ts';
import { addDays, daysBetween } from '../../../core/day/day.ts';
import { seededNoise } from '../../../core/measures/seeded-noise.ts';
import { DEFAULT_STOPS } from '../../../core/season/default-stops.ts';
import { count, median, note, share, shareOfAll } from '../growth/tally.ts';
import { knowingBelief } from './knowing-observer.ts';
import { oracleOff } from './oracle.ts';
import { type BloomOptions, FIRST_DAY, type SimulatedBloom, simulateBloom } from './simulated-blooms.ts';

const blooms = Number(process.argv[2] ?? 200);
const first = Number(process.argv[3] ?? 5000);
const isAskedAlone = process.argv[4] === 'asked';
const LASTS_DAYS = 21;
/** What the table of defaults guesses. */
const GUESSED_LASTS_DAYS = DEFAULT_STOPS.kinds.regal.bloomLastsDays.value;
const RISE_DAYS = [8, 32] as const;
const ROWS: [string, BloomOptions][] = [
  ['logistic rise, 8–32 days', { rise: 'logistic', noise: 1, riseDays: RISE_DAYS }],
  ['Gompertz’s rise', { rise: 'gompertz', noise: 1, riseDays: RISE_DAYS }],
  ['straight rise', { rise: 'straight', noise: 1, riseDays: RISE_DAYS }],
  ['scatter × 2', { rise: 'logistic', noise: 2, riseDays: RISE_DAYS }],
  ['scatter × 0.5', { rise: 'logistic', noise: 0.5, riseDays: RISE_DAYS }],
  ['no plus-minus', { rise: 'logistic', noise: null, riseDays: RISE_DAYS }],
  ['quick, 7–12 days', { rise: 'logistic', noise: 1, riseDays: [7, 12] }],
  ['slow, 24–40 days', { rise: 'logistic', noise: 1, riseDays: [24, 40] }],
];

/** Rows of other noise or pace say how far that goes; these three are what is asked of. */
const ASKED = ROWS.slice(0, 3).map(([row]) => row);

/** Spread of the day of full bloom that a stop lets expect once there are some records, days. */
const STOP_SD_DAYS = 10;

function told(
  readings: readonly BloomReading[],
  lessons: readonly BloomLesson[] = [],
  full: Bell | null = null,
  lastsDays = LASTS_DAYS,
): Bloom | null {
  const bloom = bloomOf({
    readings,
    startsAgain: [],
    today: addDays(FIRST_DAY, 400),
    expected: expectedBloom(lastsDays, lessons, full),
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

function oneBloom(row: string, season: SimulatedBloom, seed: number): void {
  const looksBack = season.readings;
  const whole = told(looksBack);
  if (whole !== null) {
    check(`${row} first`, whole.firstColour, season.firstColour, looksBack, 4);
    check(`${row} half`, whole.half, season.half, looksBack, 4);
    check(`${row} full`, whole.full, season.full, looksBack, 4);
    count(`${row} oracle full`, Math.abs(oracleOff(looksBack, season, 'pace')) <= 4);
    if (ASKED.includes(row)) {
      const { full, range90 } = knowingBelief(looksBack, RISE_DAYS, seed);
      count(`${row} knowing within`, Math.abs(full - season.full) <= 4);
      count(`${row} knowing holds`, range90[0] <= season.full && season.full <= range90[1]);
      const guessed = told(looksBack, [], null, GUESSED_LASTS_DAYS);
      if (guessed !== null) check(`${row} guessed`, guessed.full, season.full, looksBack, 4);
    }
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
const together = (name: string, what: 'within' | 'holds') => {
  const { percent, error } = shareOfAll(ASKED.map((row) => `${row} ${name} ${what}`));
  return `${percent.toFixed(1)} % (± ${error.toFixed(1)})`;
};
ROWS.forEach(([row, options], at) => {
  if (isAskedAlone && !ASKED.includes(row)) return;
  for (let k = 0; k < blooms; k++) oneBloom(row, simulateBloom(first + 100_000 * at + k, options), first + k);
  console.log(`\n${row}`);
  for (const event of ['first', 'half', 'full']) line(`looking back: ${event}`, `${row} ${event}`, 4);
  console.log(
    `    one who knows the pace, not the share: within 4 d of full ${share(`${row} oracle full`)} %`,
  );
  if (ASKED.includes(row)) {
    line(`full, ${GUESSED_LASTS_DAYS} days held likely`, `${row} guessed`, 4);
    console.log(`    one who knows how blooms are drawn: within 4 d ${share(`${row} knowing within`)} %`);
  }
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
  `
the first three rows together, one standard error behind
  looking back: half within 4 days ${together('half', 'within')}, full within 4 days ${together('full', 'within')} (90 asked), held by 90 % intervals ${together('full', 'holds')}
    with full bloom held to last ${GUESSED_LASTS_DAYS} days instead of ${LASTS_DAYS}: within 4 days ${together('guessed', 'within')}, held ${together('guessed', 'holds')}
    one who knows how blooms are drawn: within 4 days ${together('knowing', 'within')}, held ${together('knowing', 'holds')}
  two weeks ahead within 7 days (80 asked), held by 90 % intervals
    nothing known ${together('ahead 14', 'within')}, ${together('ahead 14', 'holds')}
    days from the stop known ${together('stop 14', 'within')}, ${together('stop 14', 'holds')}
    one earlier bloom known ${together('known 14', 'within')}, ${together('known 14', 'holds')}
    both ${together('both 14', 'within')}, ${together('both 14', 'holds')}`,
);
