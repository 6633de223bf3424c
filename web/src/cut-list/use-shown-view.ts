import { useState } from 'react';
import type { CutList } from '../../../server/schemas/cuts.ts';
import type { Sitting, View } from '../../../server/schemas/sitting.ts';
import type { ListedCut } from './listed-cut.ts';
import { viewsOf } from './listed-sittings.ts';

export interface ShownView {
  readonly views: readonly View[];
  /** The view that is drawn; `null` when the list rests on none. */
  readonly view: View | null;
  readonly choose: (viewId: string | null) => void;
}

/** The view the grower chose; else the one that shows the cut in hand, else the one that shows most cuts. */
export function useShownView(sitting: Sitting, list: CutList, held: ListedCut | null): ShownView {
  const [viewId, choose] = useState<string | null>(null);
  const views = viewsOf(sitting, list.viewIds);
  const shows = ({ id }: View, { marks }: CutList['cuts'][number]) =>
    marks.some((mark) => mark.viewId === id);
  const count = (view: View) => list.cuts.filter((cut) => shows(view, cut)).length;
  const most = [...views].sort((a, b) => count(b) - count(a));
  const view =
    views.find(({ id }) => id === viewId) ?? most.find((one) => held && shows(one, held)) ?? most[0] ?? null;
  return { views, view, choose };
}
