import { describe, expect, it } from 'vitest';
import { PARTS } from '../../../core/canopy/found-plant.ts';
import { measureFound } from '../../../core/measure-photo.ts';
import type { PhotoFacts } from '../../../core/report-of-measures.ts';
import { disc, drawMask, foundPlant, rim, unsureZone } from '../drawn-shapes.ts';

/** A ball of radius 100 on a rim of 120 px, in a raster of 300 × 300 from a photo twice as large. */
const MASK = drawMask(300, 300, (x, y) => disc([150, 150], 100)(x, y) && y < 230);
const POT = rim(150, 230, 60);
const PHOTO: PhotoFacts = {
  name: 'ball.jpg',
  widthPx: 600,
  heightPx: 600,
  rasterWidthPx: 300,
  rasterHeightPx: 300,
  rimMm: 130,
  turnDeg: 90,
  notes: [],
};

describe('the report of a measured photo', () => {
  const { report, outlinePx, canopy } = measureFound(foundPlant(MASK, POT), PHOTO);

  it('speaks in px of the photo as stored upright', () => {
    expect(report.status).toBe('measured');
    expect(report.hint).toBeNull();
    expect(report.axis?.xPx).toBe(300);
    expect(report.axis?.rimLeftPx).toEqual([180, 460]);
    expect(report.ball?.centrePx[0]).toBeCloseTo(300, 0);
    expect(report.ball?.radiusPx).toBeCloseTo(200, 0);
    expect(report.canopy?.widthPx).toBe(400);
    expect(report.canopy?.heightPx).toBe(360);
    expect(Math.max(...outlinePx.map(([x]) => x))).toBeCloseTo(500, 0);
    expect(canopy).toBe(MASK);
  });

  it('gives mm by the rim', () => {
    // 130 mm over 240 px of the photo.
    expect(report.scale).toEqual({ mmPerPx: 130 / 240, from: 'rim' });
    expect(report.ball?.radiusMm).toBeCloseTo((200 * 130) / 240, 0);
    expect(report.canopy?.widthMm).toBeCloseTo((400 * 130) / 240, 9);
    expect(report.notes).toEqual([]);
  });

  it('has no number that is no number', () => {
    expect(JSON.stringify(report)).not.toContain('NaN');
    expect(JSON.parse(JSON.stringify(report))).toEqual(report);
  });

  it('calls a lean inside its plus-minus even', () => {
    expect(report.lopsidedness?.side).toBe('even');
  });

  it.each([
    ['left', 165],
    ['right', 135],
  ] as const)('calls a lean beyond its plus-minus %s', (side, axisX) => {
    expect(measureFound(foundPlant(MASK, rim(axisX, 230, 60)), PHOTO).report.lopsidedness?.side).toBe(side);
  });

  it('is the same for a photo of any size', () => {
    const small = measureFound(foundPlant(MASK, POT), { ...PHOTO, widthPx: 300, heightPx: 300 }).report;
    expect(small.roundness).toEqual(report.roundness);
    expect(small.symmetry).toEqual(report.symmetry);
    expect(small.lopsidedness).toEqual(report.lopsidedness);
    expect(small.ball?.radiusMm).toBeCloseTo(report.ball?.radiusMm ?? Number.NaN, 9);
  });

  it('draws its outline with no more than 600 points', () => {
    const ragged = drawMask(900, 900, (x, y) => {
      const angle = Math.atan2(y - 450, x - 450);
      return Math.hypot(x - 450, y - 450) < 380 + 40 * Math.sin(60 * angle) * Math.sin(7 * angle);
    });
    const drawn = measureFound(foundPlant(ragged), { ...PHOTO, rasterWidthPx: 900, rasterHeightPx: 900 });
    expect(drawn.outlinePx.length).toBeLessThanOrEqual(600);
    expect(drawn.outlinePx.length).toBeGreaterThan(100);
  });
});

describe('the report of how sure it is', () => {
  const patch = disc([90, 120], 14);
  const zone = unsureZone(
    drawMask(300, 300, (x, y) => patch(x, y)),
    { inCanopy: true, chance: 0.6 },
  );

  it('tells the expected overlap and the zones in px of the photo', () => {
    const { report } = measureFound(foundPlant(MASK, POT, 0.5, { unsureZones: [zone] }), PHOTO);
    expect(report.confidence).toBe(0.98);
    expect(report.unsure).toHaveLength(1);
    const [
      { outlinePx, inCanopy, chance, areaPx } = { outlinePx: [], inCanopy: false, chance: 0, areaPx: 0 },
    ] = report.unsure;
    expect([inCanopy, chance, areaPx]).toEqual([true, 0.6, 4 * zone.areaPx]);
    for (const [x, y] of outlinePx) expect(Math.abs(Math.hypot(x - 180, y - 240) - 28)).toBeLessThan(2);
  });

  it('widens the plus-minus by the zones, not the scores', () => {
    const sure = measureFound(foundPlant(MASK, POT), PHOTO).report;
    const unsure = measureFound(foundPlant(MASK, POT, 0.5, { unsureZones: [zone] }), PHOTO).report;
    expect(unsure.roundness?.score).toBe(sure.roundness?.score);
    expect(unsure.lopsidedness?.plusMinus).toBeGreaterThan(sure.lopsidedness?.plusMinus ?? Number.NaN);
  });

  it('says why, and what would help, when the outline is doubtful', () => {
    const { report } = measureFound(foundPlant(MASK, POT, 0.5, { confidence: 0.82 }), PHOTO);
    expect(report.notes[0]).toMatch(/^The outline is doubtful, about 82 % sure: .*cloth.*empty stand.*light/);
  });

  it('has a plus-minus of the ball’s radius, in mm with the doubt of the rim', () => {
    const pot = { ...POT, rimDoubtPx: 2.4 };
    const { ball } = measureFound(foundPlant(MASK, pot, 1), PHOTO).report;
    // The outline's own doubt of 1 px and the raster's 1 ÷ √12, twice as large in the photo.
    const px = 1.96 * 2 * Math.hypot(1, 1 / Math.sqrt(12));
    // Moving the rim changes the arc that the circle is fitted to, by less than a hundredth of that.
    expect((ball?.radiusPlusMinusPx ?? Number.NaN) / px).toBeCloseTo(1, 2);
    // The rim of 120 px is known to 2 %.
    const mm =
      (130 / 240) * Math.hypot(ball?.radiusPlusMinusPx ?? Number.NaN, 1.96 * 0.02 * (ball?.radiusPx ?? 0));
    expect(ball?.radiusPlusMinusMm).toBeCloseTo(mm, 9);
  });
});

