import { describe, expect, it } from 'vitest';
import type { FoundPlant, UnsureZone } from '../../../core/canopy/found-plant.ts';
import { measureSilhouette, type SilhouetteMeasures } from '../../../core/measures/measure-silhouette.ts';
import type { Mask } from '../../../core/raster/raster.ts';
import { readSilhouette } from '../../../core/silhouette/silhouette.ts';
import { disc, drawMask, foundPlant, rim, unsureZone } from '../drawn-shapes.ts';

const SIDE = 340;
const POT = rim(160, 250, 48);
const ball = (x: number, y: number) => disc([160, 170], 100)(x, y) && y < 250;
/** A lobe at the right, beyond the ball. */
const lobe = (x: number, y: number) => disc([265, 170], 30)(x, y) && !ball(x, y) && y < 250;

const BARE = drawMask(SIDE, SIDE, ball);
const LOBED = drawMask(SIDE, SIDE, (x, y) => ball(x, y) || lobe(x, y));
const LOBE = drawMask(SIDE, SIDE, lobe);

function measured(canopy: Mask, unsureZones: readonly UnsureZone[], told: Partial<FoundPlant> = {}) {
  const silhouette = readSilhouette(canopy);
  if (silhouette === null) throw new Error('The drawing is empty.');
  return measureSilhouette(silhouette, foundPlant(canopy, POT, 0.5, { unsureZones, ...told }));
}

function plusMinusOf(canopy: Mask, zones: readonly UnsureZone[], told: Partial<FoundPlant> = {}) {
  const { plusMinus } = measured(canopy, zones, told);
  if (plusMinus === null) throw new Error('The drawing has no ball.');
  return plusMinus;
}

/** What the zones add to the plus-minus of a score: the rest of the root sum of squares. */
const added = (whole: number, alone: number) => Math.sqrt(whole ** 2 - alone ** 2);

describe('an unsure zone', () => {
  const sure = plusMinusOf(LOBED, []);
  const decided = measured(LOBED, []);
  const other = measured(BARE, []);
  const half = plusMinusOf(LOBED, [unsureZone(LOBE, { inCanopy: true, chance: 0.5 })]);

  // JCGM 100:2008 §5.1.2 with a Bernoulli input: u = √(p(1 − p))·|d|, and 1.96 u at 95 %. The copy is 1.1 times
  // reduced with its edges good to half a px, hence 5 %.
  it.each([
    ['lopsidedness', ({ lopsidedness }: SilhouetteMeasures) => lopsidedness],
    ['symmetry', ({ symmetry }: SilhouetteMeasures) => symmetry],
    ['roundness', ({ roundness }: SilhouetteMeasures) => roundness?.score],
  ] as const)('of chance one half adds 1.96 × 0.5 × its change of %s', (score, read) => {
    const change = Math.abs((read(decided) ?? Number.NaN) - (read(other) ?? Number.NaN));
    expect(change).toBeGreaterThan(1);
    expect(added(half[score], sure[score]) / (1.96 * 0.5 * change)).toBeCloseTo(1, 1);
  });

  it('counts the same whichever side it was put on', () => {
    const bareSure = plusMinusOf(BARE, []);
    const bareHalf = plusMinusOf(BARE, [unsureZone(LOBE, { inCanopy: false, chance: 0.5 })]);
    for (const score of ['roundness', 'symmetry', 'lopsidedness'] as const) {
      const [taken, put] = [added(half[score], sure[score]), added(bareHalf[score], bareSure[score])];
      expect(Math.abs(taken - put)).toBeLessThan(0.05 * put);
    }
  });

  it('adds by √(p(1 − p)): the more the nearer to one half, and as much at p as at 1 − p', () => {
    const at = (chance: number) =>
      added(
        plusMinusOf(LOBED, [unsureZone(LOBE, { inCanopy: true, chance })]).lopsidedness,
        sure.lopsidedness,
      );
    expect(at(0.1) / at(0.5)).toBeCloseTo(Math.sqrt(0.09 / 0.25), 9);
    expect(at(0.9)).toBeCloseTo(at(0.1), 9);
    const growing = [0.02, 0.1, 0.3, 0.5].map(at);
    expect([...growing].sort((a, b) => a - b)).toEqual(growing);
  });

  it.each([0, 1])('that is sure, of chance %d, adds nothing', (chance) => {
    expect(plusMinusOf(LOBED, [unsureZone(LOBE, { inCanopy: true, chance })])).toEqual(sure);
  });

  it('does not touch the scores themselves', () => {
    const { plusMinus: _, ...scores } = measured(LOBED, [unsureZone(LOBE, { inCanopy: true, chance: 0.5 })]);
    const { plusMinus: __, ...alone } = decided;
    expect(scores).toEqual(alone);
  });

  it('is taken away with the rind that a finer outline leaves round it', () => {
    // The zone as found on a copy a quarter as wide: it ends two px inside the lobe's outline.
    const core = drawMask(SIDE, SIDE, (x, y) => disc([265, 170], 28)(x, y) && !ball(x, y));
    const coarse = {
      certainty: { width: SIDE / 4, height: SIDE / 4, data: new Uint8Array((SIDE / 4) ** 2) },
    };
    const zone = [unsureZone(core, { inCanopy: true, chance: 0.5 })];
    const change = Math.abs((decided.roundness?.score ?? 0) - (other.roundness?.score ?? 0));
    const got = added(plusMinusOf(LOBED, zone, coarse).roundness, sure.roundness);
    expect(got / (1.96 * 0.5 * change)).toBeGreaterThan(0.9);
    expect(got / (1.96 * 0.5 * change)).toBeLessThan(1.1);
  });

  it('that would leave no plant makes every score unsure by all of it', () => {
    const all = plusMinusOf(BARE, [unsureZone(BARE, { inCanopy: true, chance: 0.5 })]);
    const score = measured(BARE, []).roundness?.score ?? Number.NaN;
    expect(all.roundness).toBeGreaterThan(0.95 * 1.96 * 0.5 * score);
  });
});

describe('several unsure zones', () => {
  const right = unsureZone(LOBE, { inCanopy: true, chance: 0.5 });
  const topOnly = (x: number, y: number) => disc([160, 62], 24)(x, y) && !ball(x, y);
  const top = unsureZone(drawMask(SIDE, SIDE, topOnly), { inCanopy: false, chance: 0.4 });

  it('add in quadrature', () => {
    const sure = plusMinusOf(LOBED, []);
    const [one, two, both] = [[right], [top], [right, top]].map((zones) => plusMinusOf(LOBED, zones));
    // Each copy holds its own zones, so the pixel grids differ a little.
    for (const score of ['roundness', 'symmetry', 'lopsidedness'] as const) {
      const [a, b, ab] = [one, two, both].map((one) => added(one?.[score] ?? Number.NaN, sure[score]));
      expect(Math.abs((ab as number) - Math.hypot(a as number, b as number))).toBeLessThan(
        0.05 * (ab as number),
      );
    }
  });

  it('never make a score surer than fewer do', () => {
    const counts = [[], [right], [right, top]].map((zones) => plusMinusOf(LOBED, zones));
    for (const score of ['roundness', 'symmetry', 'lopsidedness'] as const) {
      const grown = counts.map((one) => one[score]);
      expect([...grown].sort((a, b) => a - b)).toEqual(grown);
    }
  });
});
