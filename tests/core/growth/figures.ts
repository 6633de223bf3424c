/**
 * How well growth is told, on simulated seasons of known growth, printed as tables.
 *
 * `node --import tsx tests/core/growth/figures.ts [SEASONS] [FIRST]`: SEASONS simulated seasons a row (default 400), seeds from FIRST
 * (default 9000, seeds that nothing was chosen on). A share of 400 is known to about ± 2 % (95 → ± 2.1, 90 → ± 2.9).
 */

import { startRadiusFor } from '../../../core/cut/cut-back-from-show.ts';
import { addDays } from '../../../core/day/day.ts';
import { type ExpectedGrowth, expectedGrowth, SPREADS } from '../../../core/growth/expected-growth.ts';
import { forecastRadius } from '../../../core/growth/forecast-radius.ts';
import { type Growth, growthLessons, growthOf } from '../../../core/growth/growth.ts';
import type { Range } from '../../../core/growth/growth-belief.ts';
import { formOf, radiusAt, ratePerWeek } from '../../../core/growth/growth-curve.ts';
import { chances, type Season, type SeasonOptions, STOP, simulateSeason } from './simulated-seasons.ts';

const seasons = Number(process.argv[2] ?? 400);
const first = Number(process.argv[3] ?? 9000);
const AHEAD_WEEKS = [1, 4, 8, 12];

const shares = new Map<string, { hits: number; of: number }>();
const values = new Map<string, number[]>();

function count(name: string, isHit: boolean): void {
  const { hits, of } = shares.get(name) ?? { hits: 0, of: 0 };
  shares.set(name, { hits: hits + (isHit ? 1 : 0), of: of + 1 });
}

function note(name: string, value: number): void {
  values.set(name, [...(values.get(name) ?? []), value]);
}

const share = (name: string) => {
  const { hits, of } = shares.get(name) ?? { hits: 0, of: 0 };
  return of === 0 ? '–' : ((100 * hits) / of).toFixed(1);
};
const median = (name: string) => {
  const sorted = [...(values.get(name) ?? [])].sort((a, b) => a - b);
  return (sorted[Math.floor(sorted.length / 2)] ?? Number.NaN).toFixed(1);
};
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
console.log(`${msASeason.toFixed(0)} ms a season with four forecasts\n`);

/** A variety drawn as the spreads say, its plants, and stretches of them. */
function drawnStretch(seed: number) {
  const { normal, uniform } = chances(seed);
  const varietyGrowth = Math.log(70) + SPREADS.logGrowthMm.variety * normal();
  const varietyWeeks = Math.log(5) + SPREADS.logWeeksToHalf.variety * normal();
  return () => {
    const plantGrowth = varietyGrowth + SPREADS.logGrowthMm.plant * normal();
    const plantWeeks = varietyWeeks + SPREADS.logWeeksToHalf.plant * normal();
    return () => ({
      growthMm: Math.exp(plantGrowth + SPREADS.logGrowthMm.stretch * normal()),
      weeksToHalf: Math.exp(plantWeeks + SPREADS.logWeeksToHalf.stretch * normal()),
      kind: uniform() < 0.5 ? ('logistic' as const) : ('gompertz' as const),
    });
  };
}

type Stretch = ReturnType<ReturnType<ReturnType<typeof drawnStretch>>>;

/** Eight weekly sittings of a stretch that began at 100 mm. */
function lessonsFrom(stretch: Stretch, normal: () => number) {
  const curve = { startRadiusMm: 100, finalRadiusMm: 100 + stretch.growthMm, ...stretch };
  const readings = Array.from({ length: 8 }, (_, k) => ({
    day: addDays(STOP, 7 * (k + 1)),
    radiusMm: radiusAt(curve, k + 1) + 1.5 * normal(),
    plusMinusMm: 3,
  }));
  return growthLessons({ readings, stops: [STOP] });
}

const WEEKS_TO_SHOW = 14;
const WANTED_MM = 180;
function backFromShow(row: string, expected: ExpectedGrowth, next: Stretch): void {
  const { radiusMm, range90Mm } = startRadiusFor(WANTED_MM, WEEKS_TO_SHOW, expected);
  const after = (ballMm: number) => {
    const startRadiusMm = Math.max(0.001, ballMm);
    return radiusAt({ ...next, startRadiusMm, finalRadiusMm: startRadiusMm + next.growthMm }, WEEKS_TO_SHOW);
  };
  // The ball that would have been right is inside the range when its ends grow on past and short of the wanted ball.
  count(`${row} range`, after(range90Mm[0]) <= WANTED_MM && after(range90Mm[1]) >= WANTED_MM);
  count(`${row} median`, after(radiusMm) <= WANTED_MM);
  count(`${row} low`, after(range90Mm[0]) <= WANTED_MM);
  note(`${row} off`, Math.abs(after(radiusMm) - WANTED_MM));
  note(`${row} width`, range90Mm[1] - range90Mm[0]);
}

for (let k = 0; k < seasons; k++) {
  const seed = first + 5_000_000 + k;
  const { normal } = chances(seed + 1_000_000);
  const newPlant = drawnStretch(seed);
  const mates = [newPlant(), newPlant(), newPlant()].map((mate) => lessonsFrom(mate(), normal));
  const own = newPlant();
  const ownLessons = [own(), own()].flatMap((stretch) => lessonsFrom(stretch, normal));
  const next = own();
  backFromShow('guess', expectedGrowth(100), next);
  backFromShow('variety', expectedGrowth(100, [], mates), next);
  backFromShow('plant', expectedGrowth(100, ownLessons), next);
  backFromShow('both', expectedGrowth(100, ownLessons, mates), next);
}
console.log(
  `Back from the show: ball to cut to for ${2 * WANTED_MM} mm in ${WEEKS_TO_SHOW} weeks, plants drawn as the spreads say:`,
);
console.table(
  Object.fromEntries(
    [
      ['guess', 'the guess alone'],
      ['variety', 'three others of its variety'],
      ['plant', 'two stretches of its own'],
      ['both', 'both'],
    ].map(([row, name]) => [
      name,
      {
        '90 % range right, %': share(`${row} range`),
        'range mm, median': median(`${row} width`),
        'radius on the day off by mm, median': median(`${row} off`),
        'not too wide, cut to the middle, %': share(`${row} median`),
        'not too wide, cut to the lower end, %': share(`${row} low`),
      },
    ]),
  ),
);
