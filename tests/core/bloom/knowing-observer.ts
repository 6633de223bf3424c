import type { BloomReading } from '../../../core/bloom/bloom-readings.ts';
import { daysBetween } from '../../../core/day/day.ts';
import { normalTail } from '../../../core/trend/normal-tail.ts';
import { chances } from '../growth/simulated-seasons.ts';
import { type BloomDraw, courseOf, DRAWN, FIRST_DAY, RISES, UNSEEN } from './simulated-blooms.ts';

/** Only so many draws away from where it began, a chain has forgotten it. */
const FORGOTTEN = 5_000;
const DRAWS = 40_000;
const FIRST_TRIES = 500;
/** Steps of the chain, each times one of `REACHES`. */
const STEPS = { firstColour: 5, logRise: 0.5, lastsDays: 10, fallOfRise: 0.7, fullShare: 0.1 };
const REACHES = [1, 0.3, 0.1, 0.03];
type Axis = keyof typeof STEPS;
const AXES = Object.keys(STEPS) as Axis[];
type Place = Readonly<Record<Axis, number> & { rise: BloomDraw['rise'] }>;

/** What such an observer holds of the day of full bloom, days since the first photo. */
export interface KnowingBelief {
  /** As likely before as after. */
  readonly full: number;
  readonly range90: readonly [from: number, to: number];
}

/**
 * Full bloom as one holds it who knows how the simulation draws its blooms and how its readings scatter, and is told the readings alone: the
 * best that readings of these blooms allow, the most that any fit can reach on the average.
 *
 * @param readings with their plus-minus, which scatter as much as it says
 * @param riseDays range that the rise was drawn from
 * @param seed of the chain
 *
 * How: a chain of draws whose shares are those of belief (Metropolis), begun at the best of some blooms drawn blindly, the truth not told.
 * The plus-minus hangs on the true share in the simulation; that is not made use of.
 *
 * Reference: Metropolis et al. (1953), Equation of state calculations by fast computing machines, J. Chem. Phys. 21:1087.
 */
export function knowingBelief(
  readings: readonly BloomReading[],
  riseDays: readonly [number, number],
  seed: number,
): KnowingBelief {
  const { normal, uniform } = chances(seed);
  const pick = <T>(some: readonly T[]) => some[Math.floor(some.length * uniform())] as T;
  const seen = readings.map(({ day, share, plusMinus }) => {
    if (plusMinus === null) throw new RangeError('Expected readings with a plus-minus');
    return { days: daysBetween(FIRST_DAY, day), share, sd: plusMinus / 1.96 };
  });
  const ranges = { ...DRAWN, logRise: riseDays.map(Math.log) as [number, number] };
  const isDrawn = (place: Place) =>
    AXES.every((axis) => ranges[axis][0] <= place[axis] && place[axis] <= ranges[axis][1]);
  const logOf = (place: Place) => (isDrawn(place) ? logChance(seen, place) : Number.NEGATIVE_INFINITY);

  let [at, log] = [{} as Place, Number.NEGATIVE_INFINITY];
  for (let k = 0; k < FIRST_TRIES; k++) {
    const blind = AXES.map((axis) => [
      axis,
      ranges[axis][0] + (ranges[axis][1] - ranges[axis][0]) * uniform(),
    ]);
    const place = { ...Object.fromEntries(blind), rise: pick(RISES) } as Place;
    const found = logOf(place);
    if (found > log) [at, log] = [place, found];
  }
  const fulls: number[] = [];
  for (let draw = 0; draw < DRAWS; draw++) {
    const next = { ...at };
    const reach = pick(REACHES);
    const step = (axis: Axis) => {
      next[axis] += reach * STEPS[axis] * normal();
    };
    const way = uniform();
    if (way < 0.15) next.rise = pick(RISES);
    else if (way < 0.5) step(pick(AXES));
    else if (way < 0.7) for (const axis of AXES) step(axis);
    else {
      // Along what readings tell apart worst: a slower rise and a shorter bloom, with first colour and fading where they were.
      step('logRise');
      next.lastsDays -= Math.exp(next.logRise) - Math.exp(at.logRise);
    }
    const found = logOf(next);
    if (Math.log(uniform()) < found - log) [at, log] = [next, found];
    if (draw >= FORGOTTEN) fulls.push(at.firstColour + Math.exp(at.logRise));
  }
  fulls.sort((one, other) => one - other);
  const below = (chance: number) => fulls[Math.floor(chance * fulls.length)] as number;
  return { full: below(0.5), range90: [below(0.05), below(0.95)] };
}

/** Logarithm of how likely the readings are, as the simulation draws them. */
function logChance(
  seen: readonly { days: number; share: number; sd: number }[],
  { logRise, ...place }: Place,
): number {
  const trueShare = courseOf({ ...place, riseDays: Math.exp(logRise) });
  let log = 0;
  for (const { days, share, sd } of seen) {
    const truth = trueShare(days);
    const isSeen = truth >= UNSEEN.share;
    const scatter = isSeen ? sd : UNSEEN.scatter * sd;
    // What would lie below 0 is read as 0, and without flower to be told readings scatter upwards alone.
    if (share > 0) {
      const off = (share - (isSeen ? truth : 0)) / scatter;
      log += Math.log(isSeen ? 1 : 2) - Math.log(Math.sqrt(2 * Math.PI) * scatter) - off ** 2 / 2;
    } else log += isSeen ? Math.log(normalTail(truth / sd)) : Number.NEGATIVE_INFINITY;
  }
  return log;
}
