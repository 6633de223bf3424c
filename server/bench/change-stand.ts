import type { Day } from '../../core/day/day.ts';
import type { Database } from '../store/database.ts';
import { moveSittingsSince } from '../store/stand-sittings.ts';
import {
  addVersion,
  changeVersion,
  isVersionUsed,
  type StandVersionRow,
  type VersionFacts,
  versionsOfStand,
} from '../store/stand-versions.ts';
import { changesInWords } from './stand-in-words.ts';

/** What is to be different, from which day. */
export interface WantedChange {
  readonly facts: Partial<VersionFacts>;
  /** As the grower told it: earlier sittings from that day on go along. `null`: from today, for new sittings only. */
  readonly sinceDay: Day | null;
  readonly today: Day;
}

/** A change that cannot be made, with what to do. */
export interface RefusedChange {
  readonly ok: false;
  readonly field: 'sinceDay' | 'sheet';
  readonly hint: string;
}

/**
 * Changes what matters of a stand. A version on which no photo was taken yet is written anew; else the next version
 * begins, and the sittings of before keep theirs.
 */
export function changeStand(
  db: Database,
  standId: string,
  wanted: WantedChange,
): { readonly ok: true } | RefusedChange {
  const [current, previous] = versionsOfStand(db, standId);
  if (!current) throw new RangeError(`Expected a stand with a version but received ${standId}`);
  const after = withoutStalePhotos(current, { ...current, ...wanted.facts });
  if (after.scaleFrom === 'sheet' && after.sheet === null) {
    return {
      ok: false,
      field: 'sheet',
      hint: 'To have the scale from the sheet, say which paper it is and where it is fixed.',
    };
  }
  const changes = changesInWords(current, after);
  const losesPhoto = current.emptyPhoto !== null && after.emptyPhoto === null;
  const startsAnew = changes.length > 0 && (losesPhoto || isVersionUsed(db, current.id));
  const earliest = startsAnew ? current.sinceDay : (previous?.sinceDay ?? null);
  const refused = wanted.sinceDay === null ? null : refusedDay(wanted.sinceDay, wanted.today, earliest);
  if (refused) return refused;

  if (!startsAnew) {
    changeVersion(db, current.id, { ...after, sinceDay: wanted.sinceDay ?? current.sinceDay });
    return { ok: true };
  }
  const id = addVersion(db, {
    ...after,
    standId,
    // Should the clock have been turned back, the new version still begins after the one before.
    sinceDay: wanted.sinceDay ?? ([wanted.today, current.sinceDay].sort().at(-1) as Day),
    changed: changes.join(' '),
  });
  if (wanted.sinceDay !== null) moveSittingsSince(db, { from: current, to: id, sinceDay: wanted.sinceDay });
  return { ok: true };
}

/** A photo of the place as it was says nothing once camera, backdrop or sheet stand otherwise. */
function withoutStalePhotos(before: StandVersionRow, after: StandVersionRow): StandVersionRow {
  const moved =
    isOther(before.cameraDistanceMm, after.cameraDistanceMm) ||
    isOther(before.cameraHeightMm, after.cameraHeightMm) ||
    isOther(before.backdrop, after.backdrop) ||
    isOther(before.sheet?.paper ?? null, after.sheet?.paper ?? null) ||
    isOther(before.sheet?.place ?? null, after.sheet?.place ?? null);
  if (before.emptyPhoto !== after.emptyPhoto) return { ...after, firstPhoto: null };
  return moved ? { ...after, emptyPhoto: null, emptyCheck: null, firstPhoto: null } : after;
}

/** What was not known before is only told now, not moved. */
function isOther<Value>(before: Value | null, after: Value | null): boolean {
  return before !== null && before !== after;
}

function refusedDay(sinceDay: Day, today: Day, earliest: string | null): RefusedChange | null {
  if (sinceDay > today) {
    return {
      ok: false,
      field: 'sinceDay',
      hint: `Give today or an earlier day; ${sinceDay} is still to come.`,
    };
  }
  if (earliest !== null && sinceDay < earliest) {
    return {
      ok: false,
      field: 'sinceDay',
      hint: `Give ${earliest} or a later day: before it the stand was already another.`,
    };
  }
  return null;
}
