import type { Day } from '../../core/day/day.ts';
import type { LogEntry, LogKind } from '../../core/season/log-entry.ts';
import { dryUntil } from '../../core/vigour/dry-on-purpose.ts';
import { limpSitting, type StatureView } from '../../core/vigour/limp-sitting.ts';
import type { SeenSitting } from '../bench/seen-sitting.ts';
import type { PlantWilt } from '../schemas/condition.ts';
import type { Stop } from '../schemas/sitting.ts';

/** What the log tells of cuts beside the stops. */
const CUTS: readonly LogKind[] = ['took-missed-tips', 'bloom-taken-off', 'cleared-leaf'];

/** Reasons that are offered for leaving a limp plant's sitting out of the trend. */
const LIMP = 'limp when photographed';
const DRY = 'dry on purpose round a stop';

/** What is known beside the photos. */
export interface WiltRecords {
  readonly stops: readonly Stop[];
  readonly log: readonly LogEntry[];
  /** Days of sittings whose cut list was worked. */
  readonly workedDays: readonly Day[];
}

/**
 * Whether the newest sitting looks limp. A finding to be asked about: nothing is left out by it.
 *
 * @param sittings oldest first
 */
export function wiltAnswer(
  sittings: readonly SeenSitting[],
  { stops, log, workedDays }: WiltRecords,
): PlantWilt | null {
  const newest = sittings.findLast(({ views }) => views.some(({ report }) => report?.status === 'measured'));
  if (newest === undefined) return null;
  if (newest.leftOut !== null) {
    return { state: 'not-told', words: `The newest sitting is left out by you: ${newest.leftOut}.` };
  }
  const earlier = sittings.filter(({ day, leftOut }) => day < newest.day && leftOut === null);
  const dry = dryUntil(newest.day, stops);
  const cutDays = [
    ...stops.map(({ day }) => day),
    ...log.filter(({ kind }) => CUTS.includes(kind)).map(({ day }) => day),
    ...workedDays,
  ];
  const finding = limpSitting(statures(newest), earlier.flatMap(statures), { cutDays, dryUntil: dry });
  if (!finding.ok) return { state: 'not-told', words: finding.hint };
  const { viewId, isLimp, against, words } = finding;
  const { height, spread, middle } = finding.fallen;
  return {
    state: !isLimp ? 'firm' : dry === null ? 'limp' : 'dry-on-purpose',
    sittingId: newest.id,
    viewId,
    day: newest.day,
    against,
    fallen: { height, spread, middle },
    words,
    leaveOutFor: !isLimp ? null : dry === null ? LIMP : DRY,
  };
}

function statures({ day, views }: SeenSitting): StatureView[] {
  return views.flatMap(({ id, turnDeg, report, afterWork }) =>
    report?.status !== 'measured' || afterWork ? [] : [{ viewId: id, day, turnDeg, report }],
  );
}
