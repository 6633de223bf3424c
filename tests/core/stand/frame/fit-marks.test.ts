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
const SIZE = { width: 1600, height: 1200 };
const asTheyAre = (point: PointPx) => point;

describe('a frame by ring marks', () => {
  let door: OpenCvDoor;
  beforeAll(async () => {
    door = await openOpenCv();
  });

  it('is the move between the marks of the same name, whatever their order', () => {
    const move = similarityAbout([800, 600], { shiftPx: [25, -30], turnDeg: 2.5, zoom: 1.04 });
    const photo = marks((point) => moved(move, point)).reverse();
    const fit = fitMarks(door, photo, marks(asTheyAre, 4), SIZE);
    const back = inverseOf(move);
    expect(fit?.move.a).toBeCloseTo(back.a, 9);
    expect(fit?.move.shiftX).toBeCloseTo(back.shiftX, 6);
    expect(fit?.residualPx).toBeLessThan(1e-6);
  });

  it('is a similarity though four marks miss by what they are unsure of', () => {
    const shaken = (point: PointPx): PointPx => [point[0] + (point[1] > 300 ? 0.1 : -0.1), point[1]];
    const fit = fitMarks(door, marks(shaken), marks(asTheyAre), SIZE);
    expect(fit?.toStand.slice(6)).toEqual([0, 0, 1]);
  });

  it('is a homography when the marks show the sheet from another angle', () => {
    const tilted = [1.02, 0.01, -8, -0.01, 1, 4, 6e-5, -4e-5, 1] as const;
    const fit = fitMarks(
      door,
      marks(asTheyAre),
      marks((point) => applyHomography(tilted, point)),
      SIZE,
    );
    const [x, y] = applyHomography(fit?.toStand ?? [1, 0, 0, 0, 1, 0, 0, 0, 1], [900, 700]);
    const [trueX, trueY] = applyHomography(tilted, [900, 700]);
    expect(Math.hypot(x - trueX, y - trueY)).toBeLessThan(0.2);
  });

  it('is as doubtful as the marks say, and more so when they do not fit', () => {
    const sure = fitMarks(door, marks(asTheyAre), marks(asTheyAre), SIZE)?.doubt;
    const vague = fitMarks(door, marks(asTheyAre, 5, 0.5), marks(asTheyAre, 5, 0.5), SIZE)?.doubt;
    expect((vague?.turnDeg ?? 0) / (sure?.turnDeg ?? 1)).toBeCloseTo(10, 6);
    // One mark is 2 px off, whatever it says of itself.
    const oneOff = (point: PointPx): PointPx => (point[1] === 340 ? [point[0] + 2, point[1]] : point);
    const strained = fitMarks(door, marks(oneOff), marks(asTheyAre), SIZE)?.doubt;
    expect(strained?.turnDeg ?? 0).toBeGreaterThan(5 * (sure?.turnDeg ?? 1));
  });

  it('by two marks rests on what they say of themselves', () => {
    const doubt = fitMarks(door, marks(asTheyAre, 2), marks(asTheyAre, 2), SIZE)?.doubt;
    // Each coordinate of a pair is good to √2 · 0.05 px; 140 px either side of their middle.
    const turnRad = (Math.SQRT2 * 0.05) / (Math.SQRT2 * 140);
    expect(doubt?.turnDeg).toBeCloseTo((turnRad * 180) / Math.PI, 9);
    expect(doubt?.zoomShare).toBeCloseTo(turnRad, 9);
  });

  it('is not known from one mark, from marks of other names, or from two that stand together', () => {
    expect(fitMarks(door, marks(asTheyAre, 1), marks(asTheyAre), SIZE)).toBeNull();
    const others = marks(asTheyAre).map((mark) => ({ ...mark, id: `other-${mark.id}` }));
    expect(fitMarks(door, marks(asTheyAre), others, SIZE)).toBeNull();
    const close = marks(([x, y]) => [x / 50, y / 50], 2);
    expect(fitMarks(door, close, close, SIZE)).toBeNull();
  });
});
