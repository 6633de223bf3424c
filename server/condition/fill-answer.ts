import { addDays, type Day, daysBetween } from '../../core/day/day.ts';
import { type CleanUp, cleanUpOf, type GapsSeen } from '../../core/vigour/clean-up.ts';
import { tightnessWords } from '../../core/vigour/compare-gaps.ts';
import type { Gaps } from '../../core/vigour/gaps.ts';
import { gapsWords, thinClocks } from '../../core/vigour/gaps-words.ts';
import type { AimedPlant } from '../bench/aimed-plant.ts';
import type { SeenSitting } from '../bench/seen-sitting.ts';
import type { PlantFill } from '../schemas/condition.ts';
import type { SeasonFacts } from '../season/season-facts.ts';
import type { Database } from '../store/database.ts';
import { rememberingPlants } from '../store/remembering.ts';
import { othersOfKind, tightnessWithin } from '../store/tightness.ts';

/** Plants are as far on when their days since the last stop differ by no more. */
const ALIKE_WITHIN_DAYS = 10;
/** Clean-ups that are told, the newest ones. */
const MOST_CLEAN_UPS = 3;

interface GapsOfView extends GapsSeen {
  readonly sittingId: string;
  readonly viewId: string;
}

/** What a plant's own photos tell of where light falls through. */
export interface FillSeen {
  readonly newest: GapsOfView;
  readonly cleanUps: PlantFill['cleanUps'];
}

/**
 * Where light falls through, and what clean-ups did.
 *
 * @param sittings oldest first
 */
export function fillSeen(
  facts: SeasonFacts,
  plant: AimedPlant,
  sittings: readonly SeenSitting[],
): FillSeen | null {
  const seen = sittings.flatMap(gapsOfSitting);
  const last = seen.at(-1);
  if (last === undefined) return null;
  // Of the sides of one sitting the one through which most light falls.
  const newest = seen
    .filter(({ sittingId }) => sittingId === last.sittingId)
    .reduce((open, one) => (one.gaps.tightness < open.gaps.tightness ? one : open));
  const cleared = facts.notes.get(plant.id).filter(({ kind }) => kind === 'cleared-leaf');
  return {
    newest,
    cleanUps: cleared
      .slice(0, MOST_CLEAN_UPS)
      .map(({ id, day }) => cleanUpAnswer(id, day, cleanUpOf(day, seen))),
  };
}

/** What is seen of a plant, and how tight it is beside others. */
export function fillAnswer(
  db: Database,
  facts: SeasonFacts,
  plant: AimedPlant,
  { newest, cleanUps }: FillSeen,
): PlantFill {
  const beside = tightnessBeside(db, facts, plant, newest);
  return {
    newest: { ...newestAnswer(newest), words: gapsWords(newest.gaps) },
    cleanUps,
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
  const nearest: number[] = [];
  for (const plantId of othersOfKind(db, plant)) {
    const of = { plantId, asked: [since] };
    const found = rememberedNearest(db, of, () => nearestSitting(db, facts, plantId, since));
    if (found !== null) nearest.push(found);
  }
  return nearest;
}

const rememberedNearest = rememberingPlants<number | null>();

/** How tight a plant was at its sitting nearest to so many days after a stop; `null` when none was near. */
function nearestSitting(db: Database, facts: SeasonFacts, plantId: string, since: number): number | null {
  const windows = facts.stops.get(plantId).map(({ day }) => ({
    from: addDays(day, Math.max(1, since - ALIKE_WITHIN_DAYS)),
    to: addDays(day, since + ALIKE_WITHIN_DAYS),
  }));
  let nearest: { readonly offDays: number; readonly tightness: number } | null = null;
  for (const { day, tightness } of tightnessWithin(db, plantId, windows)) {
    const days = daysSinceStop(facts, plantId, day);
    const offDays = days === null ? Number.POSITIVE_INFINITY : Math.abs(days - since);
    if (offDays > ALIKE_WITHIN_DAYS || offDays >= (nearest?.offDays ?? Number.POSITIVE_INFINITY)) continue;
    nearest = { offDays, tightness };
  }
  return nearest?.tightness ?? null;
}

/** A photo of the day of a stop shows the plant before it. */
function daysSinceStop({ stops }: SeasonFacts, plantId: string, on: Day): number | null {
  const last = stops
    .get(plantId)
    .map(({ day }) => day)
    .filter((day) => day < on)
    .sort()
    .at(-1);
  return last === undefined ? null : daysBetween(last, on);
}
