import { describe, expect, it } from 'vitest';
import { measureFound } from '../../../core/measure-photo.ts';
import type { PointPx } from '../../../core/raster/raster.ts';
import type { PhotoFacts } from '../../../core/report-of-measures.ts';
import { homographyOf, inverseOf, similarityAbout } from '../../../core/stand/frame/similarity.ts';
import type { StandReading } from '../../../core/stand/read-stand.ts';
import { ballOutline } from '../../../core/stand/true-scale.ts';
import { uprightView } from '../../../core/stand/upright-view.ts';
import { drawMask, foundPlant, rim } from '../drawn-shapes.ts';

const PHOTO: PhotoFacts = {
  name: 'drawn.jpg',
  widthPx: 1600,
  heightPx: 1200,
  rasterWidthPx: 800,
  rasterHeightPx: 600,
  rimMm: 130,
  turnDeg: 0,
  notes: [],
};
const NOTHING_TOLD: StandReading = {
  frame: null,
  isElsewhere: false,
  sheetScale: null,
  cameraDistanceMm: null,
  focalLengthPx: null,
  greys: null,
  notes: [],
};

function turnedStand(turnDeg: number, changes: Partial<StandReading> = {}, turnDoubtDeg = 0): StandReading {
  const move = inverseOf(similarityAbout([400, 300], { shiftPx: [0, 0], turnDeg, zoom: 1 }));
  const fit = {
    from: 'marks',
    toStand: homographyOf(move),
    shiftPx: [0, 0] as PointPx,
    turnDeg,
    zoom: 1,
    residualPx: 0.1,
    doubt: { shiftPx: 0.1, turnDeg: turnDoubtDeg, zoomShare: 0 },
    standing: 'moved',
  } as const;
  return { ...NOTHING_TOLD, frame: { ok: true, fit, move }, ...changes };
}

/** A lopsided canopy of two balls whose stand is turned by `turnDeg`, clockwise, about the middle. */
function leaningPlant(turnDeg: number) {
  const turn = (turnDeg * Math.PI) / 180;
  const mask = drawMask(800, 600, (x, y) => {
    const [u, v] = [x - 400, y - 300];
    const [right, down] = [Math.cos(turn) * u + Math.sin(turn) * v, -Math.sin(turn) * u + Math.cos(turn) * v];
    return Math.hypot(right, down) < 150 || Math.hypot(right - 60, down + 70) < 110;
  });
  const [x, y] = [400 - Math.sin(turn) * 160, 300 + Math.cos(turn) * 160];
  return foundPlant(mask, rim(x, y, 60));
}

describe('a plant on a stand that the camera sees turned', () => {
  const upright = measureFound(leaningPlant(0), PHOTO).report;

  it.each([3, -3, 5])('by %d° has the scores it has upright', (turnDeg) => {
    const { report } = measureFound(leaningPlant(turnDeg), { ...PHOTO, stand: turnedStand(turnDeg) });
    expect(report.symmetry?.score).toBeCloseTo(upright.symmetry?.score ?? 0, 0);
    expect(Math.abs((report.symmetry?.score ?? 0) - (upright.symmetry?.score ?? 0))).toBeLessThan(0.3);
    expect(Math.abs((report.roundness?.score ?? 0) - (upright.roundness?.score ?? 0))).toBeLessThan(0.3);
    expect(Math.abs((report.lopsidedness?.percent ?? 0) - (upright.lopsidedness?.percent ?? 0))).toBeLessThan(
      0.4,
    );
  });

  it('would score otherwise if the turn were not taken out', () => {
    const { report } = measureFound(leaningPlant(5), PHOTO);
    expect(Math.abs((report.symmetry?.score ?? 0) - (upright.symmetry?.score ?? 0))).toBeGreaterThan(1);
  });

  it('keeps its places in px of the photo as it is', () => {
    const found = leaningPlant(5);
    const { report, outlinePx } = measureFound(found, { ...PHOTO, stand: turnedStand(5) });
    expect(report.axis?.rimLeftPx).toEqual([
      2 * (found.pot?.rimLeftPx[0] ?? 0),
      2 * (found.pot?.rimLeftPx[1] ?? 0),
    ]);
    expect(report.axis?.xPx).toBeCloseTo(2 * (400 - Math.sin((5 * Math.PI) / 180) * 160), 0);
    // The ball lies where the turned canopy lies, not where it would lie upright.
    const turn = (5 * Math.PI) / 180;
    const [centreX, centreY] = upright.ball?.centrePx ?? [0, 0];
    const [u, v] = [centreX - 800, centreY - 600];
    const [x, y] = report.ball?.centrePx ?? [0, 0];
    expect(x - (800 + Math.cos(turn) * u - Math.sin(turn) * v)).toBeLessThan(1.5);
    expect(y - (600 + Math.sin(turn) * u + Math.cos(turn) * v)).toBeLessThan(1.5);
    expect(outlinePx).toEqual(measureFound(found, PHOTO).outlinePx);
  });

  it('says in the report and its notes where the camera stands', () => {
    const { report } = measureFound(leaningPlant(3), { ...PHOTO, stand: turnedStand(3) });
    expect(report.frame?.words).toBe('The camera is tipped by about 3° to the left against the first day.');
    expect(report.notes).toContain(report.frame?.words);
  });
});

