import type { Cut } from '../../core/cut/cut.ts';
import { scoresAfter } from '../../core/cut/foretold-view.ts';
import { type ShapeScores, sittingScores } from '../../core/cut/shape-scores.ts';
import type { Foretold } from '../measuring/foretell-cuts.ts';
import { sittingTask } from '../measuring/joining.ts';
import type { CutInView, CutList, CutMark } from '../schemas/cuts.ts';
import type { Services } from '../services.ts';
import type { ViewRow } from '../store/views.ts';
import { viewsToJoin } from '../store/views-to-join.ts';
import type { CutBasis } from './cut-basis.ts';

type BeforeAndAfter = Pick<
  CutList,
  'cuts' | 'before' | 'after' | 'afterWhyNot' | 'lean' | 'views' | 'outlinesAfter'
>;

interface ListToForetell {
  readonly sittingId: string;
  /** Of the sitting. */
  readonly views: readonly ViewRow[];
  readonly basis: CutBasis;
  readonly cuts: readonly (Cut & CutMark)[];
}

const NO_SCORES: ShapeScores = { roundness: null, symmetry: null, lopsidedness: null };
const NO_BALL =
  'The outline fixes no ball to cut to, so what the plant would look like after the cuts cannot be told.';

/** The cuts with where each photo shows them, and how the plant scores now and would score after those that are chosen. */
export async function beforeAndAfter(
  services: Pick<Services, 'db' | 'foretellCuts'>,
  list: ListToForetell,
): Promise<BeforeAndAfter> {
  const { basis, cuts } = list;
  const { ids, foretold } = await foretell(services, list);
  if (foretold === null) return notForetold(list);
  const views = foretold.views.map((view) => ({ ...view, viewId: ids[view.index] as string }));
  const scores = views.map(({ viewId, before, after }) => ({
    viewId,
    before: scoresOf(before),
    after: scoresOf(after),
  }));
  const marksOf = (id: string): CutInView[] =>
    views.flatMap(({ viewId, marks }) =>
      marks.filter((mark) => mark.id === id).map(({ tipPx, cutPx }) => ({ viewId, tipPx, cutPx })),
    );
  return {
    cuts: cuts.map((cut) => ({ ...cut, marks: marksOf(cut.id) })),
    before: sittingScores(scores.map(({ before }) => before)),
    after: scoresAfter(foretold.views),
    afterWhyNot: null,
    lean: basis.from === 'turned' ? foretold.lean : null,
    views: scores,
    outlinesAfter: views.map(({ viewId, outlinePx }) => ({ viewId, outlinePx })),
  };
}

async function foretell(
  { db, foretellCuts }: Pick<Services, 'db' | 'foretellCuts'>,
  { sittingId, basis, cuts }: ListToForetell,
): Promise<{ readonly ids: readonly string[]; readonly foretold: Foretold | null }> {
  const rows = viewsToJoin(db, sittingId).filter(
    ({ viewId }) => basis.from === 'turned' || basis.viewIds.includes(viewId),
  );
  const foretold = await foretellCuts({
    sitting: sittingTask(rows),
    cuts: cuts.map(({ id, tipPx, cutPx, tipMm, cutMm }) => ({ id, tipPx, cutPx, tipMm, cutMm })),
    chosen: cuts.filter(({ chosen, state }) => chosen && state !== 'skipped').map(({ id }) => id),
    centreMm: basis.from === 'turned' ? basis.present.centreMm : null,
  });
  return { ids: rows.map(({ viewId }) => viewId), foretold };
}

function notForetold({ views, basis, cuts }: ListToForetell): BeforeAndAfter {
  const scores = basis.viewIds.map((viewId) => {
    const report = views.find(({ id }) => id === viewId)?.report ?? null;
    return { viewId, before: report === null ? NO_SCORES : scoresOf(report), after: null };
  });
  const [viewId] = basis.viewIds;
  return {
    cuts: cuts.map((cut) => {
      const { tipPx, cutPx } = cut;
      const isDrawn = tipPx !== null && cutPx !== null && viewId !== undefined;
      return { ...cut, marks: isDrawn ? [{ viewId, tipPx, cutPx }] : [] };
    }),
    before: sittingScores(scores.map(({ before }) => before)),
    after: null,
    afterWhyNot: NO_BALL,
    lean: null,
    views: scores,
    outlinesAfter: [],
  };
}

/** A report's scores, or those foretold, and nothing else of it. */
function scoresOf({ roundness, symmetry, lopsidedness }: ShapeScores): ShapeScores {
  return { roundness, symmetry, lopsidedness };
}
