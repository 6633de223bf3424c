import { useSearchParams } from 'wouter';
import { PLANT_KINDS, type PlantKind } from '../../../../core/plant.ts';
import { type BenchView, ORDERS, type Order, WHOLE_BENCH } from './bench-order.ts';

/** Which plants are shown is kept in the address, so that it outlasts a visit to a plant. */
export function useBenchView(): [BenchView, (change: Partial<BenchView>) => void] {
  const [search, setSearch] = useSearchParams();
  const [kind, order] = [search.get('kind') ?? '', search.get('order') ?? ''];
  const view: BenchView = {
    name: search.get('name') ?? '',
    kind: PLANT_KINDS.includes(kind as PlantKind) ? (kind as PlantKind) : '',
    showId: search.get('show') ?? '',
    lateOnly: search.has('late'),
    order: ORDERS.includes(order as Order) ? (order as Order) : 'need',
  };
  return [view, (change) => setSearch(addressOf({ ...view, ...change }), { replace: true })];
}

/** Only what differs from the whole bench is written into the address. */
function addressOf(view: BenchView): URLSearchParams {
  const found = new URLSearchParams();
  if (view.name !== '') found.set('name', view.name);
  if (view.kind !== '') found.set('kind', view.kind);
  if (view.showId !== '') found.set('show', view.showId);
  if (view.lateOnly) found.set('late', '');
  if (view.order !== WHOLE_BENCH.order) found.set('order', view.order);
  return found;
}
