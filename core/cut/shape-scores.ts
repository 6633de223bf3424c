import type { PhotoReport, Score } from '../report.ts';

/** The scores of one shape, each `null` where it cannot be told. */
export type ShapeScores = Pick<PhotoReport, 'roundness' | 'symmetry' | 'lopsidedness'>;

/**
 * The scores of a sitting of several views: the mean of roundness and of symmetry over the views.
 *
 * @param views scores of the sitting's measured views
 * @returns the only view's own scores; of several the means, with lopsidedness `null`, since left and right of several sides add up to
 * nothing: `fitLopsidedness` tells it in the round. A score that one view lacks is `null`.
 *
 * Notes: the plus-minus of a mean is the mean of the views': what they get wrong together, as the rim, counts fully.
 *
 * Example: roundness 80 ± 2 and 90 ± 4 give 85 ± 3.
 */
export function sittingScores(views: readonly ShapeScores[]): ShapeScores {
  const [only] = views;
  if (views.length === 1 && only !== undefined) return only;
  return {
    roundness: meanScore(views.map(({ roundness }) => roundness)),
    symmetry: meanScore(views.map(({ symmetry }) => symmetry)),
    lopsidedness: null,
  };
}

function meanScore(scores: readonly (Score | null)[]): Score | null {
  const known = scores.flatMap((score) => score ?? []);
  if (known.length === 0 || known.length < scores.length) return null;
  const mean = (of: (score: Score) => number) =>
    known.reduce((sum, score) => sum + of(score), 0) / known.length;
  return { score: mean(({ score }) => score), plusMinus: mean(({ plusMinus }) => plusMinus) };
}
