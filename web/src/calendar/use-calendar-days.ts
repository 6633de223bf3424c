import { useSearchParams } from 'wouter';
import { addDays, type Day, isDay } from '../../../core/day/day.ts';
import { calendarWeek } from '../../../core/season/calendar-week.ts';
import { todayHere } from '../words/day-words.ts';

export const SPANS = ['half', 'year'] as const;
export type Span = (typeof SPANS)[number];

/** Weeks across, how many of them lie behind today, and by how many the page moves. */
const WEEKS: Record<Span, { readonly across: number; readonly behind: number; readonly step: number }> = {
  half: { across: 26, behind: 4, step: 13 },
  year: { across: 53, behind: 12, step: 26 },
};

/** Which weeks the calendar shows, kept in the address. */
export function useCalendarDays() {
  const [search, setSearch] = useSearchParams();
  const span: Span = search.get('span') === 'half' ? 'half' : 'year';
  const { across, behind, step } = WEEKS[span];
  const asked = search.get('from') ?? '';
  const usual = calendarWeek(addDays(todayHere(), -7 * behind)).monday;
  const from: Day = isDay(asked) ? asked : usual;

  const show = (next: { from?: Day | null; span?: Span }) => {
    const kept = new URLSearchParams(search);
    if (next.from === null) kept.delete('from');
    else if (next.from !== undefined) kept.set('from', next.from);
    if (next.span === 'year') kept.delete('span');
    else if (next.span !== undefined) kept.set('span', next.span);
    setSearch(kept, { replace: true });
  };

  return {
    from,
    to: addDays(from, 7 * across - 1),
    span,
    isUsual: from === usual,
    chooseSpan: (chosen: Span) => show({ span: chosen, from: null }),
    earlier: () => show({ from: addDays(from, -7 * step) }),
    later: () => show({ from: addDays(from, 7 * step) }),
    back: () => show({ from: null }),
  };
}
