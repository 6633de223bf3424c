import { fitBall } from '../measures/ball.ts';
import { lopsidednessPercent } from '../measures/lopsidedness.ts';
import type { ByScore } from '../measures/plus-minus.ts';
import { roundnessOf } from '../measures/roundness.ts';
import { mirrorSymmetry } from '../measures/symmetry.ts';
import type { RimEnds } from '../silhouette/open-arc.ts';
import { readSilhouette, type Silhouette } from '../silhouette/silhouette.ts';
import { axisFromPot } from '../stand/axis.ts';
import { cutAway, type SeenCut } from './cut-away.ts';

/** A plant as one picture shows it, px of its mask. */
export interface SeenPlant {
  readonly silhouette: Silhouette;
  /** `null` without a pot. */
  readonly rim: RimEnds | null;
}

/** What the chosen cuts do to one picture. */
export interface AfterCuts {
  /** `null` when nothing would be left. */
  readonly silhouette: Silhouette | null;
  /** After less before, each in its score's own unit; `null` where either cannot be measured. */
  readonly change: { readonly [score in keyof ByScore]: number | null };
  /** The cuts that this picture shows. */
  readonly shown: ReadonlySet<string>;
}

/** The scores of a silhouette without their plus-minus. */
export type BareScores = AfterCuts['change'];

/**
 * What a picture's silhouette would be after some cuts, and by how much its scores would change.
 *
 * @param plant px of the mask
 * @param cuts every stem of the list, px of the mask
 * @param chosen names of those that are cut
 *
 * Notes: both sides of a change are measured in the same way on the same mask, so a way that differs a little from a report's own (the picture not brought upright,
 * say) leaves the change nearly as it is. Add it to the report's scores.
 */
export function afterCuts(
  { silhouette, rim }: SeenPlant,
  cuts: readonly SeenCut[],
  chosen: ReadonlySet<string>,
): AfterCuts {
  const { mask, shown } = cutAway(silhouette.mask, silhouette.loops, cuts, chosen);
  const isSame = !cuts.some(({ id }) => chosen.has(id) && shown.has(id));
  const after = isSame ? silhouette : readSilhouette(mask);
  if (after === null) return { silhouette: null, shown, change: NOTHING };
  if (isSame) return { silhouette, shown, change: { roundness: 0, symmetry: 0, lopsidedness: 0 } };
  const [one, other] = [bareScores(silhouette, rim), bareScores(after, rim)];
  return {
    silhouette: after,
    shown,
    change: {
      roundness: difference(one.roundness, other.roundness),
      symmetry: difference(one.symmetry, other.symmetry),
      lopsidedness: difference(one.lopsidedness, other.lopsidedness),
    },
  };
}

/** Two degrees apart: enough for form, a quarter of the work, so that a tick is answered at once. */
const DIRECTIONS = 180;
const NOTHING: BareScores = { roundness: null, symmetry: null, lopsidedness: null };

function difference(before: number | null, after: number | null): number | null {
  return before === null || after === null ? null : after - before;
}

/** Scores as both sides of a change are measured. */
export function bareScores(silhouette: Silhouette, rim: RimEnds | null): BareScores {
  const ball = fitBall(silhouette, rim, DIRECTIONS);
  const axis = rim === null ? null : axisFromPot(rim);
  return {
    roundness: ball === null ? null : (roundnessOf(ball.form)?.score ?? null),
    symmetry: mirrorSymmetry(silhouette.mask, axis?.xPx ?? silhouette.centroidPx[0], axis?.rimYPx ?? null),
    lopsidedness:
      axis === null || ball === null
        ? null
        : lopsidednessPercent(silhouette.centroidPx[0], axis.xPx, ball.radiusPx),
  };
}
