import { beforeAll, describe, expect, it } from 'vitest';
import { PARTS } from '../../../core/canopy/found-plant.ts';
import { AS_PHOTOGRAPHED, type ColourBalance } from '../../../core/colour/colour-balance.ts';
import type { Foliage } from '../../../core/foliage/foliage.ts';
import { foliageOf } from '../../../core/foliage/foliage-of.ts';
import { leafColours } from '../../../core/foliage/leaf-colours.ts';
import { leafLook, learnNormalLeaf, type NormalLeaf } from '../../../core/foliage/normal-leaf.ts';
import { type OpenCvDoor, openOpenCv } from '../../../core/opencv/door.ts';
import { BROWN, type Colour, GOLDEN, GREEN, type Painted, paintLeaf, YELLOW } from './painted-leaf.ts';

const BALANCED: ColourBalance = { from: 'backdrop', gains: [1, 1, 1], doubt: { stops: 0.1, tint: 0.8 } };

let door: OpenCvDoor;
beforeAll(async () => {
  door = await openOpenCv();
});

const coloursOf = ({ raster, parts }: Painted, balance = BALANCED, petalsTold = false) =>
  leafColours(door, raster, parts, { balance, petalsTold });

function told(painted: Painted, normal: NormalLeaf | null = null, balance = BALANCED, petalsTold = false) {
  const why = balance.from === 'none' ? 'no white' : null;
  return foliageOf(door, {
    colours: coloursOf(painted, balance, petalsTold),
    photoBalance: { balance, why },
    normal,
  });
}

function judged(...given: Parameters<typeof told>): Foliage {
  const foliage = told(...given);
  if (!foliage.ok) throw new Error(foliage.why);
  return foliage;
}

const normalOf = (painted: Painted, balance = BALANCED) =>
  leafLook(coloursOf(painted, balance), balance.from);

/** Yellow from the bottom up to this share of the height. */
const lowYellow = (share: number) => (_: number, down: number) => (down > 1 - share ? YELLOW : GREEN);

describe('the foliage of a photo', () => {
  it.each([0, 0.05, 0.15, 0.3])('tells a yellow share of %d', (share) => {
    const { yellow, brown, green } = judged(paintLeaf(lowYellow(share)));
    // A row of px along each border is left out: 1 of 100.
    expect(Math.abs(yellow.share - share)).toBeLessThan(0.015);
    expect(brown.share).toBeLessThan(0.005);
    expect(green.share + yellow.share + brown.share).toBeCloseTo(1, 9);
    expect(Math.abs(yellow.share - share)).toBeLessThan(yellow.offBy);
  });

  it('tells brown from yellow', () => {
    const { yellow, brown } = judged(
      paintLeaf((across) => (across < 0.2 ? BROWN : across > 0.9 ? YELLOW : GREEN)),
    );
    expect(Math.abs(brown.share - 0.2)).toBeLessThan(0.015);
    expect(Math.abs(yellow.share - 0.1)).toBeLessThan(0.015);
  });

  it.each([0.5, 2])('reads the same when all light is multiplied by %d', (light) => {
    const usual = judged(paintLeaf(lowYellow(0.2))).yellow.share;
    const other = judged(paintLeaf(lowYellow(0.2), [light, light, light])).yellow.share;
    expect(Math.abs(other - usual)).toBeLessThan(0.01);
  });

  it('reads the same in lamp light once it is balanced', () => {
    const balance: ColourBalance = { ...BALANCED, gains: [0.8, 1, 1 / 0.6] };
    const { yellow } = judged(paintLeaf(lowYellow(0.2), [1.25, 1, 0.6]), null, balance);
    expect(Math.abs(yellow.share - 0.2)).toBeLessThan(0.02);
  });

  it('is the surer the less white is in doubt', () => {
    const between: Colour = [0.24, 0.245, 0.05];
    const painted = paintLeaf((across) => (across < 0.7 ? GREEN : between));
    const sure = judged(painted);
    const unsure = judged(painted, null, { ...BALANCED, doubt: { stops: 0.1, tint: 8 } });
    expect(unsure.yellow.plusMinus).toBeGreaterThan(2 * sure.yellow.plusMinus);
  });

  it('takes yellow petals for leaf only where nothing but colour told them, and says how many may pass for leaf', () => {
    const painted = paintLeaf(lowYellow(0.3));
    const { width, height, data } = painted.parts;
    // The yellow is petal, all but a strip of leaf above it.
    const parts = data.map((part, at) =>
      part === PARTS.indexOf('leaf') && Math.floor(at / width) > 0.75 * height
        ? PARTS.indexOf('flower')
        : part,
    );
    const blooming = { ...painted, parts: { width, height, data: parts } };
    const [byColour, byMore] = [judged(blooming), judged(blooming, null, BALANCED, true)];
    expect(byColour.yellow.share).toBeGreaterThan(0.25);
    // Ten of eighty rows.
    expect(Math.abs(byMore.yellow.share - 1 / 8)).toBeLessThan(0.015);
    expect(byMore.yellow.plusMinus).toBeGreaterThan(2 * byColour.yellow.plusMinus);
    expect(byMore.brown.plusMinus).toBeLessThan(1.5 * byColour.brown.plusMinus);
  });

  it('shows where the yellow stands', () => {
    const { where } = judged(paintLeaf((across, down) => (across < 0.25 && down > 0.75 ? YELLOW : GREEN)));
    expect(where).toHaveLength(1);
    expect(where[0]).toMatchObject({ place: 'low on the left' });
    // A sixteenth of the leaf; its middle lies 12.5 of 100 px in from the leaf's lower left corner, which is at 10, 110.
    expect(Math.abs((where[0]?.areaShare ?? 0) - 1 / 16)).toBeLessThan(0.008);
    expect(Math.hypot((where[0]?.centrePx[0] ?? 0) - 22.5, (where[0]?.centrePx[1] ?? 0) - 97.5)).toBeLessThan(
      2,
    );
    expect(where[0]?.outlinePx.length).toBeGreaterThan(3);
  });

  it('shows no zone on a green plant', () => {
    expect(judged(paintLeaf(() => GREEN)).where).toEqual([]);
  });

  it('is not comparable when white is not known', () => {
    expect(
      judged(
        paintLeaf(() => GREEN),
        null,
        AS_PHOTOGRAPHED,
      ).notCompared,
    ).toBe('no white');
    expect(judged(paintLeaf(() => GREEN)).notCompared).toBeNull();
  });

  it('cannot be told of a plant without leaf, or in the dark', () => {
    const petals = paintLeaf(() => GREEN, [1, 1, 1], 'flower');
    expect(told(petals)).toMatchObject({
      ok: false,
      reason: 'too-little',
    });
    const dark = paintLeaf(() => GREEN, [0.02, 0.02, 0.02]);
    expect(told(dark)).toMatchObject({
      ok: false,
      why: expect.stringContaining('Photograph in even light'),
    });
  });
});

