/** One thing that may have gone wrong while the views were taken; views by their place in the list, from 0. */
export type Supposition =
  | { readonly kind: 'turn-wrong'; readonly view: number; readonly turnDeg: number }
  | { readonly kind: 'views-swapped'; readonly view: number; readonly other: number }
  | {
      readonly kind: 'pot-moved';
      readonly view: number;
      /** Whether the views after it show the pot moved as well. */
      readonly fromHereOn: boolean;
      /** Further right than it should stand, % of the ball's radius. */
      readonly asidePercent: number;
    };

/** How the views were taken: the azimuth that faces the camera and how far right of its axis the plant stands, one value a view. */
export interface Taking {
  readonly turnsDeg: readonly number[];
  readonly asidePercent: readonly number[];
}

/** Candidates for a wrong turn lie this far apart, and this far at least from the turn as told, degrees. */
const TURN_STEP_DEG = 15;
const LEAST_WRONG_DEG = 30;

/** Everything that may have gone wrong with turns: each view at other turns, and each two views in each other's place. */
export function turnSuppositions(turnsDeg: readonly number[]): Supposition[] {
  return turnsDeg.flatMap((told, view): Supposition[] => {
    const wrong: Supposition[] = [];
    for (let off = LEAST_WRONG_DEG; off <= 360 - LEAST_WRONG_DEG; off += TURN_STEP_DEG) {
      wrong.push({ kind: 'turn-wrong', view, turnDeg: (told + off) % 360 });
    }
    const swapped = turnsDeg.flatMap((turn, other): Supposition[] =>
      other > view && turn !== told ? [{ kind: 'views-swapped', view, other }] : [],
    );
    return [...wrong, ...swapped];
  });
}

/** How the views were taken if the supposition is true. */
export function takingUnder(turnsDeg: readonly number[], supposed: Supposition | null): Taking {
  const turns = [...turnsDeg];
  const aside = turns.map(() => 0);
  switch (supposed?.kind) {
    case undefined:
      break;
    case 'turn-wrong':
      turns[supposed.view] = supposed.turnDeg;
      break;
    case 'views-swapped':
      turns[supposed.view] = turnsDeg[supposed.other] as number;
      turns[supposed.other] = turnsDeg[supposed.view] as number;
      break;
    case 'pot-moved':
      for (const view of movedViews(turns.length, supposed)) aside[view] = supposed.asidePercent;
  }
  return { turnsDeg: turns, asidePercent: aside };
}

/** The views that show the pot moved. */
export function movedViews(
  count: number,
  { view, fromHereOn }: { view: number; fromHereOn: boolean },
): number[] {
  return Array.from({ length: fromHereOn ? count - view : 1 }, (_, k) => view + k);
}
