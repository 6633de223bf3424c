import { foliageOf } from '../../../core/foliage/foliage-of.ts';
import { leafLook, type NormalLeaf } from '../../../core/foliage/normal-leaf.ts';
import type { Raster } from '../../../core/raster/raster.ts';
import type { ViewOptions } from '../../../sample-images/render/render-view.ts';
import { ailingPlants, type EXPOSURES, inLight, type LightName } from './ailing-plants.ts';
import { door, emptyStand, leafOfPhoto } from './leaf-of-photo.ts';

/**
 * How well yellow and brown leaf repeat: rendered plants whose leaf stays as it is, photographed in other lights and exposures, each photo held
 * against the plant's own normal leaf. Prints the spread of the readings beside what the plus-minus says.
 *
 *   node --import tsx tests/core/foliage/repeat-figures.ts [PLANTS]
 */
const SHOTS: readonly (readonly [LightName, (typeof EXPOSURES)[number]])[] = [
  ['day', 1],
  ['lamp', 0.7],
  ['shade', 1.4],
  ['lamp', 2],
  ['day', 0.5],
];
const NORMAL_95 = 1.96;

const ratios: Record<'yellow' | 'brown', number[]> = { yellow: [], brown: [] };
let [inside, all] = [0, 0];
for (const { name, emptyView, healthy, later } of ailingPlants(2, Number(process.argv[2] ?? 4))) {
  const reference = await emptyStand(emptyView);
  const normal = (await seen((healthy[0] as (typeof healthy)[number]).view, reference, null))?.look ?? null;
  const ailing = (later.at(-1) as (typeof later)[number]).view.ailing;
  const still = (healthy[0] as (typeof healthy)[number]).view;
  const readings = [];
  for (const [light, exposure] of SHOTS) {
    const view = inLight({ ...still, ...(ailing === undefined ? {} : { ailing }) }, light, exposure);
    const reading = await seen(view, reference, normal);
    if (reading?.foliage.ok) readings.push(reading.foliage);
  }
  if (readings.length < 2) {
    console.log(`${name}: not cut out`);
    continue;
  }
  for (const tone of ['yellow', 'brown'] as const) {
    const shares = readings.map((one) => one[tone].share);
    const mean = shares.reduce((sum, one) => sum + one, 0) / shares.length;
    const sd = Math.sqrt(shares.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (shares.length - 1));
    const stated = readings.reduce((sum, one) => sum + one[tone].plusMinus, 0) / readings.length / NORMAL_95;
    for (const one of readings) {
      all++;
      if (Math.abs(one[tone].share - mean) <= one[tone].plusMinus) inside++;
    }
    ratios[tone].push(sd / stated);
    const percent = (share: number) => (100 * share).toFixed(1);
    console.log(
      `${name.padEnd(26)} ${tone.padEnd(6)} ${readings.length} photos: mean ${percent(mean)} %, spread ${percent(sd)} points, stated ${percent(stated)}; read ${shares.map(percent).join(' ')}`,
    );
  }
}
console.log(
  `spread ÷ stated: ${Object.entries(ratios)
    .map(([tone, of]) => `${tone} ${of.map((one) => one.toFixed(2)).join(' ')}`)
    .join('; ')}`,
);
console.log(`within the plus-minus of their plant's mean: ${inside} of ${all}`);

async function seen(view: ViewOptions, reference: Raster, normal: NormalLeaf | null) {
  const leaf = await leafOfPhoto(view, reference);
  if (leaf === null) return null;
  return {
    foliage: foliageOf(door, { ...leaf, normal }),
    look: leafLook(leaf.colours, leaf.photoBalance.balance.from),
  };
}
