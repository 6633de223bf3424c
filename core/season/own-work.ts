import { addDays, type Day } from '../day/day.ts';
import { requirePositiveInteger } from '../errors/expect.ts';
import { firstOfKind } from './log-entry.ts';
import { type OwnWork, type PlantSeason, type Work, workKey } from './work.ts';

/** The log entry that does it; `null`: none. */
const RECORDED_AS = { feed: 'fed', 'pot-on': 'potted-on', own: null } as const;

/** The grower's own notes: feeding, potting on. */
export function ownWork(season: PlantSeason, own: OwnWork, lastDay: Day): Work[] {
  const found: Work[] = [];
  const { everyDays, untilDay } = own;
  if (everyDays !== null) requirePositiveInteger(everyDays, 'everyDays');
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
