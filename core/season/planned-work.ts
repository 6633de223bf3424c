import { cuttingCaution } from '../advice/cautions.ts';
import { addDays, type Day, daysBetween } from '../day/day.ts';
import { dayInWords } from '../day/day-in-words.ts';
import { firstOfKind, type LogEntry } from './log-entry.ts';
import type { Show } from './show.ts';
import { type OwnWork, type PlantSeason, type Work, workKey } from './work.ts';

/** Read the schedule and measure so many days before the show: our own choice. */
const CHECK_ENTRY_DAYS = 21;
/** Until so many days before the show bloom is taken off (smithyveg.blogspot.com, September 2007, for fuchsias). */
const TAKE_OFF_UNTIL_DAYS = 30;
/** An advice to look again after pests or mould: our own choice. */
const LOOK_AGAIN_DAYS = 7;

const SPRAYS =
  'Identify it first. If you think of a spray, read its label, follow local law, and keep children and animals away.';

/** The stops of the plan that are still to be done. */
export function stopWork({ plantId, kind, plan }: PlantSeason): Work[] {
  if (plan === null || plan.bloomedOn !== null) return [];
  return plan.steps
    .filter(({ state }) => state !== 'done' && state !== 'left-out')
    .map(({ role, depth, window, latest, words }) => ({
      key: workKey(plantId, 'stop', `${role}:${plan.showDay}`),
      plantId,
      kind: 'stop',
      day: window.from,
      dueBy: window.to,
      until: daysBetween(window.to, latest) < 0 ? window.to : latest,
      what: `Give the ${role} stop (${depth}): every stem on one day, except the tiniest new shoots.`,
      why: role === 'last' ? plan.words : words,
      standing:
        role === 'last'
          ? `${plan.planned.standing} ${plan.planned.shareInWords}`
          : 'Weeks between stops by the table of defaults. Every stem on one day: common practice, no source.',
      caution: cuttingCaution(kind),
      doneOn: null,
    }));
}

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

/** Look again after whitefly or grey mould was seen. */
export function lookAgainWork({ plantId, log }: PlantSeason): Work[] {
  return log.flatMap((entry) => {
    const what = SEEN[entry.kind as keyof typeof SEEN];
    if (what === undefined) return [];
    const day = addDays(entry.day, LOOK_AGAIN_DAYS);
    const until = addDays(day, LOOK_AGAIN_DAYS);
    const looked = firstOfKind(
      log,
      ['looked-under-leaves', 'cleared-leaf', 'seen-whitefly', 'seen-grey-mould'],
      addDays(entry.day, 1),
      until,
    );
    return {
      key: workKey(plantId, 'look-again', `${entry.kind}:${entry.day}`),
      plantId,
      kind: 'look-again',
      day,
      dueBy: day,
      until,
      what,
      why: `Seen on ${dayInWords(entry.day)}.`,
      standing: 'After a week: our own choice.',
      caution: SPRAYS,
      doneOn: looked?.day ?? null,
    } as const;
  });
}

const SEEN: Readonly<Partial<Record<LogEntry['kind'], string>>> = {
  'seen-whitefly': 'Look under the leaves again for whitefly; keep the plant apart until then.',
  'seen-grey-mould':
    'Look again for grey mould; take off what is hit, keep the leaves dry and the air moving.',
};

/** Schedule, pot and size held against the class in good time. */
export function entryWork(plantId: string, show: Show | null): Work[] {
  if (show === null) return [];
  return [
    {
      key: workKey(plantId, 'check-entry', show.id),
      plantId,
      kind: 'check-entry',
      day: addDays(show.day, -CHECK_ENTRY_DAYS),
      dueBy: addDays(show.day, -7),
      until: addDays(show.day, -1),
      what: `Read the schedule of ${show.name} again; measure pot and plant against the class.`,
      why: `The show is on ${dayInWords(show.day)}.`,
      standing: 'Three weeks before: our own choice. The schedule decides.',
      caution: null,
      doneOn: null,
    },
  ];
}

const RECORDED_AS = { feed: 'fed', 'pot-on': 'potted-on', own: null } as const;

/** The grower's own notes: feeding, potting on. */
export function ownWork(season: PlantSeason, own: OwnWork, lastDay: Day): Work[] {
  const found: Work[] = [];
  const { everyDays, untilDay } = own;
  const end = untilDay !== null && untilDay < lastDay ? untilDay : lastDay;
  for (let day = own.day; day <= end; day = addDays(day, everyDays ?? 1)) {
    const until = everyDays === null ? untilDay : addDays(day, everyDays - 1);
    const record = RECORDED_AS[own.kind];
    found.push({
      key: workKey(season.plantId, own.kind, `${own.id}:${day}`),
      plantId: season.plantId,
      kind: own.kind,
      day,
      dueBy: day,
      until,
      what: own.text,
      why: 'Your own note.',
      standing: 'Your own.',
      caution: own.kind === 'feed' ? 'Read the label of what you feed.' : null,
      doneOn: record === null ? null : (firstOfKind(season.log, [record], day, until)?.day ?? null),
    });
    if (everyDays === null) break;
  }
  return found;
}
