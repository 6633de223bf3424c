import { describe, expect, it } from 'vitest';
import type { View } from '../../../server/schemas/sitting.ts';
import {
  mirrorTwin,
  nextTurnDeg,
  plannedTurns,
  planOfViews,
  turnsForFiles,
} from '../../../web/src/taking/turn-plan.ts';

const view = (id: string, turnDeg: number | null) => ({ id, turnDeg }) as View;
const files = (...names: string[]) => names.map((name) => ({ name }));

describe('the planned turns', () => {
  it('go evenly over half a turn, the mark first', () => {
    expect(plannedTurns(1)).toEqual([0]);
    expect(plannedTurns(2)).toEqual([0, 90]);
    expect(plannedTurns(4)).toEqual([0, 45, 90, 135]);
    expect(plannedTurns(6)).toEqual([0, 30, 60, 90, 120, 150]);
    expect(plannedTurns(8).at(-1)).toBe(157.5);
  });
});

describe('views put to the plan', () => {
  it('fill their turns in any order, also across the seam at 0', () => {
    const { slots, beside } = planOfViews(4, [view('c', 90), view('a', 357), view('b', 44)]);
    expect(slots.map((slot) => slot.view?.id ?? null)).toEqual(['a', 'b', 'c', null]);
    expect(beside).toEqual([]);
  });

  it('are kept beside it when their turn is another, taken twice, or not known', () => {
    const { slots, beside } = planOfViews(2, [
      view('far', 45),
      view('a', 4),
      view('b', 1),
      view('none', null),
    ]);
    expect(slots.map((slot) => slot.view?.id ?? null)).toEqual(['b', null]);
    expect(beside.map(({ id }) => id)).toEqual(['far', 'a', 'none']);
  });

  it('leave the first open turn as the next, those on their way counted', () => {
    const plan = planOfViews(4, [view('a', 0)]);
    expect(nextTurnDeg(plan, [])).toBe(45);
    expect(nextTurnDeg(plan, [45])).toBe(90);
    // One whose turn the collar will tell fills the next open one meanwhile.
    expect(nextTurnDeg(plan, [45, null])).toBe(135);
    expect(nextTurnDeg(plan, [45, 90, 135])).toBeNull();
  });

  it('know a mirror twin', () => {
    const views = [view('a', 0), view('b', 45)];
    expect(mirrorTwin(180, views)?.id).toBe('a');
    expect(mirrorTwin(222, views)?.id).toBe('b');
    expect(mirrorTwin(90, views)).toBeNull();
  });
});

describe('several files at once', () => {
  it('go to the open turns in the order of their names, as cameras count', () => {
    const plan = planOfViews(4, [view('a', 0)]);
    const { ordered, turnsDeg } = turnsForFiles(files('IMG_10.jpg', 'IMG_9.jpg', 'IMG_11.jpg'), plan, {
      firstDeg: null,
      coming: [],
    });
    expect(ordered.map(({ name }) => name)).toEqual(['IMG_9.jpg', 'IMG_10.jpg', 'IMG_11.jpg']);
    expect(turnsDeg).toEqual([45, 90, 135]);
  });

  it('begin at the turn asked for and leave open what is beyond the plan', () => {
    const plan = planOfViews(2, []);
    const { turnsDeg } = turnsForFiles(files('1', '2', '3'), plan, { firstDeg: 90, coming: [] });
    expect(turnsDeg).toEqual([90, 0, null]);
  });
});
