import type { Cut } from '../../core/cut/cut.ts';
import { type ShapeScores, sittingScores } from '../../core/cut/shape-scores.ts';
import type { CutInView, CutList } from '../schemas/cuts.ts';
import type { ViewRow } from '../store/views.ts';
import type { CutBasis } from './cut-basis.ts';

type BeforeAndAfter = Pick<CutList, 'before' | 'after' | 'afterWhyNot' | 'lean' | 'views' | 'outlinesAfter'>;

const NO_SCORES: ShapeScores = { roundness: null, symmetry: null, lopsidedness: null };

/** How the plant scores now. */
export async function beforeAndAfter(basis: CutBasis, together: readonly ViewRow[]): Promise<BeforeAndAfter> {
  const views = basis.viewIds.map((viewId) => {
    const report = together.find(({ id }) => id === viewId)?.report ?? null;
    return { viewId, before: report === null ? NO_SCORES : scoresOf(report), after: null };
  });
  return {
    before: sittingScores(views.map(({ before }) => before)),
    after: null,
    afterWhyNot: 'The shape after the cuts is not reckoned yet.',
    lean: null,
    views,
    outlinesAfter: [],
  };
}

/** Where a cut is drawn on the photo that its px belong to. */
export function marksInPhoto({ tipPx, cutPx }: Cut, { viewIds: [viewId] }: CutBasis): CutInView[] {
  return tipPx === null || cutPx === null || viewId === undefined ? [] : [{ viewId, tipPx, cutPx }];
}

function scoresOf({ roundness, symmetry, lopsidedness }: ShapeScores): ShapeScores {
  return { roundness, symmetry, lopsidedness };
}
