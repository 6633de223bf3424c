import {
  areLeavesComparable,
  type LeafSeen,
  leafChanges,
  leafWords,
  tellingLeaf,
} from '../../core/foliage/leaf-change.ts';
import { whyNotJudged } from '../../core/foliage/not-judged.ts';
import type { PlantLeaf } from '../schemas/condition.ts';
import type { Sitting, View } from '../schemas/sitting.ts';
import type { LearnedLeaf } from './learned-leaf.ts';

/** A photo's leaf with where it is found. */
export interface LeafOfView extends LeafSeen {
  readonly sittingId: string;
  readonly viewId: string;
}

/** The judged leaf of a sitting's photos; those that the grower keeps out, or that were taken from elsewhere, show another plant or side. */
export function leavesOf({ id, day, views, leftOut }: Sitting): LeafOfView[] {
  if (leftOut !== null) return [];
  return views.flatMap(({ id: viewId, turnDeg, report, afterWork, normalLeafFrom }) =>
    report?.foliage == null || report.notCompared !== null || afterWork
      ? []
      : [{ sittingId: id, viewId, day, turnDeg, foliage: report.foliage, normalFrom: normalLeafFrom }],
  );
}

/**
 * Yellow and brown leaf of the newest sitting, and against the one before.
 *
 * @param sittings oldest first
 */
export function leafAnswer(sittings: readonly Sitting[], learned: LearnedLeaf): PlantLeaf | null {
  const newest = sittings.findLast(({ views }) => views.some(({ report }) => report?.status === 'measured'));
  if (newest === undefined) return null;
  const leaves = leavesOf(newest);
  const earlier = sittings.filter(({ day }) => day < newest.day).flatMap(leavesOf);
  const told = leaves.length === 0 ? null : tellingLeaf(leaves, earlier);
  return {
    newest: told && seenAnswer(told.now),
    before: told?.before ? seenAnswer(told.before) : null,
    changes: told?.before ? leafChanges(told.now, told.before) : [],
    words: told === null ? NOT_JUDGED : leafWords(told.now, told.before),
    notCompared: [...new Set(newest.views.flatMap(whyNotCompared))],
    history: sittings.flatMap((sitting) => {
      const seen = leavesOf(sitting);
      if (seen.length === 0) return [];
      const { now } = tellingLeaf(seen, []);
      return [{ ...seenAnswer(now), isComparable: areLeavesComparable(now, now) }];
    }),
    learned,
  };
}

const NOT_JUDGED = 'The colour of the leaf was not judged at the newest sitting.';

function whyNotCompared({ report }: View): string[] {
  if (report?.status !== 'measured') return report?.hint ? [report.hint] : [];
  if (report.notCompared !== null) return [report.notCompared];
  if (report.foliage !== null) return report.foliage.notCompared === null ? [] : [report.foliage.notCompared];
  return whyNotJudged(report.notes);
}

function seenAnswer({ foliage, ...seen }: LeafOfView) {
  const { sittingId, viewId, day, turnDeg } = seen;
  const { green, yellow, brown, against } = foliage;
  return { sittingId, viewId, day, turnDeg, green, yellow, brown, against };
}
