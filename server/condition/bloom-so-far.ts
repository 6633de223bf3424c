import { type Bloom, bloomOf, type NoBloom } from '../../core/bloom/bloom.ts';
import { type BloomAgainstShow, bloomAgainstShow } from '../../core/bloom/bloom-against-show.ts';
import { type BloomPoint, bloomCurve } from '../../core/bloom/bloom-curve.ts';
import { type BloomReading, bloomStretch } from '../../core/bloom/bloom-readings.ts';
import {
  type Bell,
  type BloomLesson,
  type ExpectedBloom,
  expectedBloom,
} from '../../core/bloom/expected-bloom.ts';
import { addDays, type Day, daysBetween } from '../../core/day/day.ts';
import type { PlantKind } from '../../core/plant.ts';
import { daysToBloom } from '../../core/season/days-to-bloom.ts';
import { nextPoint } from '../../core/season/normal-gamma.ts';
import type { SeenBloom } from '../../core/season/work.ts';
import type { AimedPlant } from '../bench/aimed-plant.ts';
import { remembering } from '../bench/remembering.ts';
import type { SeasonFacts } from '../season/season-facts.ts';
import type { KeepFit } from '../store/kept-fits.ts';
import { type BloomStart, bloomStarts } from './bloom-starts.ts';

/** A bloom without the curves that it was told from. */
export type BloomTold = Omit<Bloom, 'belief'>;

/** A plant's bloom as its sittings tell it up to today. */
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
  const { today, keepFit } = facts;
  const readings = (facts.flowerReadings.get(plant.id) ?? []).filter(({ day }) => day <= today);
  const starts = bloomStarts(facts.stops.get(plant.id) ?? [], facts.notes.get(plant.id) ?? [], today);
  const since = starts.at(-1) ?? null;
  const stretch = latest(bloomStretch(readings, since === null ? [] : [since.day], today));
  const first = stretch[0];
  const lastsDays = facts.knowledge.defaults.kinds[plant.kind].bloomLastsDays.value;
  const lessons = lessonsOf(facts, readings, starts, lastsDays);
  const alone = { readings: stretch, expected: expectedBloom(lastsDays, lessons) };
  const bell = first === undefined || since?.why !== 'stop' ? null : byLastStop(facts, plant, since, first);
  const asked = bell === null ? alone : { ...alone, expected: expectedBloom(lastsDays, lessons, bell) };
  const bloom = toldBloom(keepFit, asked);
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
    curve: () => (bloom.ok ? [...curveOf(keepFit, { ...asked, lastsDays })] : []),
    forRecords: () => {
      const told = toldBloom(keepFit, alone);
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

/** The bloom that work follows from; `null` where nothing is told of it against a show. */
export function seenBloom(facts: SeasonFacts, plant: AimedPlant): SeenBloom | null {
  const newest = facts.flowerReadings.get(plant.id)?.at(-1);
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

interface BloomQuestion {
  /** Of one bloom. */
  readonly readings: readonly BloomReading[];
  readonly expected: ExpectedBloom;
}

/** The plausible blooms themselves are large, so only those asked for just now are kept. */
const fittedBloom = remembering(
  ({ readings, expected }: BloomQuestion): Bloom | NoBloom =>
    bloomOf({ readings, startsAgain: [], today: readings.at(-1)?.day ?? ('0001-01-01' as Day), expected }),
  8,
);

/** A fit takes a tenth of a second, and page, bench and calendar ask for the same. */
const toldBloom = rememberingFits('bloom', 400, (question: BloomQuestion): BloomTold | NoBloom => {
  const bloom = fittedBloom(question);
  if (!bloom.ok) return bloom;
  const { belief: _, ...told } = bloom;
  return told;
});

const curveOf = rememberingFits(
  'bloom curve',
  100,
  ({ lastsDays, ...question }: BloomQuestion & { lastsDays: number }) => {
    const bloom = fittedBloom(question);
    return bloom.ok ? bloomCurve(bloom, lastsDays) : [];
  },
);

type ShowQuestion = BloomQuestion & {
  readonly showDay: Day;
  readonly lastsDays: number;
  readonly kind: PlantKind;
  readonly asOf: Day;
};

const toldAgainstShow = rememberingFits(
  'bloom against show',
  400,
  ({ showDay, lastsDays, kind, asOf, ...question }: ShowQuestion): BloomAgainstShow | null => {
    const bloom = fittedBloom(question);
    return bloom.ok ? bloomAgainstShow(bloom, { day: showDay, lastsDays, kind, today: asOf }) : null;
  },
);

/** Remembers the last answers; those that have gone are kept in the store. */
function rememberingFits<Question extends object, Answer>(
  name: string,
  most: number,
  reckon: (question: Question) => Answer,
): (keepFit: KeepFit, question: Question) => Answer {
  let keeping: KeepFit = (_name, _question, anew) => anew();
  const remembered = remembering(
    (question: Question) => keeping(name, question, () => reckon(question)),
    most,
  );
  return (keepFit, question) => {
    keeping = keepFit;
    return remembered(question);
  };
}

/** Today matters only once the last day for taking off heads is past, so that what is remembered holds from day to day. */
function againstShowOn(
  { today, keepFit }: SeasonFacts,
  question: Omit<ShowQuestion, 'asOf'>,
): BloomAgainstShow | null {
  const newestDay = question.readings.at(-1)?.day as Day;
  const told = toldAgainstShow(keepFit, { ...question, asOf: newestDay });
  const until = told?.takeOffUntil ?? null;
  return until === null || until > today ? told : toldAgainstShow(keepFit, { ...question, asOf: until });
}

/** Full bloom as the last stop lets expect it, days since the first reading; `null` where nothing is known of its kind and depth. */
function byLastStop(
  { stops, knowledge }: SeasonFacts,
  { id, kind, variety }: AimedPlant,
  since: BloomStart,
  first: BloomReading,
): Bell | null {
  const depth = stops.get(id)?.find(({ day }) => day === since.day)?.depth;
  if (depth === undefined) return null;
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
  { keepFit }: SeasonFacts,
  readings: readonly BloomReading[],
  starts: readonly BloomStart[],
  lastsDays: number,
): BloomLesson[] {
  return starts.flatMap(({ day }, index) => {
    const from = starts[index - 1]?.day ?? null;
    const stretch = latest(
      readings.filter((reading) => reading.day <= day && (from === null || reading.day > from)),
    );
    if (stretch.length < LEAST_LESSON_READINGS) return [];
    const bloom = toldBloom(keepFit, { readings: stretch, expected: expectedBloom(lastsDays) });
    if (!bloom.ok || !bloom.full.isPast || bloom.sureness === 'unsure') return [];
    const riseDays = Math.max(1, daysBetween(bloom.firstColour.day, bloom.full.day));
    return [{ fullShare: bloom.fullShare.share, riseDays }];
  });
}

function latest(stretch: readonly BloomReading[]): BloomReading[] {
  const newest = stretch.at(-1);
  if (newest === undefined) return [];
  const from = addDays(newest.day, -LONGEST_BLOOM_DAYS);
  return stretch.filter(({ day }) => day >= from);
}
