import { PLANT_KINDS, type PlantKind } from '../../../../core/plant.ts';
import { KIND_WORDS } from '../../words/plant-words.ts';
import { type BenchRow, needGroups, type RowGroup } from '../need-groups.ts';

export const ORDERS = ['need', 'late', 'show', 'kind', 'name'] as const;
export type Order = (typeof ORDERS)[number];

/** Stands for plants that are entered for no show. */
export const NO_SHOW = 'none';

/** Which plants of a bench are shown, and in what order; `''` leaves a thing open. */
export interface BenchView {
  readonly name: string;
  readonly kind: PlantKind | '';
  readonly showId: string;
  readonly lateOnly: boolean;
  readonly order: Order;
}

export const WHOLE_BENCH: BenchView = { name: '', kind: '', showId: '', lateOnly: false, order: 'need' };

/** Whether some work of a plant waits past the day by which it was due. */
export function isLate({ work }: BenchRow): boolean {
  return work.some(({ state }) => state === 'overdue');
}

/** The plants that a view lets through; name and variety are searched without regard to case. */
export function shownRows(rows: readonly BenchRow[], view: BenchView): BenchRow[] {
  const sought = view.name.trim().toLocaleLowerCase();
  return rows.filter(
    (row) =>
      (view.kind === '' || row.plant.kind === view.kind) &&
      (view.showId === '' || (row.plant.showId ?? NO_SHOW) === view.showId) &&
      (!view.lateOnly || isLate(row)) &&
      `${row.plant.name} ${row.plant.variety}`.toLocaleLowerCase().includes(sought),
  );
}

/**
 * Plants in groups under headings.
 *
 * @param showNames names of shows by id
 * @returns groups that have plants; within a group plants stand by name, and by need as the bench brings them
 */
export function groupedRows(
  rows: readonly BenchRow[],
  order: Order,
  showNames: ReadonlyMap<string, string>,
): RowGroup[] {
  if (order === 'need') return needGroups(rows);
  const named = [...rows].sort((one, other) => one.plant.name.localeCompare(other.plant.name));
  if (order === 'name') return some([{ key: 'all', words: 'By name', urgency: null, rows: named }]);
  if (order === 'late') {
    return some([
      { key: 'late', words: 'Past its day', urgency: null, rows: named.filter(isLate) },
      { key: 'in-time', words: 'In time', urgency: null, rows: named.filter((row) => !isLate(row)) },
    ]);
  }
  return order === 'kind' ? byKind(named) : byShow(named, showNames);
}

function byKind(rows: readonly BenchRow[]): RowGroup[] {
  return some(
    PLANT_KINDS.map((kind) => ({
      key: kind,
      words: KIND_WORDS[kind],
      urgency: null,
      rows: rows.filter(({ plant }) => plant.kind === kind),
    })),
  );
}

/** The nearest show first; plants without one last. */
function byShow(rows: readonly BenchRow[], showNames: ReadonlyMap<string, string>): RowGroup[] {
  const days = new Map(rows.map(({ plant }) => [plant.showId ?? NO_SHOW, plant.showDay ?? '~']));
  return [...days]
    .sort(([, one], [, other]) => (one < other ? -1 : 1))
    .map(([id]) => ({
      key: id,
      words: id === NO_SHOW ? 'For no show' : (showNames.get(id) ?? 'For a show'),
      urgency: null,
      rows: rows.filter(({ plant }) => (plant.showId ?? NO_SHOW) === id),
    }));
}

function some(groups: readonly RowGroup[]): RowGroup[] {
  return groups.filter(({ rows }) => rows.length > 0);
}
