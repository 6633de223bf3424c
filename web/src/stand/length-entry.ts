import { MM_PER_FOOT, MM_PER_INCH } from '../languages/inch.ts';

/** What a tape measure shows, and what a bare number is then. */
export type TapeUnit = 'cm' | 'in';

export type LengthEntry =
  | { readonly ok: true; readonly mm: number | null }
  | { readonly ok: false; readonly fault: string };

const MM_OF = { mm: 1, cm: 10, m: 1000, in: MM_PER_INCH, ft: MM_PER_FOOT } as const;

/** Reads "180", "180 cm", "1,8 m", "1800 mm", "71 in" or "5.9 ft" into mm; a bare number is in the `tape`’s unit, nothing is not known. */
export function readLengthMm(words: string, fault: string, tape: TapeUnit = 'cm'): LengthEntry {
  const said = words.trim().toLowerCase().replace(',', '.');
  if (said === '') return { ok: true, mm: null };
  const [, number, unit = tape] = /^([+-]?\d*\.?\d+)\s*(mm|cm|m|in|ft)?$/.exec(said) ?? [];
  if (number === undefined) return { ok: false, fault };
  const mm = Math.round(Number(number) * MM_OF[unit as keyof typeof MM_OF]);
  return Number.isFinite(mm) ? { ok: true, mm } : { ok: false, fault };
}

/** A length as it stands in an entry: a bare number, to a millimetre or a tenth of an inch; empty when not known. */
export function lengthEntryOf(mm: number | null, tape: TapeUnit): string {
  if (mm === null) return '';
  return String(tape === 'cm' ? Math.round(mm) / 10 : Math.round((mm / MM_PER_INCH) * 10) / 10);
}

/** "1.8 m", "45 cm": as a tape is read. */
export function lengthWords(mm: number): string {
  return Math.abs(mm) >= 1000
    ? `${(mm / 1000).toFixed(2).replace(/\.?0+$/, '')} m`
    : `${Math.round(mm / 10)} cm`;
}
