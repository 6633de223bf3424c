import { addDays } from '../day/day.ts';
import { dayInWords } from '../day/day-in-words.ts';
import { firstOfKind, type LogEntry } from './log-entry.ts';
import { type PlantSeason, type Work, workKey } from './work.ts';

/** After pests or mould look again so many days later: our own choice. */
const LOOK_AGAIN_DAYS = 7;

const SPRAYS =
  'Identify it first. If you think of a spray, read its label, follow local law, and keep children and animals away.';

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
