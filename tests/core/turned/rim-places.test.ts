import { describe, expect, it } from 'vitest';
import type { Mask } from '../../../core/raster/raster.ts';
import type { PhotoReport } from '../../../core/report.ts';
import { reportWithoutMeasures } from '../../../core/report-of-measures.ts';
import { turnBetween } from '../../../core/turned/circular-statistics.ts';
import { joinViews } from '../../../core/turned/join-views.ts';
import { rimPlaces } from '../../../core/turned/rim-places.ts';
import type { TakenView } from '../../../core/turned/taken-view.ts';

const [WIDTH, HEIGHT] = [400, 300];
const AXIS_PX = 210;
const RIM_Y_PX = 260;
const RADIUS_PX = 80;
const HEAVY = { percent: 15, azimuthDeg: 200 };
const NOTHING = { cameraHeightMm: null, light: null };

/** A ball beside its axis seen from far away, with or without a rim in sight. */
function taken(
  turnDeg: number,
  told: { rim?: boolean; rimAsidePx?: number; ball?: boolean } = {},
): TakenView {
  const away = Math.sin(((HEAVY.azimuthDeg - turnDeg) * Math.PI) / 180);
  const middle = AXIS_PX + (HEAVY.percent / 100) * RADIUS_PX * away;
  const canopy: Mask = { width: WIDTH, height: HEIGHT, data: new Uint8Array(WIDTH * HEIGHT) };
  for (let y = 0; y < HEIGHT; y++)
    for (let x = 0; x < WIDTH; x++)
      if (Math.hypot(x + 0.5 - middle, y + 0.5 - 180) < RADIUS_PX) canopy.data[y * WIDTH + x] = 1;
  const rimPx = AXIS_PX + (told.rimAsidePx ?? 0);
  const report: PhotoReport = {
    ...reportWithoutMeasures(
      {
        name: 'a.jpg',
        widthPx: WIDTH,
        heightPx: HEIGHT,
        rasterWidthPx: WIDTH,
        rasterHeightPx: HEIGHT,
        rimMm: null,
        turnDeg,
        notes: [],
      },
      'no-canopy',
      '',
    ),
    status: 'measured',
    hint: null,
    axis:
      told.rim === false
        ? null
        : {
            xPx: rimPx,
            rimLeftPx: [rimPx - 40, RIM_Y_PX],
            rimRightPx: [rimPx + 40, RIM_Y_PX],
            rimEllipse: null,
          },
    ball:
      told.ball === false
        ? null
        : {
            centrePx: [middle, 180],
            radiusPx: RADIUS_PX,
            radiusMm: null,
            radiusPlusMinusPx: 1,
            radiusPlusMinusMm: null,
            outOfRoundPx: 0,
            outOfRoundMm: null,
            openArcDeg: 300,
          },
    lopsidedness: null,
  };
  return { report, canopy, focalLengthPx: null, cameraDistanceMm: null };
}

const FOUR = [0, 45, 90, 135];

function vectorOf(views: readonly TakenView[]) {
  const { plan, notes } = joinViews(views, NOTHING);
  if (plan.lopsidedness === null) throw new Error(notes.join(' '));
  return { ...plan.lopsidedness, notes: notes.join(' ') };
}

describe('a view that shows no rim', () => {
  it('takes its place from the views that do, with the doubt of a pot set down by hand', () => {
    const places = rimPlaces([taken(0), taken(45, { rim: false }), taken(90)]);
    expect(places[1]).toMatchObject({
      middlePx: [AXIS_PX, RIM_Y_PX],
      halfWidthPx: 40,
      axisFrom: 'other-views',
    });
    expect(places[1]?.doubtPx).toBeCloseTo(2.4, 6);
    expect(places[0]).toMatchObject({ doubtPx: 0, axisFrom: 'rim' });
  });

  it('counts in the vector, with a wider plus-minus, and is named', () => {
    const vector = vectorOf(FOUR.map((turn) => taken(turn, { rim: turn !== 45 })));
    const whole = vectorOf(FOUR.map((turn) => taken(turn)));
    expect(vector.percent).toBeCloseTo(HEAVY.percent, 0);
    expect(Math.abs(turnBetween(vector.azimuthDeg, HEAVY.azimuthDeg))).toBeLessThan(2);
    expect(vector.plusMinus).toBeGreaterThan(whole.plusMinus);
    expect(vector.notes).toContain('takes its place from the other views: view 2.');
  });
});

