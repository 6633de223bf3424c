import type { NoBloom } from '../../core/bloom/bloom.ts';
import type { BloomAgainstShow } from '../../core/bloom/bloom-against-show.ts';
import type { BloomPoint } from '../../core/bloom/bloom-curve.ts';
import { type BloomReading, bloomStretch } from '../../core/bloom/bloom-readings.ts';
import { type Bell, type BloomLesson, expectedBloom } from '../../core/bloom/expected-bloom.ts';
import { addDays, type Day, daysBetween } from '../../core/day/day.ts';
import { daysToBloom } from '../../core/season/days-to-bloom.ts';
import { nextPoint } from '../../core/season/normal-gamma.ts';
import type { SeenBloom } from '../../core/season/work.ts';
import type { AimedPlant } from '../bench/aimed-plant.ts';
import type { SeasonFacts } from '../season/season-facts.ts';
import type { Database } from '../store/database.ts';
import { rememberingPlants } from '../store/remembering.ts';
import type { BloomFit, BloomTold, ShowQuestion } from './bloom-fits.ts';
import { type BloomStart, bloomStarts } from './bloom-starts.ts';
import { FitsMissing } from './fits.ts';

/** A plant's bloom as its sittings tell it up to today. What is asked of it may throw `FitsMissing`, as `facts.fits` say. */
export interface BloomSoFar {
  /** Of every sitting that counts, oldest first. */
  readonly readings: readonly BloomReading[];
  /** What began the bloom that is going on; `null` when nothing did. */
  readonly since: BloomStart | null;
  /** First day that an entry of this bloom in the log may bear. */
  readonly from: Day;
  readonly bloom: BloomTold | NoBloom;
  /** `null` without a show that this bloom may be for, before colour is seen, and when the photos are too old. */
  readonly againstShow: BloomAgainstShow | null;
  /** To be drawn; reckoned when it is asked for. */
  readonly curve: () => BloomPoint[];
  /** Told by the sittings alone, for the records; `null` before colour is seen. */
  readonly forRecords: () => BloomTold | null;
}

/** A reading older than this belongs to the bloom of another season, whether or not anything was written down between. */
const LONGEST_BLOOM_DAYS = 180;
/** Where nothing began a bloom, it may have begun so long before its first photo. */
const UNSEEN_DAYS = 60;
/** A bloom seen on fewer sittings teaches nothing. */
const LEAST_LESSON_READINGS = 4;
/** Half the distance from the 5th to the 95th percentile of a normal distribution, standard deviations. */
const SDS_OF_90 = 1.645;

export function bloomSoFar(facts: SeasonFacts, plant: AimedPlant): BloomSoFar {
  const { today, fits } = facts;
  const readings = facts.flowerReadings.get(plant.id).filter(({ day }) => day <= today);
  const starts = bloomStarts(facts.stops.get(plant.id), facts.notes.get(plant.id), today);
  const since = starts.at(-1) ?? null;
  const stretch = latest(bloomStretch(readings, since === null ? [] : [since.day], today));
  const first = stretch[0];
  const lastsDays = facts.knowledgeOf(plant.kind).defaults.kinds[plant.kind].bloomLastsDays.value;
  const lessons = lessonsOf(facts, readings, starts, lastsDays);
  const alone = { readings: stretch, expected: expectedBloom(lastsDays, lessons) };
  const bell = first === undefined || since?.why !== 'stop' ? null : byLastStop(facts, plant, since, first);
  const asked = bell === null ? alone : { ...alone, expected: expectedBloom(lastsDays, lessons, bell) };
  const bloom = fits.told('bloom', asked);
  const { showDay, kind } = plant;
  return {
    readings,
    since,
    from: since?.day ?? addDays(first?.day ?? today, -UNSEEN_DAYS),
    bloom,
    againstShow:
      bloom.ok && showDay !== null && isForShow(bloom.newestDay, showDay, today)
        ? againstShowOn(facts, { ...asked, showDay, lastsDays, kind })
        : null,
    curve: () => (bloom.ok ? [...fits.told('bloom curve', { ...asked, lastsDays })] : []),
    forRecords: () => {
      const told = fits.told('bloom', alone);
      return told.ok ? told : null;
    },
  };
}

/** A bloom not photographed for so long has gone on unseen. */
const STALE_DAYS = 28;
/** Colour seen earlier than this before a show is of a bloom before the one for the show. */
const MOST_AHEAD_DAYS = 120;

function isForShow(newestDay: Day, showDay: Day, today: Day): boolean {
  return (
    showDay >= today &&
    daysBetween(newestDay, today) <= STALE_DAYS &&
    daysBetween(newestDay, showDay) <= MOST_AHEAD_DAYS
  );
}