describe('a plant held against its own first sittings', () => {
  it('is not yellowing when it is golden by nature', () => {
    const golden = paintLeaf(() => GOLDEN);
    const { yellow, against, departure } = judged(golden, normalOf(golden));
    expect(yellow.share).toBeLessThan(0.02);
    expect(against).toBe('own');
    expect(departure).toBeLessThan(0.5);
  });

  it('is not judged at all when it is golden and nothing is known of it', () => {
    expect(told(paintLeaf(() => GOLDEN))).toMatchObject({
      ok: false,
      reason: 'by-nature',
    });
  });

  it('is not brown or yellow when it is variegated or zoned by nature', () => {
    const ring: Colour = [0.06, 0.045, 0.02];
    const cream: Colour = [0.5, 0.44, 0.14];
    const natural = (across: number, down: number) =>
      Math.hypot(across - 0.5, down - 0.5) > 0.53
        ? cream
        : Math.abs(Math.hypot(across - 0.5, down - 0.5) - 0.25) < 0.05
          ? ring
          : GREEN;
    const painted = paintLeaf(natural);
    const alone = judged(painted);
    expect(alone.yellow.share + alone.brown.share).toBeGreaterThan(0.15);
    const own = judged(painted, normalOf(painted));
    expect(own.yellow.share).toBeLessThan(0.02);
    expect(own.brown.share).toBeLessThan(0.02);
  });

  it('is yellowing when a dark green plant turns yellow', () => {
    const normal = normalOf(paintLeaf(() => [0.04, 0.085, 0.025]));
    const { yellow, departure } = judged(
      paintLeaf((_, down) => (down > 0.8 ? YELLOW : [0.04, 0.085, 0.025])),
      normal,
    );
    expect(Math.abs(yellow.share - 0.2)).toBeLessThan(0.02);
    expect(departure).toBeLessThan(2);
  });

  it('is not compared with a normal whose white came from elsewhere', () => {
    const normal = normalOf(paintLeaf(() => GREEN));
    const { notCompared, against, departure } = judged(
      paintLeaf(() => GREEN),
      normal,
      {
        ...BALANCED,
        from: 'sheet',
      },
    );
    expect({ against, departure }).toEqual({ against: 'usual', departure: null });
    expect(notCompared).toContain('learned by another white');
  });
});

describe('the normal leaf of a plant', () => {
  it('is the mean over its photos, each counting alike', () => {
    const [one, other] = [normalOf(paintLeaf(() => GREEN)), normalOf(paintLeaf(() => GOLDEN))];
    const both = one && other && learnNormalLeaf(one, other);
    expect(both?.photos).toBe(2);
    expect(both?.leafColour.l).toBeCloseTo(((one?.leafColour.l ?? 0) + (other?.leafColour.l ?? 0)) / 2, 4);
    const sum = both?.hueShares.reduce((total, share) => total + share, 0);
    expect(sum).toBeCloseTo(1, 6);
  });

  it('is not learned from a photo whose white is not known', () => {
    expect(
      normalOf(
        paintLeaf(() => GREEN),
        AS_PHOTOGRAPHED,
      ),
    ).toBeNull();
  });

  it('outlasts storing as text', () => {
    const normal = normalOf(paintLeaf(() => GREEN));
    expect(JSON.parse(JSON.stringify(normal))).toEqual(normal);
  });
});
