import { describe, expect, it } from 'vitest';
import type { PointPx } from '../../../../core/raster/raster.ts';
import { standNotes, whyNotCompared } from '../../../../core/stand/frame/frame-in-report.ts';
import { ELSEWHERE_NOTE, FAR_NOTE } from '../../../../core/stand/frame/frame-words.ts';
import { standingOf } from '../../../../core/stand/frame/limits.ts';
import { homographyOf, inverseOf, similarityAbout } from '../../../../core/stand/frame/similarity.ts';
import type { StandReading } from '../../../../core/stand/read-stand.ts';

const NOTHING_TOLD: StandReading = {
  frame: null,
  isElsewhere: false,
  sheetScale: null,
  cameraDistanceMm: null,
  focalLengthPx: null,
  greys: null,
  notes: [],
};

function photoOn(stand: Partial<StandReading> | null) {
  return {
    name: 'a.jpg',
    widthPx: 1600,
    heightPx: 1200,
    rasterWidthPx: 1600,
    rasterHeightPx: 1200,
    rimMm: 130,
    turnDeg: 0,
    stand: stand === null ? null : { ...NOTHING_TOLD, ...stand },
    notes: [],
  };
}

function shiftedBy(rightPx: number): Partial<StandReading> {
  const shiftPx: PointPx = [rightPx, 0];
  const move = inverseOf(similarityAbout([800, 600], { shiftPx, turnDeg: 0, zoom: 1 }));
  const standing = standingOf({ shiftShare: rightPx / 1600, turnDeg: 0, zoom: 1 });
  const fit = {
    from: 'marks',
    toStand: homographyOf(move),
    shiftPx,
    turnDeg: 0,
    zoom: 1,
    residualPx: 0,
    doubt: { shiftPx: 0, turnDeg: 0, zoomShare: 0 },
    standing,
  } as const;
  return { frame: { ok: true, fit, move } };
}

describe('the scores of a photo', () => {
  it.each([0, 40, 79])('taken %d px aside may be compared', (rightPx) => {
    expect(whyNotCompared(photoOn(shiftedBy(rightPx)), 0.5)).toBeNull();
  });

  it('taken from too far off are not compared, and the reason says where the camera stands and what to do', () => {
    const photo = photoOn(shiftedBy(120));
    expect(whyNotCompared(photo, 0.5)).toBe(
      `The camera stands about 6 cm further left than on the first day. ${FAR_NOTE}`,
    );
    expect(standNotes(photo, 0.5)).toContain(FAR_NOTE);
  });

  it('of another place are not compared', () => {
    expect(whyNotCompared(photoOn({ isElsewhere: true }), null)).toBe(ELSEWHERE_NOTE);
  });

  it('may be compared where nothing tells how the camera stands', () => {
    expect(whyNotCompared(photoOn({}), null)).toBeNull();
    expect(whyNotCompared(photoOn(null), null)).toBeNull();
  });
});
