import { describe, expect, it } from 'vitest';
import type { TurnedFault } from '../../../core/turned/fault-words.ts';
import type { View } from '../../../server/schemas/sitting.ts';
import { repairOf } from '../../../web/src/plan/repair.ts';

const VIEWS = [0, 45, 90].map((turnDeg, k) => ({ id: `view-${k}`, turnDeg }) as View);
const FAULT: TurnedFault = {
  kind: 'turn-wrong',
  view: 1,
  otherView: null,
  fitsTurnDeg: 134.6,
  asideMm: null,
  from: 'outlines',
  words: '',
};

describe('the repair of a fault', () => {
  it('sets a wrong turn to the one that fits', () => {
    expect(repairOf(FAULT, VIEWS)).toMatchObject({
      words: 'Set view 2 to 135°',
      changes: [{ viewId: 'view-1', turnDeg: 135 }],
    });
    expect(repairOf({ ...FAULT, fitsTurnDeg: 359.8 }, VIEWS)?.changes[0]?.turnDeg).toBe(0);
  });

  it('swaps the turns of two views', () => {
    const swapped: TurnedFault = {
      ...FAULT,
      kind: 'views-swapped',
      view: 0,
      otherView: 2,
      fitsTurnDeg: null,
    };
    expect(repairOf(swapped, VIEWS)).toMatchObject({
      words: 'Swap the turns of views 1 and 3',
      changes: [
        { viewId: 'view-0', turnDeg: 90 },
        { viewId: 'view-2', turnDeg: 0 },
      ],
    });
  });

  it('is none where only another photo helps, or where the view has gone', () => {
    expect(repairOf({ ...FAULT, kind: 'pot-moved' }, VIEWS)).toBeNull();
    expect(repairOf({ ...FAULT, fitsTurnDeg: null }, VIEWS)).toBeNull();
    expect(repairOf({ ...FAULT, view: 7 }, VIEWS)).toBeNull();
  });
});
