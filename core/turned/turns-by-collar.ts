import { circularSummary, turnBetween, wholeTurn } from './circular-statistics.ts';
import type { TurnedFault } from './fault-words.ts';
import type { TakenView } from './taken-view.ts';

/** A turn told this far from the collar's is probably a slip, degrees; past twice the collar's own plus-minus where that is more. */
const SLIP_DEG = 15;
/** Views from which a collar that was put on askew can be told from turns that were told wrong. */
const VIEWS_FOR_ASKEW = 3;

/** The views with the turn that their collar tells where nobody else did. */
export function withCollarTurns(taken: readonly TakenView[]): TakenView[] {
  return taken.map((view) => {
    const turnDeg = view.report.turnDeg ?? view.report.collar?.turnDeg ?? null;
    return { ...view, report: { ...view.report, turnDeg } };
  });
}

/** What the collar says against the turns as told. */
export interface CollarVerdict {
  readonly faults: readonly TurnedFault[];
  readonly notes: readonly string[];
}

/**
 * Compares the turns as told with those that the collar shows.
 *
 * @param taken views in the order of the list, before the collar's turns were filled in
 *
 * How: a collar that was put on askew is off by the same in all views. So from three views on what all share is taken off first and told once; what a
 * view is off beyond that is a turn told wrong.
 */
export function turnsAgainstCollar(taken: readonly TakenView[]): CollarVerdict {
  const compared = taken.flatMap(({ report: { turnDeg, collar } }, view) =>
    turnDeg === null || collar === null ? [] : [{ view, told: turnDeg, ...collar }],
  );
  const askewDeg = askewOf(compared.map(({ told, turnDeg }) => turnBetween(told, turnDeg)));
  const faults = compared
    .map((one) => ({ ...one, fits: wholeTurn(one.turnDeg - askewDeg) }))
    .filter(
      ({ told, fits, plusMinusDeg }) =>
        Math.abs(turnBetween(told, fits)) > Math.max(SLIP_DEG, 2 * plusMinusDeg),
    )
    .map(({ view, told, fits }) => collarFault(view, told, fits));
  const notes =
    Math.abs(askewDeg) > SLIP_DEG
      ? [
          `The turn collar shows turns that are ${Math.round(Math.abs(askewDeg))}° ${askewDeg > 0 ? 'more' : 'less'} than told in all views: it sits askew on the rim. Turn it until its mark is at the mark of the pot.`,
        ]
      : [];
  return { faults, notes };
}

/** What most views are off by: a single wrong turn does not move it. */
function askewOf(offDeg: readonly number[]): number {
  if (offDeg.length < VIEWS_FOR_ASKEW) return 0;
  const together = offDeg.map((one) =>
    offDeg.filter((other) => Math.abs(turnBetween(one, other)) <= SLIP_DEG),
  );
  const most = together.reduce((one, other) => (other.length > one.length ? other : one));
  return 2 * most.length > offDeg.length ? turnBetween(0, circularSummary(most).meanDeg ?? 0) : 0;
}

function collarFault(view: number, told: number, fits: number): TurnedFault {
  return {
    kind: 'turn-wrong',
    view,
    otherView: null,
    fitsTurnDeg: Math.round(fits) % 360,
    asideMm: null,
    from: 'collar',
    words: `The turn of view ${view + 1} is given as ${Math.round(told)}°, but the turn collar in it shows ${Math.round(fits) % 360}°. Correct its turn, or put the collar straight.`,
  };
}
