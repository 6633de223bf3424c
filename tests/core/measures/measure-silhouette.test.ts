import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitBall } from '../../../core/measures/ball.ts';
import { measureSilhouette, type SilhouetteMeasures } from '../../../core/measures/measure-silhouette.ts';
import { roundnessOf } from '../../../core/measures/roundness.ts';
import type { Mask } from '../../../core/raster/raster.ts';
import { readSilhouette } from '../../../core/silhouette/silhouette.ts';
import { disc, drawMask, foundPlant, oval, rim } from '../drawn-shapes.ts';

function measure(mask: Mask, pot: ReturnType<typeof rim> | null = null, edgePx = 0.5): SilhouetteMeasures {
  const silhouette = readSilhouette(mask);
  if (silhouette === null) throw new Error('The drawing is empty.');
  return measureSilhouette(silhouette, foundPlant(mask, pot, edgePx));
}

/** A disc whose pot hides exactly the chord it stands on. */
function ballOnPot(radius: number, middleX: number, side: number): [Mask, ReturnType<typeof rim>] {
  const middleY = side / 2;
  const rimY = middleY + 0.8 * radius;
  const mask = drawMask(side, side, (x, y) => disc([middleX, middleY], radius)(x, y) && y < rimY);
  return [mask, rim(middleX, rimY, 0.6 * radius)];
}

describe('an even ball', () => {
  // Discs are drawn without soft edges, so the smallest has an outline of 320 stairs. The worst
  // seen is 99.3, at radius 40.
  it.each([40, 47.3, 60, 85.5, 130, 200, 400])('of radius %d px reads as good as perfect', (radius) => {
    const side = 2 * Math.ceil(radius) + 40;
    for (const shift of radius > 150 ? [0.3] : [0, 0.21, 0.5, 0.77]) {
      const [mask, pot] = ballOnPot(radius, side / 2 + shift, side);
      const measures = measure(mask, pot);
      expect(measures.roundness?.score).toBeGreaterThan(99);
      expect(measures.symmetry).toBeGreaterThan(99);
      expect(Math.abs(measures.lopsidedness ?? Number.NaN)).toBeLessThan(0.3);
      expect(Math.abs((measures.ball?.radiusPx ?? 0) - radius)).toBeLessThan(0.15);
      expect(measures.longStems).toEqual([]);
    }
  });

  it('without a pot is seen whole, and says what cannot be told', () => {
    const measures = measure(drawMask(300, 300, disc([150, 150], 100)));
    expect(measures.openArcDeg).toBe(360);
    expect(measures.roundness?.score).toBeGreaterThan(99.5);
    expect(measures.axis).toBeNull();
    expect(measures.lopsidedness).toBeNull();
    expect(measures.notes).toEqual([
      'No pot rim was found, so the plant axis is not known: symmetry is taken about the upright line through the middle of the canopy, and lopsidedness cannot be told.',
    ]);
  });

  it('has an open arc of what the pot leaves', () => {
    // A rim of ± 0.6 radius at 0.8 below the middle hides 2·atan(0.6 ÷ 0.8) = 73.74°.
    const measures = measure(...ballOnPot(100, 150, 300));
    expect(measures.openArcDeg).toBeCloseTo(360 - 73.74, 0);
  });
});

describe('an oval of 1.25 : 1', () => {
  it('has a roundness of 80 ± 1', () => {
    const measures = measure(drawMask(600, 600, oval([300, 300], 250, 200)));
    expect(Math.abs((measures.roundness?.score ?? 0) - 80)).toBeLessThan(1);
    // The filter passes 98.8 % of an oval's 50 px.
    expect(measures.roundness?.outOfRoundPx).toBeCloseTo(49.4, 0);
  });

  it('stands out at its two ends as broad shoulders', () => {
    const stems = measure(drawMask(600, 600, oval([300, 300], 250, 200))).longStems;
    expect(stems.map(({ kind }) => kind)).toEqual(['shoulder', 'shoulder']);
    expect(stems.map(({ clock }) => clock).sort((a, b) => a - b)).toEqual([3, 9]);
  });
});

