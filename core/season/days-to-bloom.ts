import type { StopDepth } from '../cut/cut.ts';
import { daysBetween } from '../day/day.ts';
import type { PlantKind } from '../plant.ts';
import type { BloomRecord } from './bloom-record.ts';
import { shareInWords, sumInWords } from './days-to-bloom-words.ts';
import type { Figure } from './figure.ts';
import { meanInterval, type NormalGamma, nextPoint, updated } from './normal-gamma.ts';
import type { StopDefaults, StopToBloom, WeighingDefaults } from './stop-defaults.ts';

/** Of which plant and stop. */
export interface BloomQuestion {
  readonly plantId: string;
  readonly kind: PlantKind;
  readonly variety: string;
  readonly depth: StopDepth;
}

/** All that the grower knows: the table with own figures laid over it, and the records of all plants. */
export interface SeasonKnowledge {
  readonly defaults: StopDefaults;
  readonly records: readonly BloomRecord[];
}

/** What a belief is made of, in records' worth. */
export interface BeliefParts {
  /** `null` where nothing is known for this kind and depth. */
  readonly defaultDays: Figure | null;
  readonly defaultCountsAs: number;
  /** Days of the variety's and the plant's own records, 1 each. */
  readonly ownDays: readonly number[];
  /** Days of other varieties of the kind. */
  readonly kindDays: readonly number[];
  readonly kindCountsAs: number;
}

/** Days from a last stop to full bloom as they are believed. */
export interface DaysToBloom {
  readonly ok: true;
  readonly depth: StopDepth;
  readonly belief: NormalGamma;
  readonly meanDays: number;
  /** Holds the true mean with 90 %. */
  readonly mean90Days: readonly [low: number, high: number];
  /** Holds the next plant's days with 90 %. */
  readonly next90Days: readonly [low: number, high: number];
  readonly parts: BeliefParts;
  /** Shares of the mean, together 1. */
  readonly shares: { readonly default: number; readonly own: number; readonly kind: number };
  /** "One third default, two thirds your own 4 records." */
  readonly shareInWords: string;
  /** The sum with its weights: "(2 × 122.5 + 115 + 118) ÷ 4 = 119.5 days". */
  readonly sumInWords: string;
  /** Where the default comes from. */
  readonly standing: string;
  readonly used: readonly BloomRecord[];
  readonly leftOut: readonly BloomRecord[];
}

export interface NoDaysToBloom {
  readonly ok: false;
  readonly reason: 'no-figure';
  readonly hint: string;
}

/** With no default, so many own records are needed before a spread can be told. */
const LEAST_RECORDS = 3;
/** Days of full bloom are hardly noted better than this, however alike the records look. */
const LEAST_SPREAD_DAYS = 2;

/**
 * Days from the last stop to full bloom for a plant, from the default and the grower's own records.
 *
 * @param question plant, kind, variety and depth of the stop
 * @param knowledge table and records; records of another kind or depth are not asked
 * @returns belief, intervals and how much of it is default; or why nothing can be said
 *
 * How: normal–gamma updating (`updated`). The default mean counts as a few records, its spread as a few degrees of freedom, such that
 * the next plant's standard deviation is the table's: β = (α − 1) × spread² × κ ÷ (κ + 1). The records of other varieties of the kind
 * come first, each for a part of a record and all together for no more than the table says; then the variety's own, and those of the plant
 * itself, for one each. Without a default own records speak alone from the third on (κ = n, α = (n − 1) ÷ 2, β = half their sum of squares).
 *
 * Reference: Murphy (2007), Conjugate Bayesian analysis of the Gaussian distribution; DeGroot (1970), Optimal Statistical Decisions.
 *
 * Example: default 60 days that counts as 2 records, own records of 66, 70 and 68 days: (120 + 204) ÷ 5 = 64.8 days, three fifths own.
 */
