import { describe, expect, it } from 'vitest';
import { turnBetween } from '../../../core/turned/circular-statistics.ts';
import { measureTurned } from '../../../core/turned/measure-turned.ts';
import { ball, leafyPlant, movedPlant, photograph, reachOf, sitting } from './leafy-plant.ts';

const CAMERA = { distanceMm: 1500, heightMm: 150 };
const SHOT = { camera: CAMERA, mmPerPx: 2 };
const OPTIONS = { camera: CAMERA, light: null, fixedCamera: true };
const FOUR = [0, 45, 90, 135];
const PLANT = leafyPlant({ seed: 77, radiusMm: 150, lean: 0.1, leanAzimuthDeg: 200, leaves: 120, lobes: 8 });
const VIEWS = sitting(PLANT, FOUR, SHOT);

describe('a turned sitting', () => {
  it('finds the heavy side of a ball off its axis, its radius and its reach', () => {
    const plant = movedPlant(ball(150, [0, 0, 140]), 0, -18);
    const { plan, turn, faults } = measureTurned(sitting(plant, FOUR, SHOT), {
      ...OPTIONS,
      light: { fromCameraDeg: 180, standsAtTurnDeg: 0 },
    });
    expect(Math.abs(turnBetween(plan.lopsidedness?.azimuthDeg ?? 0, 270))).toBeLessThan(3);
    expect(plan.lopsidedness?.percent).toBeCloseTo(12, 0);
    expect(Math.abs((plan.hull?.radiusMm ?? 0) / 150 - 1)).toBeLessThan(0.01);
    expect(plan.hull?.centreMm?.[1]).toBeCloseTo(-18, 0);
    for (const { azimuthDeg, mm } of plan.reach)
      expect(Math.abs((mm ?? 0) - reachOf(plant, azimuthDeg))).toBeLessThan(3);
    expect(Math.abs(turnBetween(turn?.toLightAzimuthDeg ?? 0, 90))).toBeLessThan(5);
    expect(turn?.words).toBe('A quarter turn anticlockwise: bring the 3 o’clock side to the light.');
    expect(faults).toEqual([]);
  });

  it('gives no side to a ball on its axis and says why', () => {
    const { plan, turn, notes } = measureTurned(sitting(ball(150, [0, 0, 140]), FOUR, SHOT), OPTIONS);
    expect(plan.lopsidedness?.even).toBe(true);
    expect(turn).toBeNull();
    expect(notes.join(' ')).toContain('even within its plus-minus');
  });

  it('turns its plan with the plant when the views are relabelled by 45°', () => {
    const plain = measureTurned(VIEWS, OPTIONS).plan;
    const turned = measureTurned(
      VIEWS.map((view) => ({ ...view, turnDeg: view.turnDeg + 45 })),
      OPTIONS,
    ).plan;
    expect(
      turnBetween(plain.lopsidedness?.azimuthDeg ?? 0, turned.lopsidedness?.azimuthDeg ?? 0),
    ).toBeCloseTo(45, 6);
    plain.reach.forEach(({ mm }, k) => {
      expect(turned.reach[(k + 9) % 72]?.mm).toBeCloseTo(mm ?? Number.NaN, 6);
    });
    expect(Math.abs((turned.hull?.volumeMl ?? 0) / (plain.hull?.volumeMl ?? 1) - 1)).toBeLessThan(0.003);
  });

  it('takes two views at one turn, counts them once and says so', () => {
    const [first, , third] = VIEWS as [(typeof VIEWS)[number], unknown, (typeof VIEWS)[number]];
    const { plan, notes } = measureTurned([first, third, first], OPTIONS);
    expect(plan.directions).toBe(2);
    expect(notes.join(' ')).toContain(
      '3 views show 2 directions: views at the same turn show the same and count once.',
    );
  });

  it('does not care for the order of its views', () => {
    const plain = measureTurned(VIEWS, OPTIONS);
    const mixed = measureTurned(
      [2, 0, 3, 1].map((k) => VIEWS[k] as (typeof VIEWS)[number]),
      OPTIONS,
    );
    expect(mixed.plan.lopsidedness?.percent).toBeCloseTo(plain.plan.lopsidedness?.percent ?? Number.NaN, 9);
    expect(mixed.plan.hull?.volumeMl).toBeCloseTo(plain.plan.hull?.volumeMl ?? Number.NaN, 6);
  });

  it('knows no mm and no ml without a scale, but the shares', () => {
    const { plan, notes } = measureTurned(
      VIEWS.map((view) => ({ ...view, mmPerPx: null })),
      OPTIONS,
    );
    expect(plan.hull).toMatchObject({ volumeMl: null, radiusMm: null, outOfRoundMm: null });
    expect(plan.hull?.sphericity).toBeGreaterThan(0.5);
    expect(plan.reach.every(({ mm, percent }) => mm === null && percent > 50)).toBe(true);
    expect(plan.outlineMm).toBeNull();
    expect(notes.join(' ')).toContain('no scale');
  });

  it.each([
    [[], 0],
    [[0], 1],
    [[0, 180], 1],
  ])('from turns %j knows no plan and says what is missing', (turns, directions) => {
    const { plan, turn, notes } = measureTurned(sitting(PLANT, turns, SHOT), OPTIONS);
    expect(plan).toEqual({ directions, reach: [], outlineMm: null, lopsidedness: null, hull: null });
    expect(turn).toBeNull();
    expect(notes.length).toBeGreaterThan(0);
  });

  it('leaves out a view without a turn, and an empty one, and says so', () => {
    const empty = { ...(VIEWS[3] as (typeof VIEWS)[number]) };
    const views = [
      { ...(VIEWS[0] as (typeof VIEWS)[number]), turnDeg: null },
      ...VIEWS.slice(1, 3),
      { ...empty, canopy: { ...empty.canopy, data: new Uint8Array(empty.canopy.data.length) } },
    ];
    const { plan, notes } = measureTurned(views, OPTIONS);
    expect(plan.directions).toBe(2);
    expect(notes).toContain('Left out until its turn is told: view 1.');
    expect(notes).toContain('Left out because it was not measured or its axis cannot be placed: view 4.');
  });

  it('says that opposite views count once', () => {
    const { plan, notes } = measureTurned(sitting(PLANT, [0, 90, 180, 270], SHOT), OPTIONS);
    expect(plan.directions).toBe(2);
    expect(notes[0]).toContain(
      '4 views show 2 directions: opposite views are mirror twins and count once. Turning by 45°',
    );
  });

  it('takes the pot out of the hull but not what it hides', () => {
    const whole = measureTurned(sitting(ball(150, [0, 0, 90]), FOUR, SHOT), OPTIONS).plan.hull;
    const potted = measureTurned(
      sitting(ball(150, [0, 0, 90]), FOUR, { ...SHOT, potHalfWidthMm: 60 }),
      OPTIONS,
    ).plan.hull;
    const hidden = (Math.PI * 60 ** 2 * 48) / 1000;
    const less = (whole?.volumeMl ?? 0) - (potted?.volumeMl ?? 0);
    expect(less).toBeGreaterThan(0.6 * hidden);
    expect(less).toBeLessThan(1.6 * hidden);
    expect(Math.abs((potted?.radiusMm ?? 0) / 150 - 1)).toBeLessThan(0.01);
  });

  it('refuses a camera without a distance', () => {
    expect(() =>
      measureTurned(VIEWS, { ...OPTIONS, camera: { distanceMm: Number.NaN, heightMm: 0 } }),
    ).toThrow('Expected a positive number for camera.distanceMm but received NaN');
  });
});

