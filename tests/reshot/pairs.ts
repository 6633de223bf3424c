import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { openNetwork } from '../../core/canopy/model/onnx-door.ts';
import { changeSince } from '../../core/trend/change-since.ts';
import { median } from '../score/quantile.ts';
import { MEASURES, type Measure, type Readings, readingsAlone } from './measure-shots.ts';

/**
 * Measures pairs of real photos of one plant and prints by how much the scores differ.
 *
 *   node --import tsx tests/reshot/pairs.ts DIR
 *
 * DIR holds NAME_grower.* and NAME_planter-*.*: one plant in two pots, so the pot's rim and what it hides differ too and more
 * should change than in photos taken again.
 */
const dir = process.argv[2];
if (dir === undefined) {
  process.stderr.write('Name the folder with the pairs of photos.\n');
  process.exit(2);
}
const network = await openNetwork(readFileSync('core/canopy/model/first-guess.onnx'));
const names = readdirSync(dir).sort();
const pairs: [Readings, Readings][] = [];
for (const name of names) {
  const plant = /^(.*)_grower\./.exec(name)?.[1];
  const other = plant && names.find((one) => one.startsWith(`${plant}_planter-`));
  if (!other) continue;
  const [one, two] = [
    await readingsAlone(join(dir, name), network),
    await readingsAlone(join(dir, other), network),
  ];
  pairs.push([one, two]);
  process.stderr.write(
    `${plant} ${MEASURES.map((measure) => differenceIn([one, two], measure)).join(' ')}\n`,
  );
}
process.stdout.write(`${pairs.length} pairs\n${MEASURES.map(summary).join('\n')}\n`);

function differenceIn([one, two]: [Readings, Readings], measure: Measure): string {
  const [before, now] = [one[measure], two[measure]];
  if (before === null || now === null) return `${measure} -`;
  const { by, plusMinus } = changeSince(before, now);
  return `${measure} ${by.toFixed(1)} ± ${plusMinus.toFixed(1)}`;
}

/** A pair's spread as for photos taken again: the difference ÷ √2; told as a median, for some pairs are other plants by now. */
function summary(measure: Measure): string {
  const known = pairs.flatMap(([one, two]) => {
    const [before, now] = [one[measure], two[measure]];
    return before === null || now === null ? [] : [changeSince(before, now)];
  });
  const apart = known.map(({ by }) => Math.abs(by));
  const stated = known.map(({ plusMinus }) => plusMinus);
  const unchanged = known.filter(({ direction }) => direction === 'none').length;
  return [
    `${measure}: ${known.length} pairs`,
    `difference median ${median(apart).toFixed(1)}, as a spread ${(median(apart) / 0.6745 / Math.SQRT2).toFixed(1)}`,
    `stated ± ${median(stated).toFixed(1)}`,
    `unchanged ${unchanged}`,
  ].join('; ');
}
