import { useRef, useState } from 'react';
import type { CutList } from '../../../server/schemas/cuts.ts';
import { type CutMarkChange, cutListQuery, sendCutMark } from '../api/cuts.ts';
import { Refusal } from '../api/fetch-json.ts';
import { queryClient } from '../api/queries.ts';
import { offerUndo } from '../parts/undo.ts';
import { type ListedCut, markBefore, withMark } from './listed-cut.ts';

interface Waiting {
  readonly cutId: string;
  readonly change: CutMarkChange;
}

export interface Marking {
  /** Changes one cut; `done` stands in the bar that offers to take it back. */
  mark: (cut: ListedCut, change: CutMarkChange, done: string) => Promise<boolean>;
  /** What comes after the cuts is being reckoned anew. */
  reckoning: boolean;
  /** The cut whose last change was not kept, and why. */
  fault: { readonly cutId: string; readonly fault: unknown } | null;
}

/**
 * Marks cuts as done, skipped, chosen or noted. What was tapped shows at once; the changes go out one after the other, and
 * one that is refused is taken back on the screen and said beside its cut.
 */
export function useMarking({ plantId, sittingId }: Pick<CutList, 'plantId' | 'sittingId'>): Marking {
  const [reckoning, setReckoning] = useState(false);
  const [fault, setFault] = useState<Marking['fault']>(null);
  const waiting = useRef<readonly Waiting[]>([]);
  const line = useRef<Promise<unknown>>(Promise.resolve());
  const { queryKey } = cutListQuery(plantId, sittingId);

  const show = (change: (list: CutList) => CutList) =>
    queryClient.setQueryData(queryKey, (list) => list && change(list));
  const leave = (one: Waiting) => {
    waiting.current = waiting.current.filter((other) => other !== one);
    setReckoning(waiting.current.length > 0);
  };

  async function put(cutId: string, change: CutMarkChange): Promise<void> {
    const list = queryClient.getQueryData(queryKey);
    const cut = list?.cuts.find(({ id }) => id === cutId);
    const before = cut ? markBefore(cut, change) : {};
    const one: Waiting = { cutId, change };
    waiting.current = [...waiting.current, one];
    setReckoning(true);
    setFault(null);
    // An answer asked for before the tap would show the list as it was.
    await queryClient.cancelQueries({ queryKey });
    show((now) => withMark(now, cutId, change));
    const answer = line.current.then(() => sendCutMark(sittingId, cutId, change));
    line.current = answer.catch(() => {});
    try {
      const kept = await answer;
      leave(one);
      show(() => waiting.current.reduce((now, later) => withMark(now, later.cutId, later.change), kept));
    } catch (refused) {
      leave(one);
      show((now) => withMark(now, cutId, before));
      // Its photos were measured anew meanwhile, so the whole list is another one.
      if (refused instanceof Refusal && refused.status === 404) {
        void queryClient.invalidateQueries({ queryKey });
      }
      throw refused;
    }
  }

  async function mark(cut: ListedCut, change: CutMarkChange, done: string): Promise<boolean> {
    const before = markBefore(cut, change);
    try {
      await put(cut.id, change);
      offerUndo(done, () => put(cut.id, before));
      return true;
    } catch (refused) {
      setFault({ cutId: cut.id, fault: refused });
      return false;
    }
  }

  return { mark, reckoning, fault };
}
