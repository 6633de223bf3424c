import { describe, expect, it } from 'vitest';
import { AT_REST, follow, type PointerStep } from '../../../web/src/mend/pointer-gesture.ts';

type Short = Partial<PointerStep> & Pick<PointerStep, 'what'>;

/** Runs pointer steps and lists what the stage is told to do. */
function acts(steps: readonly Short[], painting = true): string[] {
  let gesture = AT_REST;
  return steps.flatMap((short, index) => {
    const step: PointerStep = {
      id: 1,
      kind: 'touch',
      at: [100, 100],
      atMs: 10_000 + index * 20,
      contactPx: 20,
      moves: false,
      ...short,
    };
    const next = follow(gesture, step, painting);
    gesture = next.gesture;
    return next.acts.map(({ what }) => what);
  });
}

describe('a pointer on the photo', () => {
  it('paints from down to up, by finger, pen and mouse', () => {
    for (const kind of ['touch', 'pen', 'mouse'] as const) {
      expect(
        acts([
          { what: 'down', kind },
          { what: 'move', kind },
          { what: 'up', kind },
        ]),
      ).toEqual(['begin', 'draw', 'finish']);
    }
  });

  it('moves the photo when no brush is in the hand, and by the mouse’s other buttons', () => {
    const drag = [{ what: 'down' }, { what: 'move' }, { what: 'up' }] as const;
    expect(acts(drag, false)).toEqual(['move']);
    expect(acts(drag.map((step) => ({ ...step, kind: 'mouse' as const, moves: true })))).toEqual(['move']);
  });

  it('that the system takes away leaves no stroke', () => {
    expect(acts([{ what: 'down' }, { what: 'move' }, { what: 'cancel' }])).toEqual([
      'begin',
      'draw',
      'abandon',
    ]);
  });
});

describe('a second finger', () => {
  it('on a fresh stroke makes a pinch of the two and leaves no stroke', () => {
    const steps: Short[] = [
      { what: 'down' },
      { what: 'down', id: 2, at: [200, 100] },
      { what: 'move', id: 2, at: [240, 100] },
      { what: 'up', id: 2 },
      { what: 'move', at: [150, 150] },
      { what: 'up' },
    ];
    // The finger that stays moves the photo on and begins no stroke.
    expect(acts(steps)).toEqual(['begin', 'abandon', 'pinch', 'move']);
  });

  it('on a stroke well under way is a resting hand: the stroke goes on', () => {
    const steps: Short[] = [
      { what: 'down', atMs: 0 },
      { what: 'move', at: [180, 100], atMs: 400 },
      { what: 'down', id: 2, at: [200, 400], atMs: 500 },
      { what: 'move', id: 2, at: [210, 400], atMs: 520 },
      { what: 'move', at: [220, 100], atMs: 540 },
      { what: 'up', at: [220, 100], atMs: 560 },
    ];
    expect(acts(steps)).toEqual(['begin', 'draw', 'draw', 'finish']);
  });
});

describe('a resting hand', () => {
  it('is told from a finger by its size', () => {
    expect(acts([{ what: 'down', contactPx: 120 }, { what: 'move' }, { what: 'up' }])).toEqual([]);
  });

  it('does not paint while a pen is in use, nor just after', () => {
    const steps: Short[] = [
      { what: 'down', kind: 'pen', atMs: 0 },
      { what: 'down', id: 2, atMs: 50 },
      { what: 'move', kind: 'pen', atMs: 100 },
      { what: 'up', kind: 'pen', atMs: 200 },
      { what: 'down', id: 3, atMs: 500 },
    ];
    expect(acts(steps)).toEqual(['begin', 'draw', 'finish']);
  });

  it('that came down before its pen gives way to it', () => {
    const steps: Short[] = [
      { what: 'down', atMs: 0 },
      { what: 'down', id: 2, kind: 'pen', atMs: 100 },
      { what: 'move', atMs: 120 },
      { what: 'up', id: 2, kind: 'pen', atMs: 200 },
    ];
    expect(acts(steps)).toEqual(['begin', 'abandon', 'begin', 'finish']);
  });
});
