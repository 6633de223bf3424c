import { degOf, radOf, turnBetween, wholeTurn } from './circular-statistics.ts';
import { dotProduct, factorCovariance, solveCovariance } from './covariance.ts';

/** What one view says: how far its silhouette's middle stands beside the axis. */
export interface ViewOffset {
  /** Azimuth that faces the camera, degrees. */
  readonly turnDeg: number;
  /** % of the ball's radius, right positive. */
  readonly percent: number;
  /** 95 % repeatability of that, %, 0 or above. */
  readonly plusMinus: number;
}

/** Lopsidedness as a vector: how far the canopy's middle stands from the axis, and to which side. */
export interface LopsidednessVector {
  /** % of the ball's radius, 0 or above. */
  readonly percent: number;
  /** The heavy side, degrees; where `even`, a direction to take no notice of. */
  readonly azimuthDeg: number;
  /** 95 %, % of the ball's radius. */
  readonly plusMinus: number;
  /** 95 %, degrees, at most 180. */
  readonly plusMinusDeg: number;
  /** Whether it may be as even as the eye can tell: nothing should rest on it. */
  readonly even: boolean;
  /** The views' offsets less what the vector says, %, in their order. */
  readonly residuals: readonly number[];
  /** How far the views stand apart from each other beyond their plus-minus: 1 as stated, above 1 worse. */
  readonly disagreement: number;
}

export type LopsidednessFit =
  | {
      readonly ok: true;
      readonly vector: LopsidednessVector;
      /** Where the axis stands, % of the ball's radius right of where the offsets were taken from; 0 where it was known. */
      readonly axisAsidePercent: number;
    }
  | {
      readonly ok: false;
      readonly reason: 'no-view' | 'one-direction' | 'axis-unknown';
      readonly hint: string;
    };

/** Whether the offsets are taken from the plant's axis, or from a common place near it that the fit has to set right. */
export type AxisKnown = 'axis-known' | 'axis-to-find';

/** Less lopsided than this, % of the ball's radius, nobody sees. */
export const EVEN_PERCENT = 2;
/**
 * Standard deviations of what the offsets swing three and five times a turn, % of the ball's radius: the middle of a silhouette is
 * not the shadow of one fixed point. Measured on simulated leafy plants: 0.9 and 0.4.
 */
const THIRD_HARMONIC_PERCENT = 0.9;
const FIFTH_HARMONIC_PERCENT = 0.4;
/** What a near camera adds, which opposite views do not share: one standard deviation, % of the ball's radius. Measured likewise. */
const NEARNESS_PERCENT = 0.5;
const NORMAL_95 = 1.96;
/** Directions from which the axis can be told from the views' middles alone: it and the vector are three unknowns. */
export const DIRECTIONS_FOR_AXIS = 3;
/** Two views nearer than this to the same or to opposite directions are one direction. */
export const SAME_DIRECTION_DEG = 20;

/**
 * Fits the lopsidedness vector to all views by least squares: offset_i = d · sin(a − t_i).
 *
 * @param views offsets by turn, in any order
 * @param axis `axis-to-find`: one more unknown, the same in all views; three directions are then needed
 * @returns the vector, or why there is none
 *
 * How: the sinusoid is linear in d sin a and d cos a. The weights are those of generalised least squares: each view's own variance, and
 * beside it what the views' shapes share. That part swings three or five times a turn and is the same, mirrored, in opposite views: twins are
 * recognised as such and add nothing but a second reading of the axis. Where more than two directions disagree by more than they
 * state, the uncertainty grows by as much (Birge's ratio).
 *
 * Notes: two directions at right angles are enough; one gives a side only. `even` when percent − plusMinus is 2 % or less.
 *
 * Reference: Aitken (1935), On least squares and linear combination of observations; Birge (1932) for the ratio, as used by CODATA.
 *
 * Example: +5 % at turn 0 and 0 % at turn 90 give 5 % at azimuth 90.
 */
