import { type Day, daysBetween } from '../../core/day/day.ts';
import { type CleanUp, cleanUpOf, type GapsSeen } from '../../core/vigour/clean-up.ts';
import { tightnessWords } from '../../core/vigour/compare-gaps.ts';
import type { Gaps } from '../../core/vigour/gaps.ts';
import { gapsWords, thinClocks } from '../../core/vigour/gaps-words.ts';
import type { AimedPlant } from '../bench/aimed-plant.ts';
import type { SeenSitting } from '../bench/seen-sitting.ts';
import type { PlantFill } from '../schemas/condition.ts';
import type { SeasonFacts } from '../season/season-facts.ts';
import type { Database } from '../store/database.ts';
import { type TightnessRow, tightnessOfKind } from '../store/tightness.ts';

/** Plants are as far on when their days since the last stop differ by no more. */
const ALIKE_WITHIN_DAYS = 10;
/** Clean-ups that are told, the newest ones. */
const MOST_CLEAN_UPS = 3;

interface GapsOfView extends GapsSeen {
  readonly sittingId: string;
  readonly viewId: string;
}

/**
 * Where light falls through, what clean-ups did, and how tight the plant is beside others.
 *
 * @param sittings oldest first
 */
export function fillAnswer(
  db: Database,
  facts: SeasonFacts,
  plant: AimedPlant,
  sittings: readonly SeenSitting[],
): PlantFill | null {
  const seen = sittings.flatMap(gapsOfSitting);
  const last = seen.at(-1);
  if (last === undefined) return null;
  // Of the sides of one sitting the one through which most light falls.
  const newest = seen
    .filter(({ sittingId }) => sittingId === last.sittingId)
    .reduce((open, one) => (one.gaps.tightness < open.gaps.tightness ? one : open));
  const cleared = (facts.notes.get(plant.id) ?? []).filter(({ kind }) => kind === 'cleared-leaf');
  const beside = tightnessBeside(db, facts, plant, newest);
  return {
    newest: { ...newestAnswer(newest), words: gapsWords(newest.gaps) },
    cleanUps: cleared
      .slice(0, MOST_CLEAN_UPS)
      .map(({ id, day }) => cleanUpAnswer(id, day, cleanUpOf(day, seen))),
    tightnessWords: tightnessWords(newest.gaps, beside),
    comparedWith: beside.length,
  };
}

function gapsOfSitting({ id, day, views, leftOut }: SeenSitting): GapsOfView[] {
  if (leftOut !== null) return [];
  return views.flatMap(({ id: viewId, turnDeg, report, afterWork }) =>
    report?.gaps == null || report.notCompared !== null || afterWork
      ? []
      : [{ sittingId: id, viewId, day, turnDeg, gaps: report.gaps }],
  );
}

function newestAnswer({ sittingId, viewId, day, gaps }: GapsOfView) {
  return {
    sittingId,
    viewId,
    day,
    thinClocks: thinClocks(gaps),
    openBase: openBaseOf(gaps),
    tightness: { share: gaps.tightness, plusMinus: gaps.tightnessPlusMinus },
  };
}

function openBaseOf({ openBase, openBasePlusMinus }: Gaps) {
  return { share: openBase, plusMinus: openBasePlusMinus };
}

function cleanUpAnswer(noteId: string, day: Day, { before, after, words }: CleanUp) {
  return {
    noteId,
    day,
    beforeDay: before?.day ?? null,
    afterDay: after?.day ?? null,
    before: before && openBaseOf(before.gaps),
    after: after && openBaseOf(after.gaps),
    words,
  };
}

/** Tightness of the grower's other plants of the kind about as long after their last stop: of each the sitting nearest to it. */
function tightnessBeside(db: Database, facts: SeasonFacts, plant: AimedPlant, newest: GapsOfView): number[] {
  const since = daysSinceStop(facts, plant.id, newest.day);
  if (since === null) return [];
  const nearest = new Map<string, { readonly offDays: number; readonly tightness: number }>();
  for (const { plantId, day, tightness } of tightnessOfKind(db, plant)) {
    const offDays = offBy(facts, { plantId, day }, since);
    if (offDays === null || offDays > ALIKE_WITHIN_DAYS) continue;
    const known = nearest.get(plantId);
    if (known === undefined || offDays < known.offDays) nearest.set(plantId, { offDays, tightness });
  }
  return [...nearest.values()].map(({ tightness }) => tightness);
}

function offBy(
  facts: SeasonFacts,
  { plantId, day }: Pick<TightnessRow, 'plantId' | 'day'>,
  since: number,
): number | null {
  const other = daysSinceStop(facts, plantId, day);
  return other === null ? null : Math.abs(other - since);
}

/** A photo of the day of a stop shows the plant before it. */
function daysSinceStop({ stops }: SeasonFacts, plantId: string, on: Day): number | null {
  const last = (stops.get(plantId) ?? [])
    .map(({ day }) => day)
    .filter((day) => day < on)
    .sort()
    .at(-1);
  return last === undefined ? null : daysBetween(last, on);
}
