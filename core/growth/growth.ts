import type { Sureness } from '../advice/advice.ts';
import type { Day } from '../day/day.ts';
import { type ExpectedGrowth, expectedGrowth, type GrowthLesson } from './expected-growth.ts';
import { curveRanges, type GrowthBelief, growthBelief, growthLesson, type Range } from './growth-belief.ts';
import type { GrowthCurve } from './growth-curve.ts';
import { growthWords } from './growth-words.ts';
import { type GrowthStretch, growthStretches, type RadiusReading } from './radius-readings.ts';

/** The ball's radius through the weeks, and the days on which the plant was cut. */
export interface PlantRadii {
  /** In any order. */
  readonly readings: readonly RadiusReading[];
  readonly stops: readonly Day[];
}

export interface GrowthRequest extends PlantRadii {
  readonly today: Day;
  /** One list for each other plant of its variety, as `growthLessons` gives them. */
  readonly varietyLessons: readonly (readonly GrowthLesson[])[];
}

/** How the ball has grown since the last stop. */
export interface Growth {
  readonly ok: true;
  readonly since: Day;
  readonly begunBy: GrowthStretch['begunBy'];
  /** Sittings since then. */
  readonly sittings: number;
  /** The least-squares curve of the kind that fits better. */
  readonly curve: GrowthCurve;
  /** 95 % intervals; those of the first three allow for either kind of curve, that of the rate is of the chosen kind. */
  readonly interval95: {
    readonly startRadiusMm: Range;
    readonly finalRadiusMm: Range;
    readonly weeksToHalf: Range;
    readonly ratePerWeek: Range;
  };
  /** What counted beside the readings. */
  readonly restsOn: ExpectedGrowth['restsOn'];
  readonly belief: GrowthBelief;
  /** What to expect of the next stretch, if the plant is stopped now. */
  readonly afterNextStop: ExpectedGrowth;
  readonly words: string;
  readonly why: string;
  readonly sureness: Sureness;
  readonly notes: readonly string[];
}

/** No curve can be told. */
export interface NoGrowth {
  readonly ok: false;
  readonly reason: 'no-sitting' | 'no-sitting-since-stop';
  readonly hint: string;
  /** What to expect after a stop all the same; `null` when the plant was never measured in mm. */
  readonly afterNextStop: ExpectedGrowth | null;
}

const HINTS: Readonly<Record<NoGrowth['reason'], string>> = {
  'no-sitting':
    'No photo tells the ball’s size in mm yet: give the pot’s rim diameter and take the first photo.',
  'no-sitting-since-stop':
    'The plant was cut since the last photo: photograph it again to see from which size it grows on.',
};

/**
 * How the ball has grown since the last stop, and what it tends to.
 *
 * @param request the plant's radii and stops, today, and what other plants of its variety teach; what lies after today is left out
 * @returns curve, 95 % intervals and what to expect after the next stop; or the reason why there is none
 *
 * How: a logistic and a Gompertz curve (`chooseCurve`) on the sittings since the last stop. What was expected beforehand
 * (`expectedGrowth`) counts too, much with one or two sittings, next to nothing with many. A sitting of a stop's day shows the plant before the cut.
 *
 * Notes: the curve knows neither season nor light nor feed; a plant that slows in winter grows on in spring, which no saturating curve
 * foresees. It tells the ball's radius, not the width over the longest stems.
 *
 * Example: sittings of 80, 92, 102, 110, 116 and 120 mm in the six weeks after a stop tend to a ball of about 129 mm.
 */
export function growthOf({ readings, stops, today, varietyLessons }: GrowthRequest): Growth | NoGrowth {
  const past = readings.filter(({ day }) => day <= today);
  const cuts = stops.filter((day) => day <= today).sort();
  const stretches = growthStretches(past, cuts);
  const current = stretches.at(-1);
  if (current === undefined) {
    return { ok: false, reason: 'no-sitting', hint: HINTS['no-sitting'], afterNextStop: null };
  }
  const newest = current.readings.at(-1)?.radiusMm as number;
  const lastCut = cuts.at(-1);
  if (lastCut !== undefined && past.every(({ day }) => day <= lastCut)) {
    const reason = 'no-sitting-since-stop';
    const afterNextStop = expectedGrowth(newest, lessonsOf(stretches), varietyLessons);
    return { ok: false, reason, hint: HINTS[reason], afterNextStop };
  }
  const earlier = lessonsOf(stretches.slice(0, -1));
  const expected = expectedGrowth(firstRadius(current), earlier, varietyLessons);
  const belief = growthBelief(current.readings, expected);
  const lessons = [...earlier, growthLesson(belief, expected)];
  const { curve } = belief.choice.fits[belief.choice.chosen];
  const growth = {
    since: current.since,
    begunBy: current.begunBy,
    sittings: current.readings.length,
    curve,
    interval95: curveRanges(belief, 0.95),
    restsOn: expected.restsOn,
    belief,
  };
  return {
    ok: true,
    ...growth,
    afterNextStop: expectedGrowth(newest, lessons, varietyLessons),
    ...growthWords({ ...growth, newestRadiusMm: newest }),
  };
}

/** What each stretch of a plant says by itself, oldest first. */
export function growthLessons({ readings, stops }: PlantRadii): GrowthLesson[] {
  return lessonsOf(growthStretches(readings, stops));
}

function lessonsOf(stretches: readonly GrowthStretch[]): GrowthLesson[] {
  return stretches.map((stretch) => {
    // Against the guess alone, so that no lesson is counted twice.
    const expected = expectedGrowth(firstRadius(stretch));
    return growthLesson(growthBelief(stretch.readings, expected), expected);
  });
}

function firstRadius({ readings }: GrowthStretch): number {
  return readings[0]?.radiusMm as number;
}
