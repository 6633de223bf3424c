import type { BeliefParts } from './days-to-bloom.ts';

const FRACTIONS: readonly (readonly [share: number, words: string])[] = [
  [1 / 4, 'one quarter'],
  [1 / 3, 'one third'],
  [1 / 2, 'half'],
  [2 / 3, 'two thirds'],
  [3 / 4, 'three quarters'],
];
/** A share this near a plain fraction is told as the fraction. */
const NEAR = 0.02;

/**
 * How much of a figure is default and how much own record.
 *
 * Example: "Two thirds default, one third your own record."
 */
export function shareInWords({ defaultDays, defaultCountsAs, ownDays, kindDays, kindCountsAs }: BeliefParts) {
  if (defaultDays === null) return `Your own ${recordsInWords(ownDays.length)} alone.`;
  if (ownDays.length + kindDays.length === 0)
    return 'All default: you have no record of this kind and stop yet.';
  const count = defaultCountsAs + ownDays.length + kindCountsAs;
  const told = [
    `${fraction(defaultCountsAs / count)} default`,
    ...(ownDays.length > 0
      ? [`${fraction(ownDays.length / count)} your own ${recordsInWords(ownDays.length)}`]
      : []),
    ...(kindDays.length > 0
      ? [
          `${fraction(kindCountsAs / count)} your ${recordsInWords(kindDays.length)} of other varieties of the kind`,
        ]
      : []),
  ].join(', ');
  return `${told[0]?.toUpperCase()}${told.slice(1)}.`;
}

/** The mean as a sum that can be checked by hand. */
export function sumInWords(
  { defaultDays, defaultCountsAs, ownDays, kindDays, kindCountsAs }: BeliefParts,
  mean: number,
): string {
  const count = defaultCountsAs + ownDays.length + kindCountsAs;
  const kindMean = kindDays.reduce((sum, days) => sum + days, 0) / kindDays.length;
  const terms = [
    ...(defaultDays === null ? [] : [`${rounded(defaultCountsAs)} × ${rounded(defaultDays.value)}`]),
    ...(kindDays.length === 0 ? [] : [`${rounded(kindCountsAs)} × ${rounded(kindMean)}`]),
    ...ownDays.map(rounded),
  ];
  return `(${terms.join(' + ')}) ÷ ${rounded(count)} = ${rounded(mean)} days`;
}

function fraction(share: number): string {
  const near = FRACTIONS.find(([value]) => Math.abs(value - share) < NEAR);
  return near?.[1] ?? `${Math.round(100 * share)} %`;
}

function recordsInWords(count: number): string {
  return count === 1 ? 'record' : `${count} records`;
}

function rounded(value: number): string {
  return String(Math.round(10 * value) / 10);
}
