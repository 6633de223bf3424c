import { measureFound } from '../../core/measure-photo.ts';
import type { PointPx } from '../../core/raster/raster.ts';
import type { Exhibit } from './measure-sample.ts';

/**
 * A measured exhibit with one of everything that can be drawn added where its photo may lack it, so that no layer's
 * test hangs on what the cut-out happens to find in a sample.
 */
export function withEverything(exhibit: Exhibit): Exhibit {
  const { report, partsOutlines } = exhibit.measured;
  const { ball, axis } = report;
  if (ball === null || axis === null)
    throw new RangeError('Expected a measured photo with a ball and an axis');
  const [x, y] = ball.centrePx;
  const square: PointPx[] = [
    [x, y],
    [x + 40, y],
    [x + 40, y + 40],
    [x, y + 40],
  ];
  return {
    ...exhibit,
    measured: {
      ...exhibit.measured,
      partsOutlines: { ...partsOutlines, flower: [square], soil: [square], support: [square], pot: [square] },
      report: {
        ...report,
        axis: { ...axis, rimEllipse: { centrePx: [x, y + 60], halfWidthPx: 50, halfHeightPx: 9 } },
        lopsidedness: { percent: 9.04, plusMinus: 2.5, side: 'right' },
        unsure: [{ outlinePx: square, inCanopy: true, chance: 0.6, areaPx: 1600 }],
        longStems: [
          {
            tipPx: [x + ball.radiusPx + 70, y],
            cutPx: [x + ball.radiusPx, y],
            excessPx: 70,
            excessMm: null,
            clock: 3,
            kind: 'shoot',
          },
        ],
        notes: ['Leaves < 3 & "more" hide the rim.'],
      },
    },
  };
}

/** The same photo as one that could not be measured. */
export function asRefused(exhibit: Exhibit, hint: string): Exhibit {
  const { photo: upright, sample } = exhibit;
  const measured = measureFound(
    { ok: false, reason: 'too-dark', hint, cutOut: null },
    {
      name: sample.file,
      widthPx: upright.widthPx,
      heightPx: upright.heightPx,
      rasterWidthPx: upright.raster.width,
      rasterHeightPx: upright.raster.height,
      rimMm: sample.plant.rimMm,
      turnDeg: sample.turnDeg,
      notes: [],
    },
  );
  return { ...exhibit, measured, form: null, truth: null, overlap: null };
}