describe('faults in how a sitting was taken', () => {
  const faultsOf = (views: typeof VIEWS) => measureTurned(views, OPTIONS).faults;
  const first = VIEWS[0] as (typeof VIEWS)[number];

  it('are not seen in a good one', () => {
    expect(faultsOf(VIEWS)).toEqual([]);
  });

  it('names a turn that is 45° off and what fits', () => {
    const [fault] = faultsOf(VIEWS.map((view, k) => (k === 2 ? { ...view, turnDeg: 45 } : view)));
    expect(fault).toMatchObject({ kind: 'turn-wrong', view: 2, from: 'outlines' });
    expect(Math.abs(turnBetween(fault?.fitsTurnDeg ?? 0, 90))).toBeLessThanOrEqual(15);
    expect(fault?.words).toContain('The turn of view 3 is given as 45°');
  });

  it('names two views in each other’s place', () => {
    const [fault] = faultsOf(VIEWS.map((view, k) => ({ ...view, turnDeg: [90, 45, 0, 135][k] as number })));
    expect(fault).toMatchObject({ kind: 'views-swapped', view: 0, otherView: 2 });
    expect(fault?.words).toContain('Views 1 and 3 look swapped');
  });

  it('names a plant that stands 15 mm aside in one view', () => {
    const moved = photograph(PLANT, { ...SHOT, turnDeg: 45, asideMm: 15 });
    const [fault] = faultsOf(VIEWS.map((view, k) => (k === 1 ? moved : view)));
    expect(fault).toMatchObject({ kind: 'pot-moved', view: 1, from: 'outlines' });
    expect(Math.abs((fault?.asideMm ?? 0) - 15)).toBeLessThan(8);
  });

  it('counts views as they were given, also with one left out', () => {
    const views = [
      { ...first, turnDeg: null },
      ...VIEWS.map((view, k) => (k === 2 ? { ...view, turnDeg: 45 } : view)),
    ];
    const [fault] = measureTurned(views, OPTIONS).faults;
    expect(fault?.view).toBe(3);
    expect(fault?.words).toContain('view 4 is given as 45°');
  });

  it('tells a pot set down elsewhere by its rim, and that it does little harm', () => {
    const views = VIEWS.map((view, k) => (k === 2 ? shifted(view, 8) : view));
    const faults = faultsOf(views);
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatchObject({ kind: 'pot-moved', view: 2, from: 'rim' });
    expect(faults[0]?.words).toContain('16 mm further right');
    expect(measureTurned(views, { ...OPTIONS, fixedCamera: false }).faults).toEqual([]);
  });

  it('that a round plant would not give away are owned up to, those of an uneven one need not be', () => {
    const round = measureTurned(sitting(ball(150, [0, 0, 140]), FOUR, SHOT), OPTIONS);
    expect(round.notes.join(' ')).toMatch(/look much the same if .*views? \d/);
    expect(measureTurned(VIEWS, OPTIONS).notes.join(' ')).not.toContain('look much the same');
  });

  it('cannot be judged from two directions, which is said', () => {
    const { faults, notes } = measureTurned(sitting(PLANT, [0, 90], SHOT), OPTIONS);
    expect(faults).toEqual([]);
    expect(notes.join(' ')).toContain('could not be checked');
  });
});

/** The whole picture moved right by some px: plant, pot and axis. */
function shifted<View extends (typeof VIEWS)[number]>(view: View, px: number): View {
  const { width, height, data } = view.canopy;
  const moved = data.map((_, k) => (k % width >= px ? (data[k - px] as number) : 0));
  const potPlace = view.potPlace && { ...view.potPlace, xPx: view.potPlace.xPx + px };
  return { ...view, canopy: { width, height, data: moved }, axisXPx: view.axisXPx + px, potPlace };
}
