/**
 * How the promise about being late holds, and how the time to bloom is learned, on simulated growers, printed as a table.
 *
 * `node --import tsx tests/core/season/figures.ts [GROWERS] [SEED]`: so many growers a row (default 10000), seeds from SEED (default 400,
 * seeds that nothing was chosen on). A share of 10000 is known to about ± 0.6 % (of 10 %) and ± 0.6 % (of 90 %).
 */

import { DEFAULT_BELIEF, SURE_BELIEF, simulateGrowers, WORLDS } from './simulated-growers.ts';

const growers = Number(process.argv[2] ?? 10_000);
const seed = Number(process.argv[3] ?? 400);
const RECORDS = [0, 1, 3, 8, 20];

const percent = (share: number) => (100 * share).toFixed(1);
const rows: Record<string, Record<string, string>> = {};
const started = performance.now();
Object.entries(WORLDS).forEach(([name, world], at) => {
  const belief = name === 'known spread' ? SURE_BELIEF : DEFAULT_BELIEF;
  for (const records of name === 'known spread' ? [0] : RECORDS) {
    const tally = simulateGrowers(world, belief, { growers, records, seed: seed + 100 * at + records });
    rows[`${name}, ${records} on record`] = {
      'late %': percent(tally.late),
      'said %': percent(tally.said),
      'late % unrounded': percent(tally.lateUnrounded),
      'true mean in 90 %': name === 'known spread' ? '–' : percent(tally.meanHeld),
      'next plant in 90 %': percent(tally.nextHeld),
      'mean off, days': tally.meanOffDays.toFixed(1),
      'days before show': tally.daysBefore.toFixed(1),
    };
  }
});
console.log(`${growers} growers a row, one plant of ten may be late; regals’ tip stop\n`);
console.table(rows);
console.log(`${((performance.now() - started) / 1000).toFixed(1)} s`);