export function daysToBloom(
  question: BloomQuestion,
  { defaults, records }: SeasonKnowledge,
): DaysToBloom | NoDaysToBloom {
  const row = defaults.kinds[question.kind].stops.find(({ depth }) => depth === question.depth);
  const alike = records.filter(({ kind, depth }) => kind === question.kind && depth === question.depth);
  const used = alike.filter(({ leftOut }) => leftOut === null);
  const own = used.filter((record) => isOwn(record, question));
  const others = used.filter((record) => !isOwn(record, question));
  const parts = partsOf(row?.meanDays ?? null, own.map(daysOf), others.map(daysOf), defaults.weighing);
  const belief = beliefOf(parts, row, defaults.weighing);
  if (belief === null) return { ok: false, reason: 'no-figure', hint: noFigureHint(question.depth) };
  const { count, mean } = belief;
  const isDefault = parts.defaultDays !== null;
  return {
    ok: true,
    depth: question.depth,
    belief,
    meanDays: mean,
    mean90Days: meanInterval(belief, 0.9),
    next90Days: [nextPoint(belief, 0.05), nextPoint(belief, 0.95)],
    parts,
    shares: {
      default: parts.defaultCountsAs / count,
      own: own.length / count,
      kind: parts.kindCountsAs / count,
    },
    shareInWords: shareInWords(parts),
    sumInWords: sumInWords(parts, mean),
    standing: parts.defaultDays?.words ?? 'No default is known: your own records speak alone.',
    used: isDefault ? [...own, ...others] : own,
    leftOut: alike.filter(({ leftOut }) => leftOut !== null),
  };
}

function partsOf(
  defaultDays: Figure | null,
  ownDays: readonly number[],
  kindDays: readonly number[],
  weighing: WeighingDefaults,
): BeliefParts {
  if (defaultDays === null)
    return { defaultDays, defaultCountsAs: 0, ownDays, kindDays: [], kindCountsAs: 0 };
  const kindCountsAs = Math.min(
    kindDays.length * weighing.otherVarietyCountsAs.value,
    weighing.otherVarietiesMost.value,
  );
  return { defaultDays, defaultCountsAs: weighing.countsAs.value, ownDays, kindDays, kindCountsAs };
}

function beliefOf(
  parts: BeliefParts,
  row: StopToBloom | undefined,
  weighing: WeighingDefaults,
): NormalGamma | null {
  const { defaultDays, ownDays, kindDays, kindCountsAs } = parts;
  if (defaultDays === null || row === undefined) return ownAlone(ownDays);
  const kindSays =
    kindDays.length === 0
      ? defaultBelief(defaultDays.value, row.spreadDays.value, weighing)
      : updated(
          defaultBelief(defaultDays.value, row.spreadDays.value, weighing),
          kindDays,
          kindCountsAs / kindDays.length,
        );
  return updated(kindSays, ownDays);
}

/** The table's figures as a belief: the next plant's standard deviation is `spreadDays`. */
export function defaultBelief(meanDays: number, spreadDays: number, weighing: WeighingDefaults): NormalGamma {
  const count = weighing.countsAs.value;
  const shape = weighing.spreadFreedom.value / 2;
  return { mean: meanDays, count, shape, rate: ((shape - 1) * spreadDays ** 2 * count) / (count + 1) };
}

function ownAlone(days: readonly number[]): NormalGamma | null {
  const count = days.length;
  if (count < LEAST_RECORDS) return null;
  const mean = days.reduce((sum, one) => sum + one, 0) / count;
  const squares = days.reduce((sum, one) => sum + (one - mean) ** 2, 0);
  const rate = Math.max(squares, (count - 1) * LEAST_SPREAD_DAYS ** 2) / 2;
  return { mean, count, shape: (count - 1) / 2, rate };
}

function isOwn({ plantId, variety }: BloomRecord, question: BloomQuestion): boolean {
  const name = (text: string) => text.trim().toLowerCase();
  if (plantId === question.plantId) return true;
  return name(variety) !== '' && name(variety) === name(question.variety);
}

function daysOf({ stopDay, fullBloomDay }: BloomRecord): number {
  if (fullBloomDay === null) throw new RangeError('Expected a day of full bloom for a record that counts');
  return daysBetween(stopDay, fullBloomDay);
}

function noFigureHint(depth: StopDepth): string {
  return `How long this kind takes from a ${depth} stop to full bloom is not known. Set a figure of your own, or note stops and full bloom: after ${LEAST_RECORDS} seasons your own records tell it.`;
}
