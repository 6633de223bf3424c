import { addDays } from '../day/day.ts';
import { dayInWords } from '../day/day-in-words.ts';
import { firstOfKind } from './log-entry.ts';
import { type PlantSeason, type SeenBloom, type Work, workKey } from './work.ts';

/** Until so many days before the show bloom is taken off (smithyveg.blogspot.com, September 2007, for fuchsias). */
const TAKE_OFF_UNTIL_DAYS = 30;
/** Nothing is taken off, and nothing left on, by a curve that is less sure of itself. */
const LEAST_CHANCE = 0.8;

/**
 * Early bloom to be taken off: as the photos tell, with a day of the plant's own pace; before they do, once it is noted.
 *
 * Notes: where the photos say that the bloom is in time or late, there is nothing to take off, whatever was noted. Heads taken off begin a
 * bloom anew, so that the work is gone with them.
 */
export function earlyBloomWork(season: PlantSeason): Work[] {
  const { bloom, plan } = season;
  // A stop still to come takes this bloom with it.
  const isForShow = plan === null || plan.restsOn === 'written';
  if (bloom == null || !isForShow || !isSure(bloom)) return notedEarlyBloom(season);
  return bloom.againstShow.verdict === 'early' ? seenEarlyBloom(season, bloom) : [];
}

function isSure({ isTold, againstShow: { chances } }: SeenBloom): boolean {
  return isTold && Math.max(chances.early, chances.inTime, chances.late) >= LEAST_CHANCE;
}

function seenEarlyBloom({ plantId, show }: PlantSeason, { day, againstShow }: SeenBloom): Work[] {
  const { takeOffUntil, words, standing } = againstShow;
  if (show === null || takeOffUntil === null) return [];
  return [
    {
      key: workKey(plantId, 'take-off-bloom', show.id),
      plantId,
      kind: 'take-off-bloom',
      day,
      dueBy: takeOffUntil,
      until: takeOffUntil,
      what: `Take off the first heads until ${dayInWords(takeOffUntil)}.`,
      why: words,
      standing,
      caution: null,
      doneOn: null,
    },
  ];
}

function notedEarlyBloom({ plantId, kind, log, show, plan }: PlantSeason): Work[] {
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
