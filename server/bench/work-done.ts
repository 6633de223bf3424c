import type { Cut } from '../../core/cut/cut.ts';
import { cutList } from '../../core/cut/cut-list.ts';
import { type CutsOfSitting, plannedAndDoneWords, stillStanding } from '../../core/cut/planned-and-done.ts';
import { addDays } from '../../core/day/day.ts';
import type { CutList, Worked } from '../schemas/cuts.ts';
import type { Services } from '../services.ts';
import type { SittingRow } from '../store/sittings.ts';
import type { ViewRow } from '../store/views.ts';
import { type CutBasis, cutBasis, onePhotoBasis } from './cut-basis.ts';
import { doneByPhotos } from './done-by-photos.ts';

/** Later than this a cut stem may have grown out again. */
const COMPARED_WITHIN_DAYS = 14;

const ANOTHER_SIDE =
  'The photos taken since show the plant from other sides than this list, so planned and done cannot be compared. Photograph it at the same turns.';

interface WorkedList {
  readonly sitting: SittingRow;
  /** Of the whole plant, newest day first. */
  readonly views: readonly ViewRow[];
  readonly basis: CutBasis;
  readonly cuts: CutList['cuts'];
}

/** Compares what was planned with what the newest sitting within two weeks still shows; `null` while nothing was ticked off or skipped. */
export async function workDone(
  services: Pick<Services, 'db' | 'stemsOfSitting'>,
  { sitting, views, basis, cuts }: WorkedList,
): Promise<Worked | null> {
  const [done, skipped] = (['done', 'skipped'] as const).map(
    (state) => cuts.filter((cut) => cut.state === state).length,
  ) as [number, number];
  if (done + skipped === 0) return null;
  const planned = cuts.filter(({ chosen, state }) => chosen && state !== 'skipped');
  const counts = { plannedCuts: planned.length, done, skipped };
  const nothing = { ...counts, comparedWith: null, comparedDay: null, standing: [], words: null };
  if (planned.length === 0) return nothing;
  const later = laterSitting(views, sitting);
  if (later.length === 0) return { ...nothing, ...sameDay(planned, { sitting, views, basis }) };
  const before = cutsAbout(basis, planned);
  const after = await cutsLater(services, basis, later);
  if (after === 'not-measured') return nothing;
  if (before === null || after === null) return { ...nothing, words: ANOTHER_SIDE };
  const standing = stillStanding(before, after);
  const { sittingId, day } = later[0] as ViewRow;
  return {
    ...counts,
    comparedWith: sittingId,
    comparedDay: day,
    standing,
    words: plannedAndDoneWords(planned.length, standing),
  };
}

/** What photos of the same sitting show that came in after the work. */
function sameDay(
  planned: CutList['cuts'],
  { sitting, views, basis }: Pick<WorkedList, 'sitting' | 'views' | 'basis'>,
): Partial<Worked> {
  const together = views.filter(({ sittingId }) => sittingId === sitting.id);
  const after = together.filter(({ afterWork, report }) => afterWork && report?.status === 'measured');
  if (after.length === 0) return {};
  const before = together.filter(({ id }) => basis.viewIds.includes(id));
  const found = doneByPhotos(planned, before, after);
  if (found === null) return { words: ANOTHER_SIDE };
  return { ...found, comparedWith: sitting.id, comparedDay: sitting.day };
}

/** The views of the newest sitting that is not too late to be compared. */
function laterSitting(views: readonly ViewRow[], { day }: SittingRow): ViewRow[] {
  const last = addDays(day, COMPARED_WITHIN_DAYS);
  const newest = views.find((view) => view.day > day && view.day <= last);
  return newest === undefined ? [] : views.filter(({ sittingId }) => sittingId === newest.sittingId);
}

/** What the later sitting still shows outside its own ball, seen as the list was made; `null` when it shows no such side. */
async function cutsLater(
  services: Pick<Services, 'db' | 'stemsOfSitting'>,
  basis: CutBasis,
  later: readonly ViewRow[],
): Promise<CutsOfSitting | null | 'not-measured'> {
  if (basis.from === 'turned') {
    const found = await cutBasis(services, (later[0] as ViewRow).sittingId, later);
    if (found.from === null) return 'not-measured';
    return found.from === 'turned' ? cutsAbout(found, evenedUp(found)) : null;
  }
  const sameSide = later.filter(({ turnDeg }) => turnDeg === basis.turnDeg);
  if (sameSide.length === 0) return null;
  const found = onePhotoBasis(sameSide, []);
  return found.from === null ? 'not-measured' : cutsAbout(found, evenedUp(found));
}

function evenedUp(basis: CutBasis): Cut[] {
  return basis.from === 'turned'
    ? cutList({ from: 'turned', stems: basis.stems, present: basis.present, ball: null })
    : cutList({ from: 'one-photo', report: basis.report, ball: null });
}

function cutsAbout(basis: CutBasis, cuts: readonly Cut[]): CutsOfSitting | null {
  if (basis.from === 'turned') return { cuts, centre: basis.present.centreMm };
  return basis.report.ball === null ? null : { cuts, centre: basis.report.ball.centrePx };
}
