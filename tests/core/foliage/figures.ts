import { parseArgs } from 'node:util';
import type { Foliage, NoFoliage } from '../../../core/foliage/foliage.ts';
import { foliageOf } from '../../../core/foliage/foliage-of.ts';
import { leafLook, learnNormalLeaf, type NormalLeaf } from '../../../core/foliage/normal-leaf.ts';
import { LEAF_TONES, leafTones } from '../../../sample-images/render/leaf-tones.ts';
import { quantile } from '../../score/quantile.ts';
import { type AilingPlant, type AilingShot, ailingPlants } from './ailing-plants.ts';
import { door, emptyStand, leafOfPhoto } from './leaf-of-photo.ts';

/**
 * How well yellow and brown leaf are told, through the real cut-out, on rendered plants whose shares are known, in three lights
 * and at 0.5 to 2 times the exposure.
 *
 *   node --import tsx tests/core/foliage/figures.ts [--series N] [--plants N]
 *
 *   --series N   0 is what the limits were chosen on; 1 and up are other plants (1)
 *   --plants N   the first so many; the first one is golden by nature
 *
 * Renders are kept in the system's temporary folder: remove it after a change to the renderer.
 */
const { values } = parseArgs({
  options: { series: { type: 'string', default: '1' }, plants: { type: 'string' } },
});

const count = values.plants === undefined ? undefined : Number(values.plants);
const readings: Reading[] = [];
for (const plant of ailingPlants(Number(values.series), count)) readings.push(...(await readPlant(plant)));
process.stdout.write(
  [
    summary('yellow, own normal', 'yellow', readings, ({ own }) => own),
    summary(
      '  green-leaved',
      'yellow',
      readings.filter(({ isGolden }) => !isGolden),
      ({ own }) => own,
    ),
    summary(
      '  golden',
      'yellow',
      readings.filter(({ isGolden }) => isGolden),
      ({ own }) => own,
    ),
    summary(
      'yellow, no normal, green-leaved',
      'yellow',
      readings.filter(({ isGolden }) => !isGolden),
      ({ usual }) => usual,
    ),
    summary('brown, own normal', 'brown', readings, ({ own }) => own),
    '',
  ].join('\n'),
);

interface Reading {
  readonly isGolden: boolean;
  readonly truth: Readonly<Record<'yellow' | 'brown', number>>;
  readonly own: Foliage | NoFoliage;
  /** As if nothing were known of the plant. */
  readonly usual: Foliage | NoFoliage;
}

async function readPlant({ name, isGolden, emptyView, healthy, later }: AilingPlant): Promise<Reading[]> {
  const reference = await emptyStand(emptyView);
  let normal: NormalLeaf | null = null;
  for (const shot of healthy) {
    const seen = await leafOfPhoto(shot.view, reference);
    if (seen === null) continue;
    const look = leafLook(seen.colours, seen.photoBalance.balance.from);
    if (look !== null) normal = learnNormalLeaf(normal, look);
  }
  const found: Reading[] = [];
  for (const shot of later) {
    const seen = await leafOfPhoto(shot.view, reference);
    if (seen === null) {
      process.stdout.write(`${name}: not cut out\n`);
      continue;
    }
    const reading = {
      isGolden,
      truth: trueShares(shot),
      own: foliageOf(door, { ...seen, normal }),
      usual: foliageOf(door, { ...seen, normal: null }),
    };
    found.push(reading);
    process.stdout.write(
      `${name.padEnd(28)} ${shot.light.padEnd(5)} × ${shot.exposure}  ${seen.photoBalance.balance.from}  ${line(reading)}\n`,
    );
  }
  return found;
}

/** Of all leaf and stem that the photo shows. */
function trueShares({ view }: AilingShot): Reading['truth'] {
  const { data } = leafTones(view);
  const counts = LEAF_TONES.map((_, tone) => data.filter((one) => one === tone).length);
  const [, green = 0, yellow = 0, brown = 0] = counts;
  const leaf = green + yellow + brown;
  return { yellow: yellow / leaf, brown: brown / leaf };
}

function line({ truth, own, usual }: Reading): string {
  const percent = (share: number) => (100 * share).toFixed(1).padStart(5);
  const read = (one: Foliage | NoFoliage, tone: 'yellow' | 'brown') =>
    one.ok
      ? `${percent(one[tone].share)} ±${percent(one[tone].plusMinus)} off by${percent(one[tone].offBy)}`
      : one.reason;
  return [
    `yellow ${percent(truth.yellow)} read ${read(own, 'yellow')}, no normal ${read(usual, 'yellow')}`,
    `brown ${percent(truth.brown)} read ${read(own, 'brown')}`,
  ].join('; ');
}

function summary(
  title: string,
  tone: 'yellow' | 'brown',
  some: readonly Reading[],
  readBy: (reading: Reading) => Foliage | NoFoliage,
): string {
  const told = some.flatMap((reading) => {
    const read = readBy(reading);
    return read.ok ? [{ off: Math.abs(read[tone].share - reading.truth[tone]), by: read[tone].offBy }] : [];
  });
  const off = told.map((one) => 100 * one.off).sort((one, other) => one - other);
  const inside = told.filter((one) => one.off <= one.by).length;
  const at = (share: number) => (off.length === 0 ? '-' : quantile(off, share).toFixed(1));
  return `${title}: ${told.length} of ${some.length} told; off by ${at(0.5)} points median, ${at(0.9)} at the 90th percentile; within what is said to be off ${inside}`;
}
