import { describe, expect, it } from 'vitest';
import { NO_MEASURES } from '../../../core/report.ts';
import type { TakenView } from '../../../core/turned/taken-view.ts';
import { turnsAgainstCollar, withCollarTurns } from '../../../core/turned/turns-by-collar.ts';

/** A view with a turn as told and one as its collar shows; `null` for none. */
function view(told: number | null, shown: number | null, plusMinusDeg = 2): TakenView {
  return {
    report: {
      photo: 'a.jpg',
      widthPx: 1600,
      heightPx: 1200,
      turnDeg: told,
      status: 'measured',
      hint: null,
      ...NO_MEASURES,
      collar: shown === null ? null : { turnDeg: shown, plusMinusDeg, marks: 9 },
      notes: [],
    },
    canopy: null,
    focalLengthPx: null,
    cameraDistanceMm: null,
  };
}

const turns = (views: readonly TakenView[]) => views.map(({ report }) => report.turnDeg);

describe('the turn collar of a sitting', () => {
  it('tells the turns that nobody told, and leaves the others', () => {
    expect(turns(withCollarTurns([view(null, 44), view(90, 92), view(null, null)]))).toEqual([44, 90, null]);
  });

  it('says nothing of turns that are told within 15°', () => {
    expect(turnsAgainstCollar([view(0, 358), view(45, 52), view(90, null), view(null, 140)])).toEqual({
      faults: [],
      notes: [],
    });
  });

  it('names the view whose turn is told wrong, and the turn that it shows', () => {
    const { faults } = turnsAgainstCollar([view(0, 1), view(45, 89), view(90, 91), view(135, 136)]);
    expect(faults).toMatchObject([{ kind: 'turn-wrong', view: 1, fitsTurnDeg: 88, from: 'collar' }]);
    expect(faults[0]?.words).toBe(
      'The turn of view 2 is given as 45°, but the turn collar in it shows 88°. Correct its turn, or put the collar straight.',
    );
  });

  it('names two views that were swapped, each with its turn', () => {
    const { faults } = turnsAgainstCollar([view(0, 0), view(90, 45), view(45, 90), view(135, 135)]);
    expect(faults.map(({ view: place, fitsTurnDeg }) => [place, fitsTurnDeg])).toEqual([
      [1, 45],
      [2, 90],
    ]);
  });

  it('that sits askew is told of once, not in every view', () => {
    const { faults, notes } = turnsAgainstCollar([0, 45, 90, 135].map((turn) => view(turn, turn + 20)));
    expect(faults).toEqual([]);
    expect(notes).toEqual([
      'The turn collar shows turns that are 20° more than told in all views: it sits askew on the rim. Turn it until its mark is at the mark of the pot.',
    ]);
  });

  it('that is read poorly must be farther off to speak', () => {
    expect(turnsAgainstCollar([view(0, 20, 12)]).faults).toEqual([]);
    expect(turnsAgainstCollar([view(0, 20, 2)]).faults).toHaveLength(1);
  });
});
