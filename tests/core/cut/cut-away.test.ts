import { describe, expect, it } from 'vitest';
import { cutAway, LOBE, type SeenCut } from '../../../core/cut/cut-away.ts';
import { type Mask, maskArea, type PointPx } from '../../../core/raster/raster.ts';
import { readSilhouette, type Silhouette } from '../../../core/silhouette/silhouette.ts';
import { drawMask } from '../drawn-shapes.ts';

const MIDDLE: PointPx = [160, 170];
const RADIUS = 100;
/** What the leaves below a cut still stand out by. */
const LEFT = LOBE.leavesLeft * RADIUS;

/** A disc with bars of the given width: degrees clockwise from the top, and how far each stands out. */
function discWithBars(bars: readonly (readonly [deg: number, excessPx: number])[], widthPx = 24): Mask {
  return drawMask(320, 340, (x, y) => {
    const [dx, dy] = [x - MIDDLE[0], y - MIDDLE[1]];
    const onBar = bars.some(([deg, excessPx]) => {
      const [ux, uy] = outwards(deg);
      const along = dx * ux + dy * uy;
      return along > 0 && along <= RADIUS + excessPx && Math.abs(dx * uy - dy * ux) <= widthPx / 2;
    });
    return onBar || Math.hypot(dx, dy) <= RADIUS;
  });
}

function outwards(deg: number): PointPx {
  const angle = (deg * Math.PI) / 180;
  return [Math.sin(angle), -Math.cos(angle)];
}

function cutAt(deg: number, tipOutPx: number, radiusPx = RADIUS): SeenCut {
  const [ux, uy] = outwards(deg);
  return {
    id: `${deg}`,
    tipPx: [MIDDLE[0] + (RADIUS + tipOutPx) * ux, MIDDLE[1] + (RADIUS + tipOutPx) * uy],
    ball: { centrePx: MIDDLE, radiusPx },
  };
}

function worked(mask: Mask, cuts: readonly SeenCut[], chosen: readonly string[] = cuts.map(({ id }) => id)) {
  return cutAway(mask, (readSilhouette(mask) as Silhouette).loops, cuts, new Set(chosen));
}

/** Pixels that differ. */
function apart(one: Mask, other: Mask): number {
  return one.data.reduce((count, inside, at) => count + Math.abs(inside - (other.data[at] as number)), 0);
}

const DISC = discWithBars([]);

describe('a stem that is cut down to the ball', () => {
  it('leaves the ball and the leaves just below the cut, whichever way it points', () => {
    for (const deg of [0, 37, 90, 181, 270, 359]) {
      const { mask } = worked(discWithBars([[deg, 40]]), [cutAt(deg, 40)]);
      expect(apart(mask, discWithBars([[deg, LEFT]]))).toBeLessThan(30);
    }
  });

  it('goes alone: what else stands out stays', () => {
    const both = discWithBars([
      [0, 40],
      [60, 30],
    ]);
    const { mask, shown } = worked(both, [cutAt(0, 40), cutAt(60, 30)], ['0']);
    expect(
      apart(
        mask,
        discWithBars([
          [0, LEFT],
          [60, 30],
        ]),
      ),
    ).toBeLessThan(30);
    expect([...shown]).toEqual(['0', '60']);
  });

  it('goes only as far as its own tip is nearer where two lobes meet', () => {
    const both = discWithBars([
      [0, 40],
      [16, 40],
    ]);
    const { mask } = worked(both, [cutAt(0, 40), cutAt(16, 40)], ['0']);
    const outside = (one: Mask) =>
      one.data.reduce((count, inside, at) => {
        const away = Math.hypot((at % 320) + 0.5 - MIDDLE[0], Math.floor(at / 320) + 0.5 - MIDDLE[1]);
        return count + (away > RADIUS + LEFT ? inside : 0);
      }, 0);
    const left = outside(mask);
    const bar = outside(discWithBars([[16, 40]]));
    expect(Math.abs(left / bar - 1)).toBeLessThan(0.15);
  });

  it('leaves what stands farther aside than its leaves reach', () => {
    const both = discWithBars([
      [0, 40],
      [44, 25],
    ]);
    const { mask } = worked(both, [cutAt(0, 40)]);
    const bar = maskArea(discWithBars([[44, 25]])) - maskArea(DISC);
    expect(maskArea(mask) - maskArea(DISC)).toBeGreaterThan(0.8 * bar);
  });

  it('is shortened to a ball larger or smaller than the plant', () => {
    const bar = discWithBars([[90, 60]]);
    const longer = worked(bar, [cutAt(90, 60, RADIUS + 20)]).mask;
    expect(apart(longer, discWithBars([[90, 20 + LOBE.leavesLeft * (RADIUS + 20)]]))).toBeLessThan(40);
    const deeper = worked(bar, [cutAt(90, 60, RADIUS - 10)]).mask;
    expect(maskArea(deeper)).toBeLessThan(maskArea(DISC));
  });

  it('that this picture hides inside the ball changes nothing and is not shown', () => {
    const { mask, shown } = worked(DISC, [cutAt(45, -30)]);
    expect(apart(mask, DISC)).toBe(0);
    expect(shown.size).toBe(0);
  });

  it('leaves a taller stem behind it standing', () => {
    const tall = discWithBars([[0, 70]]);
    const { mask } = worked(tall, [cutAt(0, 30)]);
    expect(mask.data[(MIDDLE[1] - RADIUS - 60) * 320 + MIDDLE[0]]).toBe(1);
  });
});