describe('long stems', () => {
  const stemAt = (x: number, y: number) => Math.abs(x - 300) < 6 && y > 70 && y < 300;

  it('are found with tip, cut mark and excess', () => {
    const mask = drawMask(600, 600, (x, y) => disc([300, 300], 150)(x, y) || stemAt(x, y));
    const [stem, ...others] = measure(mask).longStems;
    expect(others).toEqual([]);
    expect(stem?.kind).toBe('shoot');
    expect(stem?.clock).toBe(12);
    // The stem ends at 230 px from the middle, 80 outside the ball; its corners lie 0.2 px further.
    expect(Math.abs((stem?.excessPx ?? 0) - 80)).toBeLessThan(1);
    expect(Math.abs((stem?.cutPx[0] ?? 0) - 300)).toBeLessThan(1.5);
    expect(Math.abs((stem?.cutPx[1] ?? 0) - 150)).toBeLessThan(1);
  });

  it('do not pull the ball with them', () => {
    const mask = drawMask(600, 600, (x, y) => disc([300, 300], 150)(x, y) || stemAt(x, y));
    const ball = measure(mask).ball;
    expect(ball?.radiusPx).toBeCloseTo(150, 0);
    expect(Math.abs((ball?.centrePx[1] ?? 0) - 300)).toBeLessThan(0.5);
  });

  it('are counted one by one', () => {
    const spokes = [20, 100, 200, 260, 320].map((degrees) => (degrees * Math.PI) / 180);
    const mask = drawMask(600, 600, (x, y) => {
      const [dx, dy] = [x - 300, y - 300];
      return (
        disc([300, 300], 140)(x, y) ||
        spokes.some((angle) => {
          const along = dx * Math.cos(angle) + dy * Math.sin(angle);
          return Math.abs(dy * Math.cos(angle) - dx * Math.sin(angle)) < 7 && along > 0 && along < 200;
        })
      );
    });
    const stems = measure(mask).longStems;
    expect(stems.map(({ kind }) => kind)).toEqual(Array(5).fill('shoot'));
    for (const { excessPx } of stems) expect(Math.abs(excessPx - 60)).toBeLessThan(1.5);
  });

  it('are told from a broad shoulder', () => {
    const mask = drawMask(600, 600, (x, y) => disc([300, 300], 150)(x, y) || disc([400, 240], 90)(x, y));
    const stems = measure(mask).longStems;
    expect(stems.map(({ kind, clock }) => [kind, clock])).toEqual([['shoulder', 2]]);
  });

  it('are not made of ripples inside the tolerance', () => {
    const ripple = (x: number, y: number) => 150 + 5 * Math.cos(9 * Math.atan2(y - 300, x - 300));
    const mask = drawMask(600, 600, (x, y) => Math.hypot(x - 300, y - 300) < ripple(x, y));
    expect(measure(mask).longStems).toEqual([]);
  });
});

describe('a leaning canopy', () => {
  it('reads right of its axis by the distance over the radius', () => {
    const [mask] = ballOnPot(150, 210, 400);
    const measures = measure(mask, rim(200, 320, 100));
    expect(measures.lopsidedness).toBeCloseTo((100 * 10) / 150, 0);
  });
});

/** A lumpy plant with a lean and one long stem. */
function lumpy(x: number, y: number): boolean {
  const angle = Math.atan2(y - 130, x - 150);
  const edge = 80 + 3 * Math.cos(2 * angle + 0.7) + 2 * Math.sin(5 * angle);
  const isStem = Math.abs(angle + 1) < 0.05 && Math.hypot(x - 150, y - 130) < 115;
  return (Math.hypot(x - 150, y - 130) < edge || isStem) && y < 200;
}
const POT = rim(148, 200, 40);

function summary({ roundness, symmetry, lopsidedness, ball, fill, longStems }: SilhouetteMeasures) {
  return {
    roundness: roundness?.score ?? Number.NaN,
    symmetry: symmetry ?? Number.NaN,
    lopsidedness: lopsidedness ?? Number.NaN,
    radius: ball?.radiusPx ?? Number.NaN,
    solidity: fill.solidity,
    stems: longStems.length,
  };
}

