import { describe, expect, it } from 'vitest';
import { addDays, day, daysBetween } from '../../../core/day/day.ts';
import { bloomPicture } from '../../../core/season/bloom-likely.ts';
import { DEFAULT_STOPS } from '../../../core/season/default-stops.ts';
import { stopPlan } from '../../../core/season/stop-plan.ts';
import { planAnswer } from '../../../server/season/season-answer.ts';
import {
  acrossOf,
  chanceOn,
  hillPath,
  monthTicks,
  pictureDays,
} from '../../../web/src/season/plan/bloom-drawing.ts';

const TODAY = day('2026-04-01');
const found = stopPlan(
  {
    plantId: 'a',
    kind: 'fuchsia-single',
    variety: '',
    showDay: day('2026-08-13'),
    today: TODAY,
    stops: [],
  },
  { defaults: DEFAULT_STOPS, records: [] },
);
if (!found.ok || found.days === null) throw new TypeError('Expected a plan');
const plan = planAnswer(found);
const bloomDays = bloomPicture(found.days.belief, found.last.lastDay, found.bloomLastsDays);
const days = pictureDays(plan, bloomDays, TODAY);

describe('the picture of likely bloom', () => {
  it('holds today, every stop, the show and the whole hill', () => {
    for (const on of [TODAY, '2026-08-13', plan.steps[0]?.window.from ?? '', bloomDays.at(-1)?.day ?? '']) {
      expect(on > days.from && on < days.to).toBe(true);
    }
  });

  it('spaces days evenly over its width', () => {
    const across = acrossOf(days, 350);
    expect([across(days.from), across(days.to)]).toEqual([0, 350]);
    const step = across(addDays(TODAY, 1)) - across(TODAY);
    expect(step).toBeCloseTo(350 / daysBetween(days.from, days.to), 9);
  });

  it('peaks where the chance does, and is told as nothing outside its days', () => {
    const peak = bloomDays.reduce((most, one) => (one.chance > most.chance ? one : most));
    const across = acrossOf(days, 350);
    const points = [...hillPath(bloomDays, across).matchAll(/([\d.]+) ([\d.]+)/g)].map(([, x, y]) => [
      Number(x),
      Number(y),
    ]);
    const highest = points.reduce((top, point) => ((point[1] ?? 0) < (top[1] ?? 0) ? point : top));
    expect(highest[0]).toBeCloseTo(across(peak.day), 1);
    expect(chanceOn(bloomDays, '2026-01-01')).toBe(0);
    expect(hillPath([], across)).toBe('');
  });

  it('names months over a year’s end, fewer where there is little room', () => {
    const winter = { from: day('2026-11-20'), to: day('2027-03-10') };
    expect(monthTicks(winter, 700, 48)).toEqual(['2026-12-01', '2027-01-01', '2027-02-01', '2027-03-01']);
    expect(monthTicks(winter, 120, 48)).toEqual(['2026-12-01', '2027-02-01']);
  });
});