describe('the report of pot and flowers', () => {
  it('has the rim’s ellipse where its opening was seen, and none where it was not', () => {
    const seen = {
      ...POT,
      rim: { centrePx: [150, 230], halfWidthPx: 60, halfHeightPx: 12, heightSeen: true },
    } as const;
    expect(measureFound(foundPlant(MASK, seen), PHOTO).report.axis?.rimEllipse).toEqual({
      centrePx: [300, 460],
      halfWidthPx: 120,
      halfHeightPx: 24,
    });
    expect(measureFound(foundPlant(MASK, POT), PHOTO).report.axis?.rimEllipse).toBeNull();
  });

  it('has the share of flower and the outlines of the parts, in px of the photo', () => {
    const flower = disc([150, 100], 20);
    const data = MASK.data.map((inside, i) => {
      const [x, y] = [(i % 300) + 0.5, Math.floor(i / 300) + 0.5];
      if (inside === 1) return PARTS.indexOf(flower(x, y) ? 'flower' : 'leaf');
      return PARTS.indexOf(y > 230 && Math.abs(x - 150) < 60 ? 'pot' : 'background');
    });
    const found = foundPlant(MASK, POT, 0.5, { parts: { width: 300, height: 300, data } });
    const { report, partsOutlines } = measureFound(found, PHOTO);
    const leafy = MASK.data.reduce((sum, inside) => sum + inside, 0);
    expect(report.canopy?.flowerShare).toBeCloseTo((Math.PI * 20 ** 2) / leafy, 3);
    for (const [x, y] of partsOutlines.flower[0] ?? []) {
      expect(Math.abs(Math.hypot(x - 300, y - 200) - 40)).toBeLessThan(2);
    }
    expect(partsOutlines.pot).toHaveLength(1);
  });
});

describe('the report when something is not known', () => {
  it('has px only without a rim diameter, and says so', () => {
    const { report } = measureFound(foundPlant(MASK, POT), { ...PHOTO, rimMm: null });
    expect(report.scale).toBeNull();
    expect(report.ball?.radiusMm).toBeNull();
    expect(report.ball?.outOfRoundMm).toBeNull();
    expect(report.canopy?.widthMm).toBeNull();
    expect(report.notes).toEqual([
      'The pot rim’s diameter is not known, so sizes are in px; give it to have mm.',
    ]);
  });

  it('has neither axis, scale nor lopsidedness without a pot, and says so', () => {
    const { report } = measureFound(foundPlant(MASK), PHOTO);
    expect(report.axis).toBeNull();
    expect(report.scale).toBeNull();
    expect(report.lopsidedness).toBeNull();
    expect(report.symmetry?.score).toBeGreaterThan(99);
    expect(report.notes).toHaveLength(2);
    expect(report.notes.join(' ')).toContain('No pot rim was found');
  });

  it('passes on what the cut-out has to say', () => {
    const found = { ...foundPlant(MASK, POT), notes: ['The label was cut away.'] };
    expect(measureFound(found, { ...PHOTO, notes: ['First.'] }).report.notes).toEqual([
      'First.',
      'The label was cut away.',
    ]);
  });
});

describe('the report of a photo that cannot be measured', () => {
  it.each(['no-canopy', 'touches-edge', 'two-plants', 'too-dark', 'blurred'] as const)(
    'says %s with its hint and guesses nothing',
    (reason) => {
      const measured = measureFound({ ok: false, reason, hint: 'Do this.', cutOut: null }, PHOTO);
      const { report, canopy, outlinePx, found, partsOutlines } = measured;
      expect(report).toMatchObject({
        status: reason,
        hint: 'Do this.',
        photo: 'ball.jpg',
        widthPx: 600,
        turnDeg: 90,
      });
      expect([report.scale, report.axis, report.canopy, report.ball]).toEqual([null, null, null, null]);
      expect([report.roundness, report.symmetry, report.lopsidedness]).toEqual([null, null, null]);
      expect(report.longStems).toEqual([]);
      expect([report.confidence, report.unsure]).toEqual([null, []]);
      expect([canopy, found, outlinePx]).toEqual([null, null, []]);
      expect(Object.values(partsOutlines)).toEqual([[], [], [], []]);
    },
  );

  it('takes an empty mask for no canopy', () => {
    const { report } = measureFound(foundPlant(drawMask(300, 300, () => false)), PHOTO);
    expect(report.status).toBe('no-canopy');
    expect(report.hint).toBe(
      'No leaf was found in this photo. Stand the plant alone before a plain backdrop and photograph it again.',
    );
  });
});