describe('the plus-minus of a plant on a stand', () => {
  const doubted = (turnDoubtDeg: number) =>
    measureFound(leaningPlant(3), { ...PHOTO, stand: turnedStand(3, {}, turnDoubtDeg) }).report;

  it('is wider the more doubtful the frame is that it was brought upright by', () => {
    const [sure, unsure] = [doubted(0.02), doubted(0.6)];
    expect(unsure.lopsidedness?.percent).toBe(sure.lopsidedness?.percent);
    expect(unsure.lopsidedness?.plusMinus).toBeGreaterThan(1.3 * (sure.lopsidedness?.plusMinus ?? 0));
    expect(unsure.symmetry?.plusMinus).toBeGreaterThan(1.1 * (sure.symmetry?.plusMinus ?? 0));
  });

  it('is narrower than without a frame, where the camera’s roll is anyone’s guess', () => {
    const loose = measureFound(leaningPlant(3), PHOTO).report;
    expect(doubted(0.02).lopsidedness?.plusMinus).toBeLessThan(loose.lopsidedness?.plusMinus ?? 0);
  });

  it('in mm holds the doubt of the sheet’s scale', () => {
    const byScale = (doubtShare: number) => {
      const sheetScale = { mmPerPx: 0.5, doubt: 0.5 * doubtShare };
      return measureFound(leaningPlant(0), { ...PHOTO, stand: turnedStand(0, { sheetScale }) }).report.ball;
    };
    const [exact, vague] = [byScale(0), byScale(0.02)];
    expect(vague?.radiusPlusMinusPx).toBe(exact?.radiusPlusMinusPx);
    // 2 % of the radius × 1.96, with what the outline adds.
    const ofScaleMm = 1.96 * 0.02 * (exact?.radiusMm ?? 0);
    expect(vague?.radiusPlusMinusMm).toBeCloseTo(Math.hypot(exact?.radiusPlusMinusMm ?? 0, ofScaleMm), 6);
  });
});

describe('nothing known of the stand', () => {
  it('leaves every figure as it is', () => {
    const found = leaningPlant(2);
    const without = measureFound(found, PHOTO).report;
    expect(measureFound(found, { ...PHOTO, stand: null }).report).toEqual(without);
    expect(measureFound(found, { ...PHOTO, stand: NOTHING_TOLD }).report).toEqual(without);
    expect(without.frame).toBeNull();
  });
});

describe('a ball beside the picture’s middle', () => {
  const [focalPx, radiusMm, distanceMm, offAxisDeg] = [1200, 150, 1000, 11];
  const offAxisRad = (offAxisDeg * Math.PI) / 180;
  const { radialPx, acrossPx } = ballOutline({ radiusMm, distanceMm }, offAxisRad, focalPx);
  // The ellipse's middle is not where the ball's middle is seen.
  const half = Math.asin(radiusMm / distanceMm);
  const middlePx = (focalPx * (Math.tan(offAxisRad + half) + Math.tan(offAxisRad - half))) / 2;
  const mask = drawMask(
    1600,
    1200,
    (x, y) => ((x - 800 - middlePx) / radialPx) ** 2 + ((y - 600) / acrossPx) ** 2 <= 1,
  );
  const facts = { ...PHOTO, rasterWidthPx: 1600, rasterHeightPx: 1200 };
  const stand = { ...NOTHING_TOLD, focalLengthPx: focalPx, cameraDistanceMm: distanceMm };

  it('reads round once the focal length is known', () => {
    const asSeen = measureFound(foundPlant(mask), facts).report;
    const corrected = measureFound(foundPlant(mask), { ...facts, stand }).report;
    expect(asSeen.roundness?.score).toBeLessThan(98.5);
    expect(corrected.roundness?.score).toBeGreaterThan(99.4);
  });

  it('has its true radius by the sheet’s scale, with what was corrected in the notes', () => {
    const depthMm = distanceMm * Math.cos(offAxisRad);
    const sheetScale = { mmPerPx: depthMm / focalPx, doubt: 0.002 };
    const { report } = measureFound(foundPlant(mask), { ...facts, stand: { ...stand, sheetScale } });
    expect(Math.abs((report.ball?.radiusMm ?? 0) / radiusMm - 1)).toBeLessThan(0.003);
    expect(report.scale?.from).toBe('sheet');
    expect(report.notes.join()).toMatch(/Sizes in mm are 1\.1 % smaller than the outline reads/);
  });

  it('is brought to and fro without loss', () => {
    const view = uprightView({
      widthPx: 1600,
      heightPx: 1200,
      turnDeg: 4,
      focalLengthPx: focalPx,
      plantPx: [1100, 380],
    });
    const [x, y] = view?.toRaster(view.toUpright([1234, 321])) ?? [0, 0];
    expect(x).toBeCloseTo(1234, 6);
    expect(y).toBeCloseTo(321, 6);
  });
});
