import type { LeafHistory } from '../../core/advice/plant-history.ts';
import {
  areLeavesComparable,
  type LeafSeen,
  leafChanges,
  leafWords,
  tellingLeaf,
} from '../../core/foliage/leaf-change.ts';
import { whyNotJudged } from '../../core/foliage/not-judged.ts';
import type { LogEntry } from '../../core/season/log-entry.ts';
import type { SeenSitting, SeenView } from '../bench/seen-sitting.ts';
import type { PlantLeaf } from '../schemas/condition.ts';
import type { LearnedLeaf } from './learned-leaf.ts';

/** A photo's leaf with where it is found. */
export interface LeafOfView extends LeafSeen {
  readonly sittingId: string;
  readonly viewId: string;
}

/** The judged leaf of a sitting's photos; those that the grower keeps out, or that were taken from elsewhere, show another plant or side. */
export function leavesOf({ id, day, views, leftOut }: SeenSitting): LeafOfView[] {
  if (leftOut !== null) return [];
  return views.flatMap(({ id: viewId, turnDeg, report, afterWork, normalLeafFrom }) =>
    report?.foliage == null || report.notCompared !== null || afterWork
      ? []
      : [{ sittingId: id, viewId, day, turnDeg, foliage: report.foliage, normalFrom: normalLeafFrom }],
  );
}

/** The newest measured sitting's leaf, with what it is to be held against; `null` when none was judged. */
function newestLeaf(sittings: readonly SeenSitting[]) {
  const newest = newestMeasuredSitting(sittings);
  const leaves = newest === undefined ? [] : leavesOf(newest);
  if (newest === undefined || leaves.length === 0) return null;
  return tellingLeaf(leaves, sittings.filter(({ day }) => day < newest.day).flatMap(leavesOf));
}

function newestMeasuredSitting(sittings: readonly SeenSitting[]): SeenSitting | undefined {
  return sittings.findLast(({ views }) => views.some(({ report }) => report?.status === 'measured'));
}

/** What advice on the leaf rests on. */
export function leafHistory(sittings: readonly SeenSitting[], log: readonly LogEntry[]): LeafHistory | null {
  const told = newestLeaf(sittings);
  const cleared = log.filter(({ kind }) => kind === 'cleared-leaf').map(({ day }) => day);
  return told && { ...told, clearedOn: cleared.sort().at(-1) ?? null };
}

/**
 * Yellow and brown leaf of the newest sitting, and against the one before.
 *
 * @param sittings oldest first
 */
export function leafAnswer(sittings: readonly SeenSitting[], learned: LearnedLeaf): PlantLeaf | null {
  const newest = newestMeasuredSitting(sittings);
  if (newest === undefined) return null;
  const told = newestLeaf(sittings);
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

function whyNotCompared({ report }: SeenView): string[] {
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
