import type { CutList } from '../../../server/schemas/cuts.ts';
import type { CutMarkChange } from '../api/cuts.ts';

/** A cut under the number that it carries on the list, the photo and the print. */
export type ListedCut = CutList['cuts'][number] & { readonly number: number };

export function listedCuts({ cuts }: CutList): ListedCut[] {
  return cuts.map((cut, index) => ({ ...cut, number: index + 1 }));
}

/** Whether it is to be made: chosen, and not skipped at the bench. */
export function isPlanned({ chosen, state }: CutList['cuts'][number]): boolean {
  return chosen && state !== 'skipped';
}

/** The list as it will read once a change of one cut is kept. Scores and outlines stay as they were: only the server reckons them. */
export function withMark(list: CutList, cutId: string, change: CutMarkChange): CutList {
  return { ...list, cuts: list.cuts.map((cut) => (cut.id === cutId ? { ...cut, ...change } : cut)) };
}

/** What a change replaces, so that it can be taken back. */
export function markBefore(cut: CutList['cuts'][number], change: CutMarkChange): CutMarkChange {
  const { state, chosen, note } = cut;
  const before: Record<string, unknown> = { state, chosen, note };
  return Object.fromEntries(Object.keys(change).map((name) => [name, before[name]]));
}

/** The next cut to make from the top of the list on. */
export function nextCut(cuts: readonly ListedCut[]): ListedCut | null {
  return cuts.find((cut) => isPlanned(cut) && cut.state === 'open') ?? null;
}

/** How far the work has come. */
export function progressOf(cuts: readonly ListedCut[]) {
  const count = (holds: (cut: ListedCut) => boolean) => cuts.filter(holds).length;
  return {
    planned: count(isPlanned),
    done: count(({ state }) => state === 'done'),
    skipped: count(({ state }) => state === 'skipped'),
    leftOut: count(({ chosen, state }) => !chosen && state !== 'skipped'),
    open: count((cut) => isPlanned(cut) && cut.state === 'open'),
  };
}
