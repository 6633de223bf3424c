import { describe, expect, it } from 'vitest';
import type { Ball } from '../../core/report.ts';
import { formCircles } from '../../web/src/measures/pictures/form-circles.ts';
import type { Point } from '../../web/src/photo/points.ts';

/** An oval of 1.25 : 1, whose roundness is 80.2 by its formula: the filter passes 98.8 % of two undulations. */
const OVAL: Point[] = Array.from({ length: 720 }, (_, k) => {
  const angle = (k * Math.PI) / 360;
  return [500 + 250 * Math.cos(angle), 400 + 200 * Math.sin(angle)];
});
const BALL = { centrePx: [500, 400], radiusPx: 225 } as unknown as Ball;

describe('the circles that are drawn for roundness', () => {
  it('are those of the score', () => {
    const circles = formCircles(OVAL, BALL, null, 80.2);
    expect(circles?.zone.innerRadius).toBeCloseTo(200.5, 0);
    expect(circles?.zone.outerRadius).toBeCloseTo(250, 0);
    expect(circles?.zone.centre[0]).toBeCloseTo(500, 3);
  });

  it('are not drawn where the outline shown is not the one that was measured', () =>
    expect(formCircles(OVAL, BALL, null, 90)).toBeNull());
});