/** The bloom that work follows from. */
export interface BloomNow {
  /** `null` where nothing is told of it against a show, and while its fit is still being reckoned. */
  readonly bloom: SeenBloom | null;
  readonly isUnderWay: boolean;
}

const rememberedNow = rememberingPlants<BloomNow>();

export function bloomNow(db: Database, facts: SeasonFacts, plant: AimedPlant): BloomNow {
  return rememberedNow(db, { plantId: plant.id, asked: facts.restsOn(plant) }, () => {
    try {
      return { bloom: seenBloom(facts, plant), isUnderWay: false };
    } catch (fault) {
      if (!(fault instanceof FitsMissing)) throw fault;
      facts.fits.missing(plant.id);
      return { bloom: null, isUnderWay: true };
    }
  });
}

/** Throws `FitsMissing` where the fits say so. */
export function seenBloom(facts: SeasonFacts, plant: AimedPlant): SeenBloom | null {
  const newest = facts.flowerReadings.get(plant.id).at(-1);
  // Told before anything is fitted: bench and calendar ask for every plant.
  if (newest === undefined || plant.showDay === null) return null;
  if (!isForShow(newest.day, plant.showDay, facts.today)) return null;
  const { bloom, againstShow } = bloomSoFar(facts, plant);
  if (!bloom.ok || againstShow === null) return null;
  const isTold = bloom.sureness !== 'unsure';
  return {
    day: bloom.newestDay,
    isTold,
    fullOn: isTold && bloom.full.isPast ? bloom.full.day : null,
    againstShow,
  };
}

/** Today matters only once the last day for taking off heads is past, so that what is remembered holds from day to day. */
function againstShowOn(
  { today, fits }: SeasonFacts,
  question: Omit<ShowQuestion, 'asOf'>,
): BloomAgainstShow | null {
  const newestDay = question.readings.at(-1)?.day as Day;
  const told = fits.told('bloom against show', { ...question, asOf: newestDay });
  const until = told?.takeOffUntil ?? null;
  return until === null || until > today
    ? told
    : fits.told('bloom against show', { ...question, asOf: until });
}

/** Full bloom as the last stop lets expect it, days since the first reading; `null` where nothing is known of its kind and depth. */
function byLastStop(
  { stops, knowledgeOf }: SeasonFacts,
  { id, kind, variety }: AimedPlant,
  since: BloomStart,
  first: BloomReading,
): Bell | null {
  const depth = stops.get(id).find(({ day }) => day === since.day)?.depth;
  if (depth === undefined) return null;
  const knowledge = knowledgeOf(kind);
  // What is foreseen is not learned from: this stop's own record may stand in the log already.
  const records = knowledge.records.filter(({ plantId, stopDay }) => plantId !== id || stopDay !== since.day);
  const days = daysToBloom({ plantId: id, kind, variety, depth }, { ...knowledge, records });
  if (!days.ok) return null;
  const spread = nextPoint(days.belief, 0.95) - nextPoint(days.belief, 0.05);
  return {
    mean: days.meanDays - daysBetween(since.day, first.day),
    sd: spread / (2 * SDS_OF_90),
  };
}

/** What the plant's earlier blooms showed, those that were followed to their full. */
function lessonsOf(
  { fits }: SeasonFacts,
  readings: readonly BloomReading[],
  starts: readonly BloomStart[],
  lastsDays: number,
): BloomLesson[] {
  const missing: BloomFit[] = [];
  const lessons = starts.flatMap(({ day }, index) => {
    const from = starts[index - 1]?.day ?? null;
    const stretch = latest(
      readings.filter((reading) => reading.day <= day && (from === null || reading.day > from)),
    );
    if (stretch.length < LEAST_LESSON_READINGS) return [];
    const bloom = toldOrMissing({ readings: stretch, expected: expectedBloom(lastsDays) });
    if (bloom === null) return [];
    if (!bloom.ok || !bloom.full.isPast || bloom.sureness === 'unsure') return [];
    const riseDays = Math.max(1, daysBetween(bloom.firstColour.day, bloom.full.day));
    return [{ fullShare: bloom.fullShare.share, riseDays }];
  });
  if (missing.length > 0) throw new FitsMissing(missing);
  return lessons;

  /** No lesson waits for another: all that are missing are asked for at once. */
  function toldOrMissing(question: BloomFit['question']) {
    try {
      return fits.told('bloom', question);
    } catch (fault) {
      if (!(fault instanceof FitsMissing)) throw fault;
      missing.push(...fault.fits);
      return null;
    }
  }
}

function latest(stretch: readonly BloomReading[]): BloomReading[] {
  const newest = stretch.at(-1);
  if (newest === undefined) return [];
  const from = addDays(newest.day, -LONGEST_BLOOM_DAYS);
  return stretch.filter(({ day }) => day >= from);
}
