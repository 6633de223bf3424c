import type { Database } from '../store/database.ts';
import { keptFits } from '../store/kept-fits.ts';
import { type BloomFit, type FitAnswer, type FitAsked, type FitName, reckonFit } from './bloom-fits.ts';

/** Where the fits of blooms come from. */
export interface Fits {
  /** Throws `FitsMissing` where they are not to be waited for. */
  readonly told: <Name extends FitName>(name: Name, question: FitAsked<Name>) => FitAnswer<Name>;
  /** Another one after fits of a plant came that were missing; with `null`, of any plant. */
  readonly cameFor: (plantId: string | null) => unknown;
  /** Called when fits of a plant are missing. */
  readonly missing: (plantId: string) => void;
}

/** Fits that are to be reckoned first. */
export class FitsMissing extends Error {
  readonly fits: readonly BloomFit[];

  constructor(fits: readonly BloomFit[]) {
    super();
    this.fits = fits;
  }
}

/** Reckons on the spot what is not kept. */
export function fittingNow(db: Database): Fits {
  const { kept, keep } = keptFits(db);
  return {
    told: <Name extends FitName>(name: Name, question: FitAsked<Name>) => {
      const known = kept(name, question);
      if (known !== undefined) return known as FitAnswer<Name>;
      const answer = reckonFit(name, question);
      keep(name, question, answer);
      return answer;
    },
    cameFor: () => null,
    missing: () => {},
  };
}

/** Only tells what is kept. */
export function fitsKept(db: Database, { cameFor, missing }: Pick<Fits, 'cameFor' | 'missing'>): Fits {
  const { kept } = keptFits(db);
  return {
    told: <Name extends FitName>(name: Name, question: FitAsked<Name>) => {
      const known = kept(name, question);
      if (known === undefined) throw new FitsMissing([{ name, question }]);
      return known as FitAnswer<Name>;
    },
    cameFor,
    missing,
  };
}
