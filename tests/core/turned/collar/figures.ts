/**
 * How well the turn collar is read: `node --import tsx tests/core/turned/collar/figures.ts [--drawn 200] [--rendered 24] [--from 5001]`.
 *
 * `drawn`: pots drawn by following lines of sight, read from the true rim and from one found 5 % wrong. `rendered`: photos of the sample
 * renderer, measured as the product measures them. A third of each has leaves hanging over the rim, a sixth no collar. Renders are kept in the
 * system's folder for passing files.
 */
import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { NOTHING_KNOWN } from '../../../../core/canopy/known.ts';
import { measurePhoto } from '../../../../core/measure-photo.ts';
import { turnBetween } from '../../../../core/turned/circular-statistics.ts';
import { readCollar } from '../../../../core/turned/collar/read-collar.ts';
import { seededChance } from '../../../../sample-images/render/geometry/seeded-random.ts';
import { renderView } from '../../../../sample-images/render/render-view.ts';
import { readUprightPhoto } from '../../../../server/intake/read-upright-photo.ts';
import { networkAtHand } from '../../../../server/measuring/network.ts';
import { shotFile } from '../../../reshot/shots.ts';
import { chanceScene } from './chance-scene.ts';
import { photographCollar } from './photographed-collar.ts';
import { collarScene, stepsInSight } from './scenes.ts';

const { values: options } = parseArgs({
  options: {
    drawn: { type: 'string', default: '200' },
    rendered: { type: 'string', default: '24' },
    from: { type: 'string', default: '5001' },
  },
});

/** One pot and what was read from it. */
interface Outcome {
  readonly kind: 'bare' | 'leafy' | 'no collar';
  readonly seed: number;
  readonly stepsSeen: number;
  readonly errorDeg: number | null;
  readonly plusMinusDeg: number | null;
  /** Of the reading alone; `null` where it was read with the rest. */
  readonly milliseconds: number | null;
}

/** With fewer steps in sight a refusal is right. */
const READABLE_STEPS = 12;

function kindOf(seed: number): Outcome['kind'] {
  return seed % 6 === 5 ? 'no collar' : seed % 3 === 0 ? 'leafy' : 'bare';
}

function drawnOutcome(seed: number, rimFault: number): Outcome {
  const kind = kindOf(seed);
  const scene = chanceScene(seed, { collar: kind !== 'no collar', leafy: kind === 'leafy' });
  const { raster, rim, stepsSeen } = photographCollar(scene);
  const chance = seededChance(seed);
  const fault = (key: number) => rimFault * chance.between(-1, 1, key);
  const half = rim.halfWidthPx;
  const began = process.cpuUsage();
  const reading = readCollar(raster, {
    centrePx: [rim.centrePx[0] + half * fault(1), rim.centrePx[1] + half * fault(2)],
    halfWidthPx: half * (1 + fault(3)),
  });
  const { user, system } = process.cpuUsage(began);
  return {
    kind,
    seed,
    stepsSeen,
    errorDeg: reading.ok ? turnBetween(scene.turnDeg, reading.turnDeg) : null,
    plusMinusDeg: reading.ok ? reading.plusMinusDeg : null,
    milliseconds: (user + system) / 1000,
  };
}

async function renderedOutcome(seed: number): Promise<Outcome> {
  const kind = kindOf(seed);
  const scene = collarScene(seed, { collar: kind !== 'no collar', leafy: kind === 'leafy', clumsy: true });
  const file = await shotFile(scene.view);
  const photo = await readUprightPhoto(new Uint8Array(readFileSync(file)));
  const { network } = await networkAtHand(true);
  const { rimMm } = scene.view.pot;
  const known = { ...NOTHING_KNOWN, network, stand: null, photoName: file, rimMm, turnDeg: null };
  const { report } = await measurePhoto(photo, known);
  return {
    kind,
    seed,
    stepsSeen: kind === 'no collar' ? 0 : stepsInSight(scene, renderView(scene.view).canopy),
    errorDeg: report.collar === null ? null : turnBetween(scene.turnDeg, report.collar.turnDeg),
    plusMinusDeg: report.collar?.plusMinusDeg ?? null,
    milliseconds: null,
  };
}

function tell(title: string, outcomes: readonly Outcome[]): void {
  console.log(`\n${title}`);
  console.log('                        pots  within 3°  3–10°  wrong  refused   sd °  outside ±');
  for (const kind of ['bare', 'leafy'] as const) {
    const all = outcomes.filter((one) => one.kind === kind);
    line(
      `${kind}, 12+ steps seen`,
      all.filter((one) => one.stepsSeen >= READABLE_STEPS),
    );
    line(
      `${kind}, fewer`,
      all.filter((one) => one.stepsSeen < READABLE_STEPS),
    );
  }
  line(
    'no collar',
    outcomes.filter((one) => one.kind === 'no collar'),
  );
  const far = outcomes.filter(({ errorDeg }) => errorDeg !== null && Math.abs(errorDeg) > 3);
  for (const { seed, errorDeg, plusMinusDeg, stepsSeen } of far) {
    console.log(
      `  ${seed}: ${errorDeg?.toFixed(1)}° off, said ± ${plusMinusDeg?.toFixed(1)}°, ${stepsSeen.toFixed(0)} steps seen`,
    );
  }
  const times = outcomes.flatMap(({ milliseconds }) => (milliseconds === null ? [] : [milliseconds]));
  if (times.length > 0) {
    const sorted = times.sort((one, other) => one - other);
    const at = (share: number) => (sorted[Math.floor(share * (sorted.length - 1))] as number).toFixed(0);
    console.log(`  reading takes ${at(0.5)} ms of processor time (median), ${at(0.95)} ms (95th percentile)`);
  }
}

function line(name: string, all: readonly Outcome[]): void {
  if (all.length === 0) return;
  const read = all.flatMap((one) =>
    one.errorDeg === null ? [] : [{ off: Math.abs(one.errorDeg), plusMinus: one.plusMinusDeg ?? 0 }],
  );
  const near = read.filter(({ off }) => off <= 3).length;
  const wrong = name === 'no collar' ? read.length : read.filter(({ off }) => off > 10).length;
  const sd = Math.sqrt(read.reduce((sum, { off }) => sum + off * off, 0) / Math.max(1, read.length));
  const outside = read.filter(({ off, plusMinus }) => off > plusMinus).length / Math.max(1, read.length);
  const cells = [all.length, near, read.length - near - wrong, wrong, all.length - read.length];
  const [pots, within, between, ...rest] = cells.map((cell, k) =>
    String(cell).padStart([6, 11, 7, 7, 9][k] ?? 8),
  );
  console.log(
    `${name.padEnd(22)}${pots}${within}${between}${rest.join('')}${sd.toFixed(2).padStart(7)}${`${(100 * outside).toFixed(0)} %`.padStart(11)}`,
  );
}

const from = Number(options.from);
const seeds = (count: string) => Array.from({ length: Number(count) }, (_, k) => from + k);
if (Number(options.drawn) > 0) {
  tell(
    'Drawn pots, true rim',
    seeds(options.drawn).map((seed) => drawnOutcome(seed, 0)),
  );
  tell(
    'Drawn pots, rim up to 5 % wrong',
    seeds(options.drawn).map((seed) => drawnOutcome(seed, 0.05)),
  );
}
const rendered: Outcome[] = [];
for (const seed of seeds(options.rendered)) rendered.push(await renderedOutcome(seed));
if (rendered.length > 0) tell('Rendered photos, measured as the product measures them', rendered);
process.exit(0);
