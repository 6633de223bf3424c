import { beforeAll, describe, expect, it } from 'vitest';
import { type OpenCvDoor, openOpenCv } from '../../../../core/opencv/door.ts';
import type { PointPx } from '../../../../core/raster/raster.ts';
import { fitMarks } from '../../../../core/stand/frame/fit-marks.ts';
import { applyHomography } from '../../../../core/stand/frame/homography.ts';
import { inverseOf, moved, similarityAbout } from '../../../../core/stand/frame/similarity.ts';

const PLACES: readonly PointPx[] = [
  [200, 150],
  [480, 150],
  [480, 340],
  [200, 540],
  [480, 540],
];
const marks = (place: (point: PointPx) => PointPx, count = PLACES.length, doubtPx = 0.05) =>
  PLACES.slice(0, count).map((point, k) => ({ id: `mark-${k}`, centrePx: place(point), doubtPx }));
const asTheyAre = (point: PointPx) => point;

describe('a frame by ring marks', () => {
  let door: OpenCvDoor;
  beforeAll(async () => {
    door = await openOpenCv();
  });

  it('is the move between the marks of the same name, whatever their order', () => {
    const move = similarityAbout([800, 600], { shiftPx: [25, -30], turnDeg: 2.5, zoom: 1.04 });
    const photo = marks((point) => moved(move, point)).reverse();
    const fit = fitMarks(door, photo, marks(asTheyAre, 4));
    const back = inverseOf(move);
    expect(fit?.move.a).toBeCloseTo(back.a, 9);
    expect(fit?.move.shiftX).toBeCloseTo(back.shiftX, 6);
    expect(fit?.residualPx).toBeLessThan(1e-6);
  });

  it('is a similarity though four marks miss by what they are unsure of', () => {
    const shaken = (point: PointPx): PointPx => [point[0] + (point[1] > 300 ? 0.1 : -0.1), point[1]];
    const fit = fitMarks(door, marks(shaken), marks(asTheyAre));
    expect(fit?.toStand.slice(6)).toEqual([0, 0, 1]);
  });

  it('is a homography when the marks show the sheet from another angle', () => {
    const tilted = [1.02, 0.01, -8, -0.01, 1, 4, 6e-5, -4e-5, 1] as const;
    const fit = fitMarks(
      door,
      marks(asTheyAre),
      marks((point) => applyHomography(tilted, point)),
    );
    const [x, y] = applyHomography(fit?.toStand ?? [1, 0, 0, 0, 1, 0, 0, 0, 1], [900, 700]);
    const [trueX, trueY] = applyHomography(tilted, [900, 700]);
    expect(Math.hypot(x - trueX, y - trueY)).toBeLessThan(0.2);
  });

  it('is not known from one mark, from marks of other names, or from two that stand together', () => {
    expect(fitMarks(door, marks(asTheyAre, 1), marks(asTheyAre))).toBeNull();
    const others = marks(asTheyAre).map((mark) => ({ ...mark, id: `other-${mark.id}` }));
    expect(fitMarks(door, marks(asTheyAre), others)).toBeNull();
    const close = marks(([x, y]) => [x / 50, y / 50], 2);
    expect(fitMarks(door, close, close)).toBeNull();
  });
});
