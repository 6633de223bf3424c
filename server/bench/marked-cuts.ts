import type { Cut } from '../../core/cut/cut.ts';
import type { CutMark } from '../schemas/cuts.ts';
import type { KeptCutMark } from '../store/cut-marks.ts';

/** A tip measured anew lies within this of where it was: mm on the plant, or share of the ball's radius in the photo. */
const SAME_TIP_MM = 25;
const SAME_TIP_SHARE = 0.15;

const UNTOUCHED: CutMark = { state: 'open', chosen: true, note: '' };

/** A cut with what the grower did or wrote, and the name under which that is kept. */
interface MarkedCut {
  readonly cut: Cut & CutMark;
  /** `null` when nothing is kept of it yet. */
  readonly keptAs: string | null;
}

/**
 * Joins cuts with what the grower did or wrote of them, by name; a mark whose cut has another name since its photos were measured anew
 * goes to the nearest cut without a mark.
 */
export function markedCuts(
  cuts: readonly Cut[],
  kept: readonly KeptCutMark[],
  ballRadiusPx: number | null,
): MarkedCut[] {
  const names = new Set(cuts.map(({ id }) => id));
  const homeless = new Set(kept.filter(({ cutId }) => !names.has(cutId)));
  return cuts.map((cut) => {
    const mark = kept.find(({ cutId }) => cutId === cut.id) ?? nearest(cut, [...homeless], ballRadiusPx);
    if (mark === null) return { cut: { ...cut, ...UNTOUCHED }, keptAs: null };
    homeless.delete(mark);
    const { state, chosen, note } = mark;
    return { cut: { ...cut, state, chosen, note }, keptAs: mark.cutId };
  });
}

/** Where a cut's tip is: photo px, or mm on the plant. */
export function tipOf({ tipMm, tipPx }: Pick<Cut, 'tipMm' | 'tipPx'>): number[] {
  return [...(tipMm ?? tipPx ?? [])];
}

function nearest(cut: Cut, marks: readonly KeptCutMark[], ballRadiusPx: number | null): KeptCutMark | null {
  const tip = tipOf(cut);
  const within = cut.tipMm === null ? SAME_TIP_SHARE * (ballRadiusPx ?? 0) : SAME_TIP_MM;
  const [best] = marks
    .filter((mark) => mark.tip.length === tip.length)
    .map((mark) => ({ mark, away: Math.hypot(...tip.map((at, k) => at - (mark.tip[k] as number))) }))
    .filter(({ away }) => away <= within)
    .sort((a, b) => a.away - b.away);
  return best?.mark ?? null;
}
