import type { EntryVerdict } from '../../../core/season/entry-checks.ts';
import type { ShowClass } from '../../../core/season/show.ts';

/** "Pot up to 140 mm, plant up to 380 mm wide"; `null` for a class without limits. */
export function limitsInWords({ potMm, widestMm, tallestMm }: ShowClass): string | null {
  const sizes = [
    widestMm === null ? null : `${widestMm} mm wide`,
    tallestMm === null ? null : `${tallestMm} mm tall`,
  ].filter((size) => size !== null);
  const limits = [
    ...(potMm === null ? [] : [`pot up to ${potMm} mm`]),
    ...(sizes.length === 0 ? [] : [`plant up to ${sizes.join(' and ')}`]),
  ].join(', ');
  return limits === '' ? null : `${limits.charAt(0).toUpperCase()}${limits.slice(1)}`;
}

/** A verdict as a word that stands before its sentence. */
export const VERDICT_WORDS: Record<EntryVerdict, string> = {
  fits: 'Fits',
  'too large': 'Too large',
  'too near to tell': 'Too near to tell',
  unknown: 'Not known',
};

export const LIMIT_WORDS = { pot: 'Pot', width: 'Width', height: 'Height' } as const;
