import { type Bloom, bloomOf, type NoBloom } from '../../core/bloom/bloom.ts';
import { type BloomAgainstShow, bloomAgainstShow } from '../../core/bloom/bloom-against-show.ts';
import { type BloomPoint, bloomCurve } from '../../core/bloom/bloom-curve.ts';
import type { BloomReading } from '../../core/bloom/bloom-readings.ts';
import type { ExpectedBloom } from '../../core/bloom/expected-bloom.ts';
import type { Day } from '../../core/day/day.ts';
import type { PlantKind } from '../../core/plant.ts';
import { remembering } from '../bench/remembering.ts';

/** What is reckoned from a fitted bloom. A fit takes a tenth of a second. */

export interface BloomQuestion {
  /** Of one bloom. */
  readonly readings: readonly BloomReading[];
  readonly expected: ExpectedBloom;
}

export interface CurveQuestion extends BloomQuestion {
  readonly lastsDays: number;
}

export interface ShowQuestion extends CurveQuestion {
  readonly showDay: Day;
  readonly kind: PlantKind;
  readonly asOf: Day;
}

/** A bloom without the curves that it was told from. */
export type BloomTold = Omit<Bloom, 'belief'>;

/** The plausible blooms themselves are large, so only those asked for just now are kept. */
const fittedBloom = remembering(
  ({ readings, expected }: BloomQuestion): Bloom | NoBloom =>
    bloomOf({ readings, startsAgain: [], today: readings.at(-1)?.day ?? ('0001-01-01' as Day), expected }),
  8,
);

/** Pure: each answer hangs on its question alone, and both are plain data. */
const FITS = {
  bloom({ readings, expected }: BloomQuestion): BloomTold | NoBloom {
    const bloom = fittedBloom({ readings, expected });
    if (!bloom.ok) return bloom;
    const { belief: _, ...told } = bloom;
    return told;
  },
  'bloom curve'({ readings, expected, lastsDays }: CurveQuestion): BloomPoint[] {
    const bloom = fittedBloom({ readings, expected });
    return bloom.ok ? bloomCurve(bloom, lastsDays) : [];
  },
  'bloom against show'(question: ShowQuestion): BloomAgainstShow | null {
    const { readings, expected, showDay, lastsDays, kind, asOf } = question;
    const bloom = fittedBloom({ readings, expected });
    return bloom.ok ? bloomAgainstShow(bloom, { day: showDay, lastsDays, kind, today: asOf }) : null;
  },
};

type FitTable = typeof FITS;
export type FitName = keyof FitTable;
export type FitAsked<Name extends FitName> = Parameters<FitTable[Name]>[0];
export type FitAnswer<Name extends FitName> = ReturnType<FitTable[Name]>;

/** A fit to be reckoned, as it goes to another thread. */
export interface BloomFit {
  readonly name: FitName;
  readonly question: FitAsked<FitName>;
}

export function reckonFit<Name extends FitName>(name: Name, question: FitAsked<Name>): FitAnswer<Name> {
  const reckon = FITS[name] as (asked: FitAsked<Name>) => FitAnswer<Name>;
  return reckon(question);
}
