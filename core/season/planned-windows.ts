import type { StopDepth } from '../cut/cut.ts';
import { addDays, type Day, daysBetween } from '../day/day.ts';
import { AFTER_STOP } from './after-stop-days.ts';
import type { LastStop } from './last-stop.ts';
import type { ChainStop, KindDefaults } from './stop-defaults.ts';
import type { DayWindow } from './written-stops.ts';

/** Each step's window, earliest first, from the last one back. */
export function windowsBack({ chain }: KindDefaults, last: LastStop, windowDays: number): DayWindow[] {
  const windows: DayWindow[] = [{ from: last.fromDay, to: last.lastDay }];
  for (const { daysToNext } of chain.slice(0, -1).reverse()) {
    const to = addDays((windows[0] as DayWindow).to, -(daysToNext?.value ?? AFTER_STOP.breakDays));
    windows.unshift({ from: addDays(to, 1 - windowDays), to });
  }
  return windows;
}

/** Depth of the last stop, which decides the bloom. */
export function lastDepth({ chain }: KindDefaults): StopDepth {
  return chain.at(-1)?.depth ?? 'tip';
}

/** When growers usually give a step's stop; `null` for a stop before the last of the last one's depth, of which nothing is known. */
export function usualDays(
  { stops, chain }: KindDefaults,
  { role, depth }: ChainStop,
  showDay: Day,
): DayWindow | null {
  const usual = stops.find((stop) => stop.depth === depth)?.usual ?? null;
  if (usual === null || (role !== 'last' && depth === chain.at(-1)?.depth)) return null;
  return { from: addDays(showDay, -usual.fromDaysBefore), to: addDays(showDay, -usual.toDaysBefore) };
}

/** Where a stop that is not written down stands; it can be done up to `latest`. */
export function stateOf(
  { from, to }: DayWindow,
  latest: Day,
  today: Day,
): 'to-come' | 'open' | 'overdue' | 'left-out' {
  if (today < from) return 'to-come';
  if (today <= to) return 'open';
  return today <= latest ? 'overdue' : 'left-out';
}

/** Days outside a window: after it above 0, before it below 0. */
export function offWindow({ from, to }: DayWindow, day: Day): number {
  if (day < from) return -daysBetween(day, from);
  return day > to ? daysBetween(to, day) : 0;
}
