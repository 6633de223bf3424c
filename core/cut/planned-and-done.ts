import { expectation } from '../errors/expect.ts';
import type { Cut } from './cut.ts';

/** Cuts of one sitting with the middle of its ball: mm on the plant, or photo px. */
export interface CutsOfSitting {
  readonly cuts: readonly Cut[];
  readonly centre: readonly number[];
}

/** A planned cut whose stem still stands out later. */
export interface StillStanding {
  readonly cutId: string;
  readonly clock: number | null;
  /** How far it stands out now; `null` without a scale. */
  readonly standsOutMm: number | null;
  /** The same, % of the ball's radius. */
  readonly standsOutPercent: number;
}

/**
 * A stem of a later sitting that points within this of a planned one is taken to be the same, degrees seen from the ball's middle. Our own choice: a
 * stem leans a little and rims are read anew, while long stems of one plant seldom stand so close.
 */
const SAME_STEM_DEG = 20;

/**
 * Which of the planned cuts were not carried out, by what a later sitting still shows.
 *
 * @param planned cuts that were to be made, with the ball's middle then
 * @param later the later sitting's list evened up to its own ball, with its ball's middle; in the same space as `planned`: both on
 * the plant, or both in photos of the same turn
 * @returns the planned cuts whose stems still stand out, in the order planned
 *
 * Notes: a stem that was cut and has grown out again reads as not cut; so compare within two weeks.
 *
 * Example: of tips planned at 3 and 9 o'clock, a later list with one at 3 leaves that one standing.
 */
export function stillStanding(planned: CutsOfSitting, later: CutsOfSitting): StillStanding[] {
  const pairs = planned.cuts
    .flatMap((cut) =>
      later.cuts.map((now) => ({
        cut,
        now,
        apartDeg: angleDeg(outwards(cut, planned.centre), outwards(now, later.centre)),
      })),
    )
    .filter(({ apartDeg }) => apartDeg <= SAME_STEM_DEG)
    .sort((a, b) => a.apartDeg - b.apartDeg);
  // The nearest pairs first, each stem once.
  const found = new Map<Cut, Cut>();
  const taken = new Set<Cut>();
  for (const { cut, now } of pairs) {
    if (found.has(cut) || taken.has(now)) continue;
    found.set(cut, now);
    taken.add(now);
  }
  return planned.cuts.flatMap((cut) => {
    const now = found.get(cut);
    if (now === undefined) return [];
    return [
      {
        cutId: cut.id,
        clock: cut.clockFromAbove ?? cut.clockInPhoto,
        standsOutMm: now.takeOffMm,
        standsOutPercent: now.takeOffPercent,
      },
    ];
  });
}

/** Planned and done as a grower would say it; `plannedCuts` at least 1. */
export function plannedAndDoneWords(plannedCuts: number, standing: readonly StillStanding[]): string {
  const gone = plannedCuts - standing.length;
  if (standing.length === 0)
    return plannedCuts === 1 ? 'The tip is gone.' : `All ${plannedCuts} tips are gone.`;
  const counted =
    plannedCuts === 1
      ? 'The tip is not gone'
      : `${gone} of ${plannedCuts} tips ${gone === 1 ? 'is' : 'are'} gone`;
  return `${counted}; ${standing.map(inWords).join(', ')}.`;
}

function inWords({ clock, standsOutMm, standsOutPercent }: StillStanding): string {
  const howFar =
    standsOutMm === null
      ? `out by ${Math.round(standsOutPercent)} % of the ball’s radius`
      : `${Math.round(standsOutMm)} mm out`;
  return `the one${clock === null ? '' : ` at ${clock} o’clock`} still stands ${howFar}`;
}

function outwards({ tipMm, tipPx }: Cut, centre: readonly number[]): number[] {
  return [...(tipMm ?? tipPx ?? [])].map((at, k) => at - (centre[k] as number));
}

function angleDeg(one: readonly number[], other: readonly number[]): number {
  if (one.length !== other.length)
    throw new RangeError(expectation('the space of the planned cuts', 'later', other.length));
  const cos =
    one.reduce((sum, at, k) => sum + at * (other[k] as number), 0) /
    (Math.hypot(...one) * Math.hypot(...other));
  return (180 / Math.PI) * Math.acos(Math.max(-1, Math.min(1, cos)));
}
