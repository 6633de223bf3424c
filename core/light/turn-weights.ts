import type { Sureness } from '../advice/advice.ts';

/**
 * Which side should face the light: the rule and its weights, all in one place.
 *
 * Several voices each point to a side of the plant; they are added up as arrows, each as long as its weight.
 *
 * The **weak side** (from a turned sitting) has two voices: the side away from where the canopy's middle stands off the axis, and the one
 * with the least reach. The middle counts most, because it rests on the whole outline; reach rests on its outermost leaf. Each is
 * multiplied by how certain it is: 1 − (plus-minus ÷ size)², at least 0. Their weighted mean direction is the weak side.
 *
 * The **next turn** hears three voices: the weak side, multiplied by how sure it is; the side that has had the least light, multiplied by
 * how uneven the light was; and the grower's rhythm. Of the quarters that the pot can be turned by, the one that lies best with all of
 * them is taken. The weak side counts most, because it is what has grown; light is only what should make it grow. The rhythm outweighs
 * the light's gap, because kept up it closes every gap, but not when it would bring the best lit side to the light again. No published
 * rate tells how to weigh them: our choice.
 */
export const TURN_WEIGHTS = {
  weakSide: { awayFromHeavySide: 0.75, leastReach: 0.25 },
  nextTurn: { weakSide: 0.5, leastLight: 0.2, rhythm: 0.25 },
} as const;

/** How loud the weak side speaks in the next turn. */
export const SHARE_OF_SURENESS: Readonly<Record<Sureness, number>> = { sure: 1, likely: 0.6, unsure: 0.3 };
