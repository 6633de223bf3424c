/**
 * How well the ball to cut to is counted back from the show, on simulated plants, printed as a table.
 *
 * `node --import tsx tests/core/growth/back-from-show-figures.ts [PLANTS] [FIRST]`: PLANTS simulated plants (default 200), seeds from FIRST
 * (default 9000, seeds that nothing was chosen on). Varieties, plants and stretches are drawn as `SPREADS` says, which are guesses:
 * the table shows that the ranges are what they say for such plants, not that plants are such.
 */

import { startRadiusFor } from '../../../core/cut/cut-back-from-show.ts';
import { addDays } from '../../../core/day/day.ts';
import { type ExpectedGrowth, expectedGrowth, SPREADS } from '../../../core/growth/expected-growth.ts';
import { growthLessons } from '../../../core/growth/growth.ts';
import { radiusAt } from '../../../core/growth/growth-curve.ts';
import { chances, STOP } from './simulated-seasons.ts';
import { count, median, note, share } from './tally.ts';

const plants = Number(process.argv[2] ?? 200);
const first = Number(process.argv[3] ?? 9000);

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

for (let k = 0; k < plants; k++) {
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
  `${plants} plants. Back from the show: ball to cut to for ${2 * WANTED_MM} mm in ${WEEKS_TO_SHOW} weeks, plants drawn as the spreads say:`,
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
