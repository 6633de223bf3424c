import { requirePositive } from '../errors/expect.ts';

/** A bell curve for a logarithm. */
export interface LogBell {
  readonly mean: number;
  readonly sd: number;
}

/** What is held likely of a growth before any sitting since the stop: both figures as bell curves of their logarithms. */
export interface ExpectedGrowth {
  /** ln of how much the radius grows in all after a stop, mm. */
  readonly logGrowthMm: LogBell;
  /** ln of the weeks until half of it is done. */
  readonly logWeeksToHalf: LogBell;
  readonly restsOn: 'plant' | 'variety' | 'guess';
}

/** What one stretch between stops says by itself; `null` where it says nothing worth counting. */
export interface GrowthLesson {
  readonly logGrowthMm: LogBell | null;
  readonly logWeeksToHalf: LogBell | null;
}

type Figure = keyof GrowthLesson;

/**
 * The stated default, which the app calls a guess: no published figure was found for how much or how fast a potted plant's ball grows
 * after a stop. Growth is a share of the ball's radius, because dwarfs and giants differ.
 */
export const GUESS = { growthShare: 0.7, weeksToHalf: 5 } as const;

/**
 * How far growth differs, in standard deviations of its logarithm (0.1 is about 10 %): from variety to variety, from plant to plant of
 * one variety, and from one stretch between stops to the next of one plant (season, feed, depth of the stop).
 *
 * These are the weights of all that is known before: a stretch of the plant itself counts 1 ÷ (its own doubt² + stretch²); what the
 * variety's other plants say counts the less the more plants differ; the guess counts 1 ÷ variety². They are guesses themselves, wide
 * enough that five sittings outweigh them.
 */
export const SPREADS = {
  logGrowthMm: { variety: 0.65, plant: 0.3, stretch: 0.35 },
  logWeeksToHalf: { variety: 0.5, plant: 0.25, stretch: 0.4 },
} as const;

/**
 * What to expect of a plant's next stretch, from its own earlier stretches first, then its variety's, then the guess.
 *
 * @param radiusMm of the ball now, above 0; the guess is in shares of it
 * @param ownLessons of the plant's stretches, in any order
 * @param varietyLessons one list for each other plant of the variety
 *
 * How: a plant's figure is its variety's plus its own part, a stretch's figure the plant's plus the stretch's part, all of them bell curves
 * of the logarithm. Given the lessons, the next stretch's bell curve follows.
 *
 * Reference: normal hierarchical model with known spreads, Gelman et al. (2013), Bayesian Data Analysis, 3rd ed., 5.4.
 *
 * Example: without lessons, a ball of 100 mm is expected to grow by 70 mm, give or take a factor of 2.2.
 */
export function expectedGrowth(
  radiusMm: number,
  ownLessons: readonly GrowthLesson[] = [],
  varietyLessons: readonly (readonly GrowthLesson[])[] = [],
): ExpectedGrowth {
  requirePositive(radiusMm, 'radiusMm');
  const teaches = ({ logGrowthMm, logWeeksToHalf }: GrowthLesson) =>
    logGrowthMm !== null || logWeeksToHalf !== null;
  return {
    logGrowthMm: expected('logGrowthMm', Math.log(GUESS.growthShare * radiusMm), ownLessons, varietyLessons),
    logWeeksToHalf: expected('logWeeksToHalf', Math.log(GUESS.weeksToHalf), ownLessons, varietyLessons),
    restsOn: ownLessons.some(teaches) ? 'plant' : varietyLessons.flat().some(teaches) ? 'variety' : 'guess',
  };
}

/** What sittings added to what was held likely before them: the one bell curve divided by the other. */
export function lessonOf(before: LogBell, after: LogBell): LogBell | null {
  const weight = after.sd ** -2 - before.sd ** -2;
  // Hardly narrower than before: nothing was learnt, and the division would blow up rounding.
  if (weight < LEAST_LESSON * before.sd ** -2) return null;
  const mean = (after.mean * after.sd ** -2 - before.mean * before.sd ** -2) / weight;
  return { mean, sd: weight ** -0.5 };
}

const LEAST_LESSON = 0.1;

function expected(
  figure: Figure,
  guessed: number,
  ownLessons: readonly GrowthLesson[],
  varietyLessons: readonly (readonly GrowthLesson[])[],
): LogBell {
  const spread = SPREADS[figure];
  let variety: LogBell = { mean: guessed, sd: spread.variety };
  for (const lessons of varietyLessons) {
    const plant = joined(lessonsOf(figure, lessons, spread.stretch));
    if (plant !== null) variety = joined([variety, widened(plant, spread.plant)]) as LogBell;
  }
  const plant = joined([widened(variety, spread.plant), ...lessonsOf(figure, ownLessons, spread.stretch)]);
  return widened(plant as LogBell, spread.stretch);
}

/** Lessons on a plant's own figure: each stretch differs from it by the stretch's part. */
function lessonsOf(figure: Figure, lessons: readonly GrowthLesson[], stretchSd: number): LogBell[] {
  return lessons.flatMap((lesson) => {
    const bell = lesson[figure];
    return bell === null ? [] : [widened(bell, stretchSd)];
  });
}

function widened({ mean, sd }: LogBell, by: number): LogBell {
  return { mean, sd: Math.hypot(sd, by) };
}

/** Bell curves about one figure, each weighted by 1 ÷ sd². */
function joined(bells: readonly LogBell[]): LogBell | null {
  const weight = bells.reduce((sum, { sd }) => sum + sd ** -2, 0);
  if (weight === 0) return null;
  return { mean: bells.reduce((sum, { mean, sd }) => sum + mean * sd ** -2, 0) / weight, sd: weight ** -0.5 };
}