export function fitLopsidedness(
  views: readonly ViewOffset[],
  axis: AxisKnown = 'axis-known',
): LopsidednessFit {
  if (views.length === 0) {
    return {
      ok: false,
      reason: 'no-view',
      hint: 'No view has both a turn and a pot rim, so its middle cannot be placed.',
    };
  }
  const turns = views.map(({ turnDeg }) => radOf(turnDeg));
  const directions = distinctDirections(views.map(({ turnDeg }) => turnDeg));
  if (directions < 2) return oneDirection(views);
  if (axis === 'axis-to-find' && directions < DIRECTIONS_FOR_AXIS) return axisUnknown();

  const factor = factorCovariance(views.length, (row, column) => {
    const apart = (turns[row] as number) - (turns[column] as number);
    const shared =
      THIRD_HARMONIC_PERCENT ** 2 * Math.cos(3 * apart) + FIFTH_HARMONIC_PERCENT ** 2 * Math.cos(5 * apart);
    const stated = (views[row] as ViewOffset).plusMinus / NORMAL_95;
    const own = row === column ? stated ** 2 + NEARNESS_PERCENT ** 2 : 0;
    return shared + own;
  });
  if (factor === null) return oneDirection(views);
  const offsets = views.map(({ percent }) => percent);
  // x = (d sin a) cos t − (d cos a) sin t
  const slopes = [turns.map(Math.cos), turns.map((turn) => -Math.sin(turn))];
  if (axis === 'axis-to-find') slopes.push(turns.map(() => 1));
  const solved = slopes.map((slope) => solveCovariance(factor, slope));
  const normal = factorCovariance(slopes.length, (row, column) =>
    dotProduct(slopes[row] as number[], solved[column] as Float64Array),
  );
  if (normal === null) return oneDirection(views);
  const [sine = 0, cosine = 0, axisAsidePercent = 0] = solveCovariance(
    normal,
    solved.map((one) => dotProduct(one, offsets)),
  );
  const residuals = offsets.map(
    (offset, k) =>
      offset - axisAsidePercent - sine * Math.cos(turns[k] as number) + cosine * Math.sin(turns[k] as number),
  );
  const freedom = directions - slopes.length;
  const chiSquare = dotProduct(residuals, solveCovariance(factor, residuals));
  const disagreement = freedom > 0 ? Math.sqrt(chiSquare / freedom) : 1;
  const percent = Math.hypot(sine, cosine);
  const spread = (direction: readonly [number, number]) => {
    const among = slopes.map((_, k) => direction[k] ?? 0);
    return (
      NORMAL_95 * Math.max(1, disagreement) * Math.sqrt(dotProduct(among, solveCovariance(normal, among)))
    );
  };
  const [alongSine, alongCosine] = percent > 0 ? [sine / percent, cosine / percent] : [1, 0];
  const plusMinus = spread([alongSine, alongCosine]);
  const across = spread([alongCosine, -alongSine]);
  return {
    ok: true,
    axisAsidePercent,
    vector: {
      percent,
      azimuthDeg: wholeTurn(degOf(Math.atan2(sine, cosine))),
      plusMinus,
      plusMinusDeg: across >= percent ? 180 : degOf(Math.asin(across / percent)),
      even: percent - plusMinus <= EVEN_PERCENT,
      residuals,
      disagreement,
    },
  };
}

/**
 * How many directions the turns show: opposite views show one outline and its mirror image, so they count once.
 *
 * Example: 0, 90, 180, 270 are two directions; 0, 45, 90, 135 are four.
 */
export function distinctDirections(turnsDeg: readonly number[]): number {
  const kept: number[] = [];
  for (const turn of turnsDeg) {
    const isNew = kept.every((one) => Math.abs(turnBetween(2 * one, 2 * turn)) / 2 > SAME_DIRECTION_DEG);
    if (isNew) kept.push(turn);
  }
  return kept.length;
}

function oneDirection(views: readonly ViewOffset[]): LopsidednessFit {
  const [first] = views as readonly [ViewOffset];
  const clear = Math.abs(first.percent) > first.plusMinus;
  const side = first.percent > 0 ? 'right' : 'left';
  const said = clear ? ` With the mark as in the first of them the ${side} side is the heavier.` : '';
  return {
    ok: false,
    reason: 'one-direction',
    hint: `The views show the plant from one direction only (opposite views are mirror twins), which tells left from right but not front from back: add a photo after a quarter turn.${said}`,
  };
}

function axisUnknown(): LopsidednessFit {
  return {
    ok: false,
    reason: 'axis-unknown',
    hint: `No view shows the pot’s rim, so where the plant’s axis stands is not known. From ${DIRECTIONS_FOR_AXIS} directions on it can be found without: add photos at other turns, or let the rim be seen.`,
  };
}
