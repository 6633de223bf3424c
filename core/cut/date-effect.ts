import { type StoppedToday, stopToday } from '../season/stop-today.ts';
import type { StopDepth } from './cut.ts';

/**
 * What a stop all round today does to the date of bloom.
 *
 * @param depth of the stop that is needed
 * @param plant kind, today, the show, and what is known of the plant
 * @returns sentences; where no figure is known they say so
 *
 * Reference: `stopToday`, the belief that plans the stops.
 */
export function dateEffectWords(depth: StopDepth, plant: StoppedToday): string {
  const found = stopToday(depth, plant);
  if (found !== null) {
    return `After a ${depth} stop today ${found.words}. ${found.days.standing} ${found.days.shareInWords}`;
  }
  const tip = depth === 'tip' ? null : stopToday('tip', plant);
  if (tip === null) {
    return `How long this kind takes from a ${depth} stop to bloom is not known: go by your own records.`;
  }
  return `No figure is known for a deep stop of this kind. It takes longer than a tip stop. After a tip stop today ${tip.words}. ${tip.days.standing}`;
}
