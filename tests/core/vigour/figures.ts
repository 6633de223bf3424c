/**
 * How well limp plants are told from firm, grown and cut ones, on the exact masks of rendered plants, printed as a table.
 *
 * `node --import tsx tests/core/vigour/figures.ts [PLANTS] [FIRST]`: PLANTS rendered plants (default 24), seeds from FIRST (default 300, seeds that
 * nothing was chosen on). Each is photographed firm, and a week on as it grew, cut or hangs; leaves lie a little otherwise on each day, the
 * pot is up to 3° off its turn. The length's plus-minus is taken as 3 %. Cuts here are such that nobody wrote down: a cut in the log is never
 * judged at all.
 */

import { addDays, day } from '../../../core/day/day.ts';
import type { StatureReading } from '../../../core/vigour/wilt.ts';
import { seededChance } from '../../../sample-images/render/geometry/seeded-random.ts';
import { median, share } from '../growth/tally.ts';
import { judged, NOTED } from './judged.ts';
import { type Standing, standingReading, tipStop } from './limp-plants.ts';

const plants = Number(process.argv[2] ?? 24);
const first = Number(process.argv[3] ?? 300);
const FIRM_DAY = day('2026-05-01');
const PLUS_MINUS = 0.03;

const reading = (seed: number, standing: Standing, days: number) =>
  standingReading(seed, standing, addDays(FIRM_DAY, days), PLUS_MINUS);

const FIRM: [string, Omit<Standing, 'day' | 'turnDeg'>][] = [
  ['the same plant again', { week: -1 }],
  ['a week on', { week: 0 }],
  ['three weeks on', { week: 2 }],
  ['tips cut by 15 mm', { week: 0, cuts: tipStop(15) }],
  ['tips cut by 30 mm', { week: 0, cuts: tipStop(30) }],
  ['cut back by 50 mm', { week: 0, cuts: tipStop(50) }],
  ['cut back by 80 mm', { week: 0, cuts: tipStop(80) }],
  ['cut back by 110 mm', { week: 0, cuts: tipStop(110) }],
  ['only the top by 80 mm', { week: -1, cuts: tipStop(80).filter(({ shoot }) => shoot < 30) }],
  ['one side by 80 mm', { week: -1, cuts: tipStop(80).filter(({ shoot }) => shoot % 3 === 0) }],
  ['every other shoot by 50 mm', { week: 0, cuts: tipStop(50).filter(({ shoot }) => shoot % 2 === 0) }],
];

/** By how much the same plant would stand higher on the same day, were it firm. */
function bandOf(fall: number): string {
  if (fall >= 0.15) return 'drooped by 15 % and more';
  return fall >= 0.1 ? 'drooped by 10–15 %' : 'drooped by less than 10 %';
}

for (let seed = first; seed < first + plants; seed++) {
  const chance = seededChance(seed);
  const turnDeg = (key: number) => chance.between(-3, 3, key);
  const before = reading(seed, { week: -1, day: 1, turnDeg: turnDeg(1) }, 0);
  const judge = (row: string, now: StatureReading) => judged(row, now, before);
  FIRM.forEach(([row, standing], k) => {
    judge(row, reading(seed, { ...standing, day: 2 + k, turnDeg: turnDeg(2 + k) }, 7));
  });
  const firm = reading(seed, { week: 0, day: 30, turnDeg: 0 }, 7);
  for (let k = 0; k < 3; k++) {
    const limp = chance.between(0.5, 1.6, 40, k);
    const droop = { leafRad: limp * chance.between(0.8, 1.2, 41, k), shootRad: 0.75 * limp, seed };
    const now = reading(seed, { week: 0, day: 31 + k, turnDeg: turnDeg(31 + k), droop }, 7);
    judge(bandOf(1 - now.height / firm.height), now);
  }
}

const DROOPED = ['drooped by less than 10 %', 'drooped by 10–15 %', 'drooped by 15 % and more'];
console.log(
  `${plants} plants, seeds from ${first}; median change of height, spread, mean height of the leaf, tightness; share outside the former outline, %`,
);
for (const row of [...FIRM.map(([name]) => name), ...DROOPED]) {
  const moved = NOTED.map((measure) => median(`${row} ${measure}`).padStart(6));
  console.log(`${row.padEnd(30)} called limp ${share(row).padStart(5)} %   ${moved.join(' ')}`);
}
