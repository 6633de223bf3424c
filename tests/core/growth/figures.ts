/**
 * How well growth is told, on simulated seasons of known growth, printed as tables.
 *
 * `node --import tsx tests/core/growth/figures.ts [SEASONS] [FIRST]`: SEASONS simulated seasons a row (default 400), seeds from FIRST
 * (default 9000, seeds that nothing was chosen on). A share of 400 is known to about ± 2 % (95 → ± 2.1, 90 → ± 2.9).
 */

import { addDays } from '../../../core/day/day.ts';
import { forecastRadius } from '../../../core/growth/forecast-radius.ts';
import { type Growth, growthOf } from '../../../core/growth/growth.ts';
import type { Range } from '../../../core/growth/growth-belief.ts';
import { formOf, ratePerWeek } from '../../../core/growth/growth-curve.ts';
import { type Season, type SeasonOptions, STOP, simulateSeason } from './simulated-seasons.ts';
import { count, median, note, share } from './tally.ts';

const seasons = Number(process.argv[2] ?? 400);
const first = Number(process.argv[3] ?? 9000);
const AHEAD_WEEKS = [1, 4, 8, 12];

const holds = ([low, high]: Range, value: number) => low <= value && value <= high;

function growthIn({ readings }: Season): Growth {
  const growth = growthOf({ readings, stops: [STOP], today: addDays(STOP, 400), varietyLessons: [] });
  if (!growth.ok) throw new Error(growth.hint);
  return growth;
}

function onePlant(row: string, season: Season, knowsParameters: boolean): void {
  const growth = growthIn(season);
  const { curve } = season;
  if (knowsParameters) {
    count(`${row} start`, holds(growth.interval95.startRadiusMm, curve.startRadiusMm));
    count(`${row} final`, holds(growth.interval95.finalRadiusMm, curve.finalRadiusMm));
    count(`${row} half`, holds(growth.interval95.weeksToHalf, curve.weeksToHalf));
    count(`${row} kind`, growth.curve.kind === curve.kind);
    if (growth.curve.kind === curve.kind) {
      count(`${row} rate`, holds(growth.interval95.ratePerWeek, ratePerWeek(formOf(curve))));
    }
    note(`${row} final error`, Math.abs(100 * (growth.curve.finalRadiusMm / curve.finalRadiusMm - 1)));
  }
  const [low, high] = growth.interval95.finalRadiusMm;
  note(`${row} final width`, (100 * (high - low)) / curve.finalRadiusMm);
  const lastDay = season.readings
    .map(({ day }) => day)
    .sort()
    .at(-1) as typeof STOP;
  for (const ahead of AHEAD_WEEKS) {
    const on = addDays(lastDay, 7 * ahead);
    const weeks = (new Date(on).getTime() - new Date(STOP).getTime()) / (7 * 86_400_000);
    const forecast = forecastRadius(growth, on);
    count(`${row} curve ${ahead}`, holds(forecast.curveRange90Mm, season.radiusAt(weeks)));
    count(`${row} reading ${ahead}`, holds(forecast.readingRange90Mm, season.readingAt(weeks)));
    note(`${row} miss ${ahead}`, Math.abs(forecast.radiusMm - season.radiusAt(weeks)));
  }
}

const ROWS: [string, readonly [fewest: number, most: number], Omit<SeasonOptions, 'sittings'>][] = [
  ['5–16 sittings', [5, 16], { plants: 'all sorts', noise: 1 }],
  ['5–7 sittings', [5, 7], { plants: 'all sorts', noise: 1 }],
  ['12–16 sittings', [12, 16], { plants: 'all sorts', noise: 1 }],
  ['plants as guessed', [5, 16], { plants: 'as guessed', noise: 1 }],
  ['no plus-minus', [5, 16], { plants: 'all sorts', noise: null }],
  ['scatter × 2', [5, 16], { plants: 'all sorts', noise: 2 }],
  ['scatter × 0.5', [5, 16], { plants: 'all sorts', noise: 0.5 }],
  ['1–4 sittings', [1, 4], { plants: 'all sorts', noise: 1 }],
  ['Richards’ curve', [5, 16], { plants: 'all sorts', noise: 1, truth: 'richards' }],
  ['a fortnight’s lag', [5, 16], { plants: 'all sorts', noise: 1, truth: 'lag' }],
];

const started = performance.now();
ROWS.forEach(([row, [fewest, most], options], at) => {
  for (let k = 0; k < seasons; k++) {
    const sittings = fewest + (k % (most - fewest + 1));
    const season = simulateSeason(first + 100_000 * at + k, { ...options, sittings });
    onePlant(row, season, (options.truth ?? 'fitted kinds') === 'fitted kinds');
  }
});
const msASeason = (performance.now() - started) / (seasons * ROWS.length);

console.log(`${seasons} seasons a row, seeds from ${first}\n`);
console.log('Share of seasons whose stated 95 % interval holds the true number, % (wanted 92–98):');
console.table(
  Object.fromEntries(
    ROWS.filter(([, , { truth }]) => truth === undefined).map(([row]) => [
      row,
      {
        'start radius': share(`${row} start`),
        'final radius': share(`${row} final`),
        'weeks to half': share(`${row} half`),
        'rate (right kind)': share(`${row} rate`),
        'right kind': share(`${row} kind`),
        'final off by %, median': median(`${row} final error`),
        'interval’s width %, median': median(`${row} final width`),
      },
    ]),
  ),
);
console.log('Share of forecasts whose stated 90 % range holds what came, % (wanted 86–94), by weeks ahead:');
console.table(
  Object.fromEntries(
    ROWS.map(([row]) => [
      row,
      Object.fromEntries([
        ...AHEAD_WEEKS.map((ahead) => [`photo ${ahead}`, share(`${row} reading ${ahead}`)]),
        ...AHEAD_WEEKS.map((ahead) => [`curve ${ahead}`, share(`${row} curve ${ahead}`)]),
        ...AHEAD_WEEKS.slice(1).map((ahead) => [`off mm ${ahead}`, median(`${row} miss ${ahead}`)]),
      ]),
    ]),
  ),
);
console.log(`${msASeason.toFixed(0)} ms a season with four forecasts`);
