import { addDays } from '../day/day.ts';
import { dayInWords } from '../day/day-in-words.ts';
import { firstOfKind } from './log-entry.ts';
import { type PlantSeason, type Work, workKey } from './work.ts';

/** Until so many days before the show bloom is taken off (smithyveg.blogspot.com, September 2007, for fuchsias). */
const TAKE_OFF_UNTIL_DAYS = 30;

/** Early bloom to be taken off, once it is noted. */
export function earlyBloomWork({ plantId, kind, log, show, plan }: PlantSeason): Work[] {
  if (show === null || plan?.restsOn !== 'written' || plan.effect === null) return [];
  const until = addDays(show.day, -TAKE_OFF_UNTIL_DAYS);
  const bloom = firstOfKind(log, ['first-flower', 'full-bloom'], plan.effect.stopDay, until);
  if (bloom === null) return [];
  const isFuchsia = kind.startsWith('fuchsia');
  return [
    {
      key: workKey(plantId, 'take-off-bloom', show.id),
      plantId,
      kind: 'take-off-bloom',
      day: bloom.day,
      dueBy: until,
      until,
      what: `Take off early bloom until about ${dayInWords(until)}, ${TAKE_OFF_UNTIL_DAYS} days before the show.`,
      why: `It flowers early for the show on ${dayInWords(show.day)}: better early, taking off bloom, than late.`,
      standing: isFuchsia
        ? 'Until 30 days before: one exhibitor, smithyveg.blogspot.com, September 2007, for fuchsias.'
        : 'Taking off early bloom: common practice, no source. The 30 days are one fuchsia grower’s; for this kind a guess.',
      caution: null,
      doneOn: firstOfKind(log, ['bloom-taken-off'], bloom.day, until)?.day ?? null,
    },
  ];
}
