import type { StopDepth } from '../cut/cut.ts';
import { addDays, type Day, daysBetween } from '../day/day.ts';
import { AFTER_STOP } from './after-stop-days.ts';
import type { LastStop } from './last-stop.ts';
import type { KindDefaults } from './stop-defaults.ts';
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

export function lastDepth({ chain }: KindDefaults): StopDepth {
  return chain.at(-1)?.depth ?? 'tip';
}

/** Only the depths of which a window before the show is known; a first tip stop has none. */
export function usualDays({ stops, chain }: KindDefaults, depth: StopDepth, showDay: Day): DayWindow | null {
  const usual = stops.find((stop) => stop.depth === depth)?.usual ?? null;
  if (usual === null || chain.filter((stop) => stop.depth === depth).length > 1) return null;
  return { from: addDays(showDay, -usual.fromDaysBefore), to: addDays(showDay, -usual.toDaysBefore) };
}

export function stateOf(
  { from, to }: DayWindow,
  latest: Day,
  today: Day,
): 'to-come' | 'open' | 'overdue' | 'left-out' {
  if (today < from) return 'to-come';
  if (today <= to) return 'open';
  return today <= latest ? 'overdue' : 'left-out';
}

export function offWindow({ from, to }: DayWindow, day: Day): number {
  if (day < from) return -daysBetween(day, from);
  return day > to ? daysBetween(to, day) : 0;
}
