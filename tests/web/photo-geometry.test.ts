import { describe, expect, it } from 'vitest';
import type { PhotoReport } from '../../core/report.ts';
import { benchView } from '../../server/bench/bench-view.ts';
import type { View } from '../../server/schemas/sitting.ts';
import { alignOn } from '../../web/src/photo/alignment.ts';
import { fitAspect, plantCrop } from '../../web/src/photo/crop.ts';

function view(report: Partial<PhotoReport> | null, size = { widthPx: 1600, heightPx: 1200 }): View {
  return {
    id: 'a-view-of-a-test',
    sittingId: 'a-sitting-of-a-test',
    standId: null,
    standVersion: null,
    fileName: 'a.jpg',
    turnDeg: 0,
    turnFrom: null,
    takenAt: null,
    takenFrom: 'exif',
    ...size,
    state: 'measured',
    failure: null,
    methodVersion: '1',
    normalLeafFrom: null,
    rimByHand: null,
    report: report as View['report'],
    outlinePx: [],
    drawing: { unsure: [], parts: { flower: [], pot: [], soil: [], support: [] } },
    strokes: [],
    afterWork: false,
    acceptedOutline: false,
    pictureUrl: '/a',
    maskUrl: null,
  };
}

const axis = (xPx: number, halfRimPx: number, yPx: number): PhotoReport['axis'] => ({
  xPx,
  rimLeftPx: [xPx - halfRimPx, yPx],
  rimRightPx: [xPx + halfRimPx, yPx],
  rimEllipse: null,
});

describe('two photos laid over one another', () => {
  it('meet at the rim with a millimetre the same length in both', () => {
    const under = view({ axis: axis(800, 200, 900), scale: { mmPerPx: 0.5, from: 'rim' } });
    const over = view({ axis: axis(700, 100, 450), scale: { mmPerPx: 1, from: 'rim' } });
    const { scale, shiftX, shiftY, by } = alignOn(under, over);
    expect(by).toBe('scale');
    expect(scale).toBe(2);
    expect(700 * scale + shiftX).toBe(800);
    expect(450 * scale + shiftY).toBe(900);
  });

  it('are brought to one rim width without a scale, and to one frame without a rim', () => {
    const under = view({ axis: axis(800, 200, 900), scale: null });
    expect(alignOn(under, view({ axis: axis(700, 160, 450), scale: null }))).toMatchObject({
      by: 'rim',
      scale: 1.25,
    });
    const other = view(null, { widthPx: 800, heightPx: 600 });
    expect(alignOn(under, other)).toEqual({ scale: 2, shiftX: 0, shiftY: 0, by: 'frame' });
  });
});

describe('the part of a photo that is shown', () => {
  it('is the middle of the photo when nothing was measured', () => {
    expect(plantCrop(view(null), 1)).toEqual({ x: 200, y: 0, width: 1200, height: 1200 });
  });

  it('is the same for the bench, which knows of an outline only how far it reaches', () => {
    const outlinePx = [
      [700, 300],
      [1010, 520],
      [820, 760],
      [540, 610],
    ] as const;
    const whole = { ...view({ longStems: [], ball: null, axis: null }), outlinePx };
    const small = benchView(whole);
    expect(small.outlineCornersPx).toEqual([
      [540, 300],
      [1010, 760],
    ]);
    expect(Object.keys(small)).not.toContain('outlinePx');
    expect(plantCrop(small, 1)).toEqual(plantCrop(whole, 1));
    expect(plantCrop(small, 1)).not.toEqual(plantCrop(view(null), 1));
    expect(plantCrop(benchView(view(null)), 1)).toEqual(plantCrop(view(null), 1));
  });

  it('takes the wanted aspect and stays inside the photo', () => {
    const photo = { x: 0, y: 0, width: 1600, height: 1200 };
    const box = fitAspect({ x: 1500, y: 100, width: 200, height: 400 }, 1, photo);
    expect(box).toEqual({ x: 1200, y: 100, width: 400, height: 400 });
  });
});
