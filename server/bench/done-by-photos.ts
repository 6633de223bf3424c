import { cutList } from '../../core/cut/cut-list.ts';
import { plannedAndDoneWords, type StillStanding, stillStanding } from '../../core/cut/planned-and-done.ts';
import type { CutList } from '../schemas/cuts.ts';
import type { ViewRow } from '../store/views.ts';

/** What photos taken right after the work still show of the planned cuts. */
interface DoneByPhotos {
  readonly standing: StillStanding[];
  readonly words: string;
}

/**
 * Compares planned and done photo by photo, each with the one of the same turn that the list rests on.
 *
 * @param before the views that the list rests on
 * @param after measured views that came in after the work
 * @returns `null` when no photo shows the plant from a side on which a planned cut is drawn
 */
export function doneByPhotos(
  planned: CutList['cuts'],
  before: readonly ViewRow[],
  after: readonly ViewRow[],
): DoneByPhotos | null {
  const compared = new Set<string>();
  const standing = new Map<string, StillStanding>();
  for (const later of after) {
    for (const earlier of before.filter(({ turnDeg }) => turnDeg === later.turnDeg)) {
      const drawn = drawnOn(planned, earlier.id);
      const [centre, laterBall] = [earlier.report?.ball?.centrePx, later.report?.ball];
      if (drawn.length === 0 || centre === undefined || later.report == null || laterBall == null) continue;
      for (const { id } of drawn) compared.add(id);
      const now = cutList({ from: 'one-photo', report: later.report, ball: null });
      for (const one of stillStanding({ cuts: drawn, centre }, { cuts: now, centre: laterBall.centrePx })) {
        const known = standing.get(one.cutId);
        if (known === undefined || one.standsOutPercent > known.standsOutPercent)
          standing.set(one.cutId, one);
      }
    }
  }
  if (compared.size === 0) return null;
  const still = planned.flatMap(({ id }) => standing.get(id) ?? []);
  return {
    standing: still,
    words: `${plannedAndDoneWords(compared.size, still)}${unseenWords(planned.length - compared.size)}`,
  };
}

/** The planned cuts that a view shows, with their places in it. */
function drawnOn(planned: CutList['cuts'], viewId: string): CutList['cuts'] {
  return planned.flatMap((cut) => {
    const mark = cut.marks.find((one) => one.viewId === viewId);
    return mark === undefined ? [] : [{ ...cut, tipMm: null, tipPx: mark.tipPx, cutPx: mark.cutPx }];
  });
}

function unseenWords(count: number): string {
  if (count === 0) return '';
  const which = count === 1 ? 'One more stem is' : `${count} more stems are`;
  return ` ${which} not shown by the photos taken after the work: photograph the plant at the other turns too.`;
}
