import { inTwoPasses } from '../../../core/cut/working-order.ts';
import { createKeptStore } from '../parts/store.ts';
import type { ListedCut } from './listed-cut.ts';

const ORDERS = ['two-passes', 'once-round'] as const;
export type WorkingOrder = (typeof ORDERS)[number];

export const ORDER_WORDS: readonly { readonly value: WorkingOrder; readonly words: string }[] = [
  { value: 'two-passes', words: 'In two passes' },
  { value: 'once-round', words: 'Once round' },
];

/** Whether the grower works in two passes; kept on this device. */
export const workingOrder = createKeptStore<WorkingOrder>(
  'rondure.cut-order',
  'two-passes',
  (kept): kept is WorkingOrder => ORDERS.includes(kept as WorkingOrder),
);

/** The cuts as they are worked through; each keeps its number. */
export function inOrder(cuts: readonly ListedCut[], order: WorkingOrder): ListedCut[] {
  return order === 'once-round' ? [...cuts] : inTwoPasses(cuts).flatMap((pass) => pass.cuts);
}
