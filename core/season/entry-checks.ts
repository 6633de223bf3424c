import type { Day } from '../day/day.ts';
import { dayInWords } from '../day/day-in-words.ts';
import type { ShowClass } from './show.ts';

/** A plant's size as last measured; what was not measured is `null`. */
export interface PlantSize {
  readonly rimMm: number | null;
  readonly widthMm: number | null;
  readonly heightMm: number | null;
  /** 95 % repeatability of width and height. */
  readonly plusMinusMm: number | null;
  readonly measuredOn: Day | null;
}

export type EntryVerdict = 'fits' | 'too large' | 'too near to tell' | 'unknown';

/** One limit of a class held against the plant. */
export interface EntryCheck {
  readonly limit: 'pot' | 'width' | 'height';
  readonly verdict: EntryVerdict;
  readonly words: string;
}

/**
 * Whether a plant keeps to the limits of its class now.
 *
 * @returns one check for each limit that the class has; none for a class without limits
 *
 * Notes: the plant grows on until the show. Height is the canopy's, as photographed; a class may count it from the soil or with the pot, so
 * the rule in the schedule decides.
 */
export function entryChecks(size: PlantSize, { potMm, widestMm, tallestMm }: ShowClass): EntryCheck[] {
  const { rimMm, widthMm, heightMm, plusMinusMm } = size;
  const on = size.measuredOn === null ? 'When measured' : `On ${dayInWords(size.measuredOn)}`;
  return [
    check('pot', rimMm, 0, potMm, {
      tell: (mm) => `The pot’s rim measures ${mm} mm`,
      ask: 'Give the pot’s rim diameter.',
    }),
    check('width', widthMm, plusMinusMm, widestMm, {
      tell: (mm) => `${on} the plant was ${mm} mm wide`,
      ask: 'Photograph it with a known scale.',
    }),
    check('height', heightMm, plusMinusMm, tallestMm, {
      tell: (mm) => `${on} the canopy was ${mm} mm high`,
      ask: 'Photograph it with a known scale.',
    }),
  ].filter((found) => found !== null);
}

function check(
  limit: EntryCheck['limit'],
  sizeMm: number | null,
  plusMinusMm: number | null,
  limitMm: number | null,
  { tell, ask }: { tell: (mm: string) => string; ask: string },
): EntryCheck | null {
  if (limitMm === null) return null;
  const allowed = `the class allows ${Math.round(limitMm)} mm`;
  if (sizeMm === null) return { limit, verdict: 'unknown', words: `Not known; ${allowed}. ${ask}` };
  const over = sizeMm - limitMm;
  const doubt = plusMinusMm ?? 0;
  const size = `${Math.round(sizeMm)}${doubt > 0 ? ` ± ${Math.round(doubt)}` : ''}`;
  const measured = `${tell(size)}; ${allowed}`;
  if (Math.abs(over) < doubt) {
    return { limit, verdict: 'too near to tell', words: `${measured}: too near to tell, use a rule.` };
  }
  return over > 0
    ? { limit, verdict: 'too large', words: `${measured}: ${Math.round(over)} mm too much.` }
    : { limit, verdict: 'fits', words: `${measured}.` };
}
