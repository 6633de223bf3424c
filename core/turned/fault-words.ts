import { turnBetween } from './circular-statistics.ts';
import type { PotDrift } from './pot-drift.ts';
import type { Supposition } from './supposition.ts';
import type { PlanUnit } from './turned-view.ts';

/** Something wrong with how the views were taken; views by their place in the list, from 0. */
export interface TurnedFault {
  readonly kind: 'turn-wrong' | 'views-swapped' | 'pot-moved';
  readonly view: number;
  /** The view it was swapped with; `null` otherwise. */
  readonly otherView: number | null;
  /** The turn that fits, degrees; `null` otherwise. */
  readonly fitsTurnDeg: number | null;
  /** How far right of its place the plant stands, mm; `null` otherwise or without a scale. */
  readonly asideMm: number | null;
  /** Told by the outlines, by where the rim stands, or by the turn collar. */
  readonly from: 'outlines' | 'rim' | 'collar';
  readonly words: string;
}

/** A fault told by the outlines, in words, with what else it may be. */
export function outlineFault(
  supposed: Supposition,
  orElse: readonly Supposition[],
  { turnsDeg, ballRadius, unit }: { turnsDeg: readonly number[]; ballRadius: number; unit: PlanUnit },
): TurnedFault {
  const doubt =
    orElse.length === 0
      ? ''
      : ` It may also be that ${orElse.map((one) => guess(one, turnsDeg)).join(', or that ')}: the outlines alone cannot tell.`;
  const common = {
    view: supposed.view,
    otherView: null,
    fitsTurnDeg: null,
    asideMm: null,
    from: 'outlines',
  } as const;
  switch (supposed.kind) {
    case 'turn-wrong': {
      const told = turnsDeg[supposed.view] as number;
      const off = Math.abs(turnBetween(told, supposed.turnDeg));
      return {
        ...common,
        kind: 'turn-wrong',
        fitsTurnDeg: supposed.turnDeg,
        words: `The turn of view ${supposed.view + 1} is given as ${degrees(told)}, but its outline fits the others at ${degrees(supposed.turnDeg)} (${degrees(off)} off). Correct its turn or photograph it again.${doubt}`,
      };
    }
    case 'views-swapped':
      return {
        ...common,
        kind: 'views-swapped',
        otherView: supposed.other,
        words: `Views ${supposed.view + 1} and ${supposed.other + 1} look swapped: each outline fits at the other’s turn. Swap their turns.${doubt}`,
      };
    case 'pot-moved': {
      const aside = (supposed.asidePercent * ballRadius) / 100;
      const way = aside > 0 ? 'right' : 'left';
      const amount =
        unit === 'mm'
          ? `about ${Math.round(Math.abs(aside))} mm`
          : `about ${Math.round(Math.abs(supposed.asidePercent))} % of its radius`;
      const from = supposed.fromHereOn ? `From view ${supposed.view + 1} on` : `In view ${supposed.view + 1}`;
      return {
        ...common,
        kind: 'pot-moved',
        asideMm: unit === 'mm' ? aside : null,
        words: `${from} the plant stands ${amount} further ${way} of its axis than the other outlines allow: the pot was moved or its rim is misread. Check the rim, or photograph it again.${doubt}`,
      };
    }
  }
}

/** A fault told by the rim. */
export function driftFault({ view, asideMm }: PotDrift): TurnedFault {
  return {
    kind: 'pot-moved',
    view,
    otherView: null,
    fitsTurnDeg: null,
    asideMm,
    from: 'rim',
    words: `In view ${view + 1} the pot stands ${Math.round(Math.abs(asideMm))} mm further ${asideMm > 0 ? 'right' : 'left'} than in the other views. It is measured about its own rim, so little is lost; set it back in its place.`,
  };
}

/** A supposition as the end of a sentence: "views 2 and 3 are swapped". */
export function guess(supposed: Supposition, turnsDeg: readonly number[]): string {
  switch (supposed.kind) {
    case 'turn-wrong':
      return `view ${supposed.view + 1} was taken at ${degrees(supposed.turnDeg)} instead of ${degrees(turnsDeg[supposed.view] as number)}`;
    case 'views-swapped':
      return `views ${supposed.view + 1} and ${supposed.other + 1} are swapped`;
    case 'pot-moved':
      return supposed.fromHereOn
        ? `the pot was moved before view ${supposed.view + 1}`
        : `the pot was moved for view ${supposed.view + 1}`;
  }
}

function degrees(deg: number): string {
  return `${Math.round(deg)}°`;
}