describe('rims of a camera that stood still', () => {
  const read = (turnDeg: number, halfPx: number, [x, y]: readonly [number, number] = [AXIS_PX, RIM_Y_PX]) => {
    const view = taken(turnDeg);
    const axis = {
      xPx: x,
      rimLeftPx: [x - halfPx, y],
      rimRightPx: [x + halfPx, y],
      rimEllipse: null,
    } as const;
    return {
      ...view,
      report: { ...view.report, axis, scale: { mmPerPx: 65 / halfPx, from: 'rim' as const } },
    };
  };

  it('are as wide and as high in every view, and stand where each was read', () => {
    const places = rimPlaces([read(0, 40), read(45, 38.5, [AXIS_PX + 2, RIM_Y_PX - 3]), read(90, 40)]);
    expect(places[1]?.middlePx).toEqual([AXIS_PX + 2, RIM_Y_PX]);
    for (const place of places) {
      expect(place?.halfWidthPx).toBe(40);
      expect(place?.mmPerPx).toBeCloseTo(65 / 40, 9);
    }
  });

  it('are each their own where the camera was moved between the views', () => {
    const places = rimPlaces([read(0, 40), read(45, 46, [150, 240]), read(90, 52, [260, 270])]);
    expect(places.map((place) => place?.halfWidthPx)).toEqual([40, 46, 52]);
    expect(places.map((place) => place?.middlePx[1])).toEqual([RIM_Y_PX, 240, 270]);
  });
});

describe('views of which most show no rim', () => {
  it('find the axis by themselves from three directions on', () => {
    for (const turns of [FOUR, [0, 45, 90], [0, 60, 120]]) {
      const vector = vectorOf(turns.map((turn) => taken(turn, { rim: false })));
      expect(vector.percent, String(turns)).toBeCloseTo(HEAVY.percent, 0);
      expect(Math.abs(turnBetween(vector.azimuthDeg, HEAVY.azimuthDeg)), String(turns)).toBeLessThan(3);
      expect(vector.notes).toContain('where the views’ middles agree best');
    }
  });

  it('do not follow one misread rim', () => {
    const vector = vectorOf(FOUR.map((turn) => taken(turn, { rim: turn === 0, rimAsidePx: 50 })));
    expect(Math.abs(turnBetween(vector.azimuthDeg, HEAVY.azimuthDeg))).toBeLessThan(3);
  });

  it('are less sure than views with rims, and say so in the plus-minus', () => {
    const blind = vectorOf([0, 45, 90].map((turn) => taken(turn, { rim: false })));
    const seen = vectorOf([0, 45, 90].map((turn) => taken(turn)));
    expect(blind.plusMinus).toBeGreaterThan(2 * seen.plusMinus);
  });

  it('tell nothing from two directions, and what to do', () => {
    const { plan, notes } = joinViews([taken(0, { rim: false }), taken(90, { rim: false })], NOTHING);
    expect(plan.lopsidedness).toBeNull();
    expect(notes.join(' ')).toContain('axis cannot be placed: view 1, 2');
  });
});

describe('views that fix no ball', () => {
  it('use the other views’ ball, and without any the circle as large as the canopy', () => {
    for (const ball of [true, false]) {
      const vector = vectorOf(FOUR.map((turn) => taken(turn, { ball: ball && turn === 0 })));
      expect(vector.percent).toBeCloseTo(HEAVY.percent, 0);
    }
  });
});