describe('the measures of a lumpy plant', () => {
  const still = summary(measure(drawMask(320, 280, lumpy), POT));

  it('are what is expected of it', () => {
    expect(still.stems).toBe(1);
    expect(still.roundness).toBeGreaterThan(60);
    expect(still.roundness).toBeLessThan(90);
  });

  it('stay the same wherever it stands in the photo', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 60 }), fc.integer({ min: 0, max: 60 }), (right, down) => {
        const mask = drawMask(400, 360, (x, y) => lumpy(x - right, y - down));
        const moved = summary(measure(mask, rim(148 + right, 200 + down, 40)));
        for (const key of Object.keys(still) as (keyof typeof still)[]) {
          expect(moved[key]).toBeCloseTo(still[key], 6);
        }
      }),
      { numRuns: 5, seed: 7 },
    );
  });

  it('change sides in the mirror, and nothing else', () => {
    const mask = drawMask(320, 280, (x, y) => lumpy(320 - x, y));
    const mirrored = summary(measure(mask, rim(320 - 148, 200, 40)));
    expect(mirrored.lopsidedness).toBeCloseTo(-still.lopsidedness, 6);
    expect(mirrored.symmetry).toBeCloseTo(still.symmetry, 6);
    // The profile is sampled the other way round, hence the small tolerance.
    expect(Math.abs(mirrored.roundness - still.roundness)).toBeLessThan(0.1);
    expect(mirrored.stems).toBe(still.stems);
  });

  it('do not depend on scale beyond the pixels', () => {
    const mask = drawMask(960, 840, (x, y) => lumpy(x / 3, y / 3));
    const scaled = summary(measure(mask, rim(3 * 148, 600, 120)));
    // Tolerances: half a px on a radius of 80 is 0.6 %; the stem, 8 px wide, may also be drawn a px wider.
    expect(Math.abs(scaled.roundness - still.roundness)).toBeLessThan(1.5);
    expect(Math.abs(scaled.symmetry - still.symmetry)).toBeLessThan(0.6);
    expect(Math.abs(scaled.lopsidedness - still.lopsidedness)).toBeLessThan(0.3);
    expect(scaled.radius / 3).toBeCloseTo(still.radius, 0);
    expect(scaled.stems).toBe(still.stems);
  });

  it('keep their roundness through a quarter turn of the picture when no pot is seen', () => {
    const upright = summary(measure(drawMask(320, 320, lumpy)));
    const turned = summary(measure(drawMask(320, 320, (x, y) => lumpy(y, 320 - x))));
    expect(turned.roundness).toBeCloseTo(upright.roundness, 1);
    expect(turned.radius).toBeCloseTo(upright.radius, 2);
    expect(turned.solidity).toBeCloseTo(upright.solidity, 12);
    expect(turned.stems).toBe(upright.stems);
  });

  it('come with the same plus-minus every time', () => {
    const mask = drawMask(320, 280, lumpy);
    expect(measure(mask, POT).plusMinus).toEqual(measure(mask, POT).plusMinus);
  });
});

describe('the plus-minus', () => {
  it('grows with the doubt of the outline', () => {
    const mask = drawMask(320, 280, lumpy);
    const sharp = measure(mask, POT, 0.5).plusMinus;
    const soft = measure(mask, POT, 3).plusMinus;
    expect(soft?.roundness).toBeGreaterThan(sharp?.roundness ?? 0);
    expect(soft?.symmetry).toBeGreaterThan(sharp?.symmetry ?? 0);
    expect(soft?.lopsidedness).toBeGreaterThan(sharp?.lopsidedness ?? 0);
  });

  it('shrinks as the plant fills more of the photo', () => {
    const small = measure(...ballOnPot(50, 75, 150)).plusMinus;
    const large = measure(...ballOnPot(300, 330, 660)).plusMinus;
    expect(large?.roundness).toBeLessThan((small?.roundness ?? 0) / 2);
  });

  it('holds 19 of 20 discs drawn anew with a doubtful edge', () => {
    // Discs whose radius, place and ripple vary by one px of standard deviation, as the doubt of 1 px says.
    const wave = (k: number, n: number) => Math.sin(12.9898 * (k + 1) * (n + 3)) * 1.4;
    const still = measure(
      wobbly(() => 0),
      null,
      1,
    );
    let held = 0;
    for (let k = 0; k < 20; k++) {
      const again = readSilhouette(
        wobbly((angle) => {
          let sum = 0;
          for (let n = 1; n <= 12; n++) sum += wave(k, n) * Math.cos(n * 3 * angle + n * k);
          return sum / Math.sqrt(12);
        }),
      );
      const ball = again && fitBall(again, null);
      const off = Math.abs(((ball && roundnessOf(ball.form)?.score) ?? 0) - (still.roundness?.score ?? 0));
      if (off <= (still.plusMinus?.roundness ?? 0)) held++;
    }
    expect(held).toBeGreaterThanOrEqual(18);
    // Not by being useless: a doubt of 1 px on a radius of 100 may not claim more than 6 points.
    expect(still.plusMinus?.roundness).toBeLessThan(6);
  });
});

function wobbly(edge: (angle: number) => number): Mask {
  return drawMask(
    300,
    300,
    (x, y) => Math.hypot(x - 150, y - 150) < 100 + edge(Math.atan2(y - 150, x - 150)),
  );
}

describe('what cannot be measured', () => {
  it('is no ball for a single pixel row, and says so', () => {
    const measures = measure(drawMask(200, 20, (_, y) => y > 5 && y < 6));
    expect(measures.ball).toBeNull();
    expect(measures.roundness).toBeNull();
    expect(measures.longStems).toEqual([]);
    expect(measures.notes).toContain(
      'The outline that can be seen fixes no circle, so there is no ball, no roundness and no plus-minus for the other scores.',
    );
  });

  it('is no symmetry when nothing stands above the rim', () => {
    const measures = measure(drawMask(200, 200, disc([100, 140], 40)), rim(100, 90, 30));
    expect(measures.symmetry).toBeNull();
    expect(measures.notes).toContain('No canopy stands above the pot rim, so symmetry cannot be told.');
  });

  it('is no silhouette for an empty mask', () => {
    expect(readSilhouette(drawMask(10, 10, () => false))).toBeNull();
  });
});
